"""Which line a typed strike means: by its number, or the last one."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec.structs import replace

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Struck
from witnessmark.journal.order import in_force
from witnessmark.words.striking import Strike, find_strike

_LAST = re.compile(r"^\s*(strike|struck)(\s+out)?\s+(the\s+)?last(\s+line)?\b", re.IGNORECASE)


def strike_in(words: str, entries: Sequence[Entry]) -> Strike | None:
    """The strike a typed line asks for, None where it asks for none.

    Words behind a semicolon are the line as it should have been.

    >>> strike_in("strike 12, wrong side; took off hub nut right rear", ())
    Strike(line=12, why='wrong side', instead='took off hub nut right rear')
    """
    if _LAST.match(words):
        words = _LAST.sub(f"strike {_last(entries)}", words)
    strike = find_strike(words)
    if strike is None or strike.instead:
        return strike
    why, semicolon, instead = strike.why.partition(";")
    return replace(strike, why=why.strip().rstrip("."), instead=instead.strip()) if semicolon else strike


def _last(entries: Sequence[Entry]) -> int:
    """The last line written that is no strike and is not struck."""
    struck = in_force(entries)
    return next(
        (e.line for e in reversed(entries) if not isinstance(e.fact, Struck) and e.line not in struck), 0
    )
