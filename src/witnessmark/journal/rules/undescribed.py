"""A line about a part or joint does nothing while the record does not know the thing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Struck
from witnessmark.journal.order import standing
from witnessmark.journal.rules.names import described_in, must_be_described


def names_never_described(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Names that no line ever described, each on the first line that uses it.

    What a strike left undescribed is told by the rule on orphans.
    """
    described = _ever_described(entries)
    for entry in sorted(standing(entries), key=lambda entry: entry.line):
        for name in must_be_described(entry.fact):
            if name not in described:
                described.add(name)
                yield Fault(
                    line=entry.line,
                    rule="undescribed",
                    what=f"Line {entry.line} is about {name}, which no line describes: it has no effect.",
                    do="Describe it, or strike the line and give the name the record knows.",
                )


def _ever_described(entries: Sequence[Entry]) -> set[str]:
    """What any line described, or any correction that ever took a line's place."""
    plain = {entry.line for entry in entries if not isinstance(entry.fact, Struck)}
    names: set[str] = set()
    for entry in entries:
        fact = entry.fact
        if not isinstance(fact, Struck):
            names |= described_in(fact)
        elif fact.line in plain and fact.line < entry.line:
            names |= described_in(fact.instead)
    return names
