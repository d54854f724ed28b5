"""One line of the journal: who did what, on which day, in whose words."""

from __future__ import annotations

from datetime import date

from msgspec import Struct

from witnessmark.journal.facts import AnyFact

END_OF_DAY = "24:00"
VERSION = 1


class Entry(Struct, frozen=True, kw_only=True, gc=False):
    """A fact under its heading.

    id       made where the line was typed, unique in a record, so that a retry cannot write twice
    day      day done
    time     time done, "HH:MM": typed, else the device's clock if written that day, else END_OF_DAY
    written  moment written, "YYYY-MM-DDTHH:MM:SS"; never used for what happened
    line     number in the record, from 1; 0 while not yet written
    who      the hand that wrote it
    words    as typed
    version  of the fact's shape
    """

    id: str
    day: date
    time: str
    written: str
    line: int
    who: str
    words: str
    fact: AnyFact
    version: int = VERSION

    @property
    def place(self) -> tuple[date, str, int]:
        """Where it stands in the reading order: day, time, line."""
        return (self.day, self.time, self.line)

    @property
    def written_day(self) -> date:
        return date.fromisoformat(self.written[:10])
