"""A fault: trouble in the record, told as a value beside the line that shows it."""

from msgspec import Struct


class Fault(Struct, frozen=True, kw_only=True):
    """One thing wrong in a record.

    line   journal line it stands on, or None where the whole record is meant
    rule   short name of the rule that found it
    what   what is wrong, one sentence
    do     what would mend it, one sentence
    """

    line: int | None
    rule: str
    what: str
    do: str
