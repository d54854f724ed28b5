"""A file of lines: blank lines and # comments aside, each under the day mark that stands above it."""

from __future__ import annotations

import re
from datetime import date

from msgspec import Struct

from witnessmark.ground.errors import BadInput

_WRITTEN = re.compile(r"@\s*written\s+(?P<written>\d{4}-\d{2}-\d{2})\s*$")
_MARK = re.compile(
    r"@\s*(?P<day>\d{4}-\d{2}-\d{2})(?:\s+(?P<hour>\d{1,2}):(?P<minute>\d{2}))?"
    r"(?:\s+written\s+(?P<written>\d{4}-\d{2}-\d{2}))?\s*$"
)


class TypedLine(Struct, frozen=True, kw_only=True):
    """One line of a file.

    number   its place in the file, from 1
    day      the day it was done, None where no mark stands above it
    time     the time it was done as HH:MM, None likewise
    written  the day it was written down, where that was later
    """

    number: int
    words: str
    day: date | None = None
    time: str | None = None
    written: date | None = None


def read_lines(text: str) -> tuple[TypedLine, ...]:
    """The lines of a file in order.

    `@ 2026-03-14 10:40` marks the day and time of the lines below it, `@ 2026-03-14` the day alone,
    `@ 2026-03-14 written 2026-03-16` a day written down late; `@ written 2026-03-16` alone says so of the
    lines below it under the mark that stands. Raises BadInput for a mark that is none.

    >>> [(line.day.isoformat(), line.words) for line in read_lines("@ 2026-03-14\\n# cold\\n took off hub")]
    [('2026-03-14', 'took off hub')]
    """
    lines: list[TypedLine] = []
    mark: tuple[date | None, str | None, date | None] = (None, None, None)
    for number, raw in enumerate(text.splitlines(), 1):
        words = raw.strip()
        if not words or words.startswith("#"):
            continue
        if words.startswith("@"):
            late = _WRITTEN.match(words)
            mark = (*mark[:2], _day(late["written"], words, number)) if late else _marked(words, number)
            continue
        day, time, written = mark
        lines.append(TypedLine(number=number, words=words, day=day, time=time, written=written))
    return tuple(lines)


def _marked(words: str, number: int) -> tuple[date, str | None, date | None]:
    found = _MARK.match(words)
    if found is None:
        raise _no_mark(words, number)
    day = _day(found["day"], words, number)
    written = _day(found["written"], words, number) if found["written"] else None
    try:
        return day, _clock(found["hour"], found["minute"]), written
    except ValueError:
        raise _no_mark(words, number) from None


def _day(typed: str, words: str, number: int) -> date:
    try:
        return date.fromisoformat(typed)
    except ValueError:
        raise _no_mark(words, number) from None


def _no_mark(words: str, number: int) -> BadInput:
    return BadInput(
        given=f"line {number} of the file, {words!r}, is no day mark",
        holds="@ 2026-03-14, or @ 2026-03-14 10:40, or @ 2026-03-14 written 2026-03-16",
        do="Write the mark that way; nothing was written.",
    )


def _clock(hour: str | None, minute: str | None) -> str | None:
    if hour is None or minute is None:
        return None
    if int(hour) > 23 or int(minute) > 59:
        raise ValueError(hour)
    return f"{int(hour):02d}:{minute}"
