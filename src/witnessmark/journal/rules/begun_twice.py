"""One record is one restoration: it is begun once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import DescribedVehicle
from witnessmark.journal.order import standing


def second_beginnings(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Lines that give the vehicle a name once more; adding to what it has is no beginning."""
    named = sorted(
        (e for e in standing(entries) if isinstance(e.fact, DescribedVehicle) and e.fact.name),
        key=lambda entry: entry.line,
    )
    for entry in named[1:]:
        yield Fault(
            line=entry.line,
            rule="begun twice",
            what=f"Line {entry.line} begins the record again; line {named[0].line} had begun it.",
            do="Strike one of the two, or keep the other vehicle in a record of its own.",
        )
