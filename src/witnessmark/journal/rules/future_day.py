"""Nothing can be done on a later day than it was written down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.rules.clock import is_moment


def done_after_written(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines whose day lies after the day of writing. A malformed moment is left to the rule on the clock."""
    for entry in entries:
        day, written = entry.day.isoformat(), entry.written[:10]
        if day > written and is_moment(entry.written):
            yield Fault(
                line=entry.line,
                rule="future day",
                what=f"Line {entry.line} was written on {written} but is dated {day}.",
                do="Strike the line and carry the right day in the correction.",
            )
