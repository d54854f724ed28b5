"""A figure is a number: not endless, not nothing."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import msgspec

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry

# Only a number that JSON has no sign for is written as null; a look for it passes nearly every line at once.
_NO_NUMBER = b"null"
_encode = msgspec.json.Encoder().encode


def endless_figures(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines that carry a number which is none, or is without end, anywhere in their fact."""
    suspect = (entry for entry in entries if _NO_NUMBER in _encode(entry.fact))
    for entry in suspect:
        if any(not math.isfinite(number) for number in _numbers(msgspec.to_builtins(entry.fact))):
            yield Fault(
                line=entry.line,
                rule="figure",
                what=f"Line {entry.line} carries a figure that is not a finite number.",
                do="Strike the line and write the figure again.",
            )


def _numbers(value: object) -> Iterator[float]:
    if isinstance(value, float):
        yield value
    elif isinstance(value, dict):
        for inner in value.values():
            yield from _numbers(inner)
    elif isinstance(value, list | tuple):
        for inner in value:
            yield from _numbers(inner)
