"""Blanking plugs are counted in and counted out: more out than in means a count is wrong."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Blanked, Unblanked
from witnessmark.journal.order import standing

NOWHERE_SAID = "the vehicle"


def more_out_than_in(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines on which more plugs came out of a place than had gone in by then."""
    fitted: Counter[str] = Counter()
    for entry in standing(entries):
        fact = entry.fact
        if not isinstance(fact, Blanked | Unblanked):
            continue
        for place in fact.at or (NOWHERE_SAID,):
            if isinstance(fact, Unblanked) and fact.number > fitted[place]:
                yield _fault(entry.line, place, fact.number, fitted[place])
            change = fact.number if isinstance(fact, Blanked) else -fact.number
            fitted[place] = max(0, fitted[place] + change)


def _fault(line: int, place: str, out: int, fitted: int) -> Fault:
    return Fault(
        line=line,
        rule="blanking",
        what=f"Line {line} takes {out} blanking plugs out of {place}; the record had put in {fitted}.",
        do="Look whether a plug is still in, then strike the wrong count.",
    )
