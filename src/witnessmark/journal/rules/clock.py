"""Times are HH:MM, moments YYYY-MM-DDTHH:MM:SS: anything else would sort wrongly."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import datetime

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import Held

_TIME = re.compile(r"(?:[01][0-9]|2[0-3]):[0-5][0-9]")
_MOMENT = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}")


def is_time(text: str) -> bool:
    """Whether a text is a time of day, the end of the day included.

    >>> is_time("07:05"), is_time("24:00"), is_time("7:05"), is_time("24:01")
    (True, True, False, False)
    """
    return text == END_OF_DAY or _TIME.fullmatch(text) is not None


def is_moment(text: str) -> bool:
    """Whether a text is a moment.

    >>> is_moment("2026-03-14T10:41:00"), is_moment("2026-03-14"), is_moment("2026-02-30T10:41:00")
    (True, False, False)
    """
    if not _MOMENT.fullmatch(text):
        return False
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


def malformed_times(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines with a time that is none: when done, when written, when a session was held."""
    for entry in entries:
        if not is_time(entry.time):
            yield _fault(entry, f"the time {entry.time!r}", "HH:MM")
        if not is_moment(entry.written):
            yield _fault(entry, f"the moment of writing {entry.written!r}", "YYYY-MM-DDTHH:MM:SS")
        if isinstance(entry.fact, Held):
            for text in (entry.fact.start, entry.fact.end):
                if text and not is_time(text):
                    yield _fault(entry, f"the session time {text!r}", "HH:MM")


def _fault(entry: Entry, what: str, form: str) -> Fault:
    return Fault(
        line=entry.line,
        rule="clock",
        what=f"Line {entry.line} carries {what}, which is not {form}.",
        do="Strike the line and write it again with the right time.",
    )
