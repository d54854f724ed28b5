"""A strike takes out one earlier line that is no strike itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AnyFact, Struck


def strikes_at_nothing(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Strikes that point forward, at themselves, at no line, or at another strike: they take out nothing."""
    facts = {entry.line: entry.fact for entry in entries}
    for entry in entries:
        if isinstance(entry.fact, Struck) and (why := _why_nothing(entry.line, entry.fact.line, facts)):
            yield Fault(
                line=entry.line,
                rule="strike",
                what=f"Line {entry.line} strikes line {entry.fact.line}, {why}: it takes out nothing.",
                do="Strike the line that was meant.",
            )


def _why_nothing(line: int, struck: int, facts: Mapping[int, AnyFact]) -> str:
    if struck == line:
        return "which is itself"
    if struck not in facts:
        return "which is not in the record"
    if struck > line:
        return "which was written later"
    if isinstance(facts[struck], Struck):
        return "which is a strike"
    return ""
