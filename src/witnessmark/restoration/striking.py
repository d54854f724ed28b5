"""A strike written as a line: "strike last, that was the other side; took off hub nut right rear"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Struck
from witnessmark.journal.order import in_force

_LINE = re.compile(
    r"\s*strike\s+(?:out\s+)?(?:the\s+)?(?:(?P<last>last)(?:\s+line)?|(?:line\s+)?(?P<number>\d+))"
    r"\s*[,:]?\s*(?P<why>[^;]*)(?:;\s*(?P<instead>.*))?$",
    re.IGNORECASE,
)


class Strike(Struct, frozen=True):
    """Which line to strike, why, and the line as it should have been ("" where none)."""

    line: int
    why: str
    instead: str = ""


def strike_in(words: str, entries: Sequence[Entry]) -> Strike | None:
    """The strike a typed line asks for, None where it asks for none.

    >>> strike_in("strike 12, wrong side; took off hub nut right rear", ())
    Strike(line=12, why='wrong side', instead='took off hub nut right rear')
    """
    found = _LINE.match(words)
    if found is None:
        return None
    line = int(found["number"]) if found["number"] else _last(entries)
    return Strike(line, found["why"].strip().rstrip("."), (found["instead"] or "").strip())


def _last(entries: Sequence[Entry]) -> int:
    """The last line written that is no strike and is not struck."""
    struck = in_force(entries)
    return next(
        (e.line for e in reversed(entries) if not isinstance(e.fact, Struck) and e.line not in struck), 0
    )
