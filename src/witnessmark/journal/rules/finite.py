"""A figure is a number: not endless, not nothing."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import msgspec

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry


def endless_figures(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines that carry a number which is none, or is without end, anywhere in their fact."""
    for entry in entries:
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
