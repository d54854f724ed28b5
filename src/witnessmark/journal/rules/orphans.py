"""A strike on a description leaves later lines talking of a thing the record no longer knows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AnyFact, Struck
from witnessmark.journal.order import in_force, standing
from witnessmark.journal.rules.names import described_in, named_in


def orphaned_by(entries: Iterable[Entry], line: int, instead: AnyFact | None = None) -> tuple[Entry, ...]:
    """The lines that would be left naming an undescribed thing if `line` were struck: show them first.

    instead  the corrected fact the strike would carry; what it still describes is not lost
    """
    every = tuple(entries)
    if any(entry.line == line and isinstance(entry.fact, Struck) for entry in every):
        return ()  # a strike cannot be struck
    strike = in_force(every).get(line)
    stands_as = strike.line if strike else line
    held = standing(every)
    lost = _described(e for e in held if e.line == stands_as) - described_in(instead)
    rest = [e for e in held if e.line != stands_as]
    return _naming(rest, lost - _described(rest))


def strikes_that_orphan(entries: Sequence[Entry]) -> Iterator[Fault]:
    """Strikes in force whose struck line alone described a thing that other lines still name."""
    held = standing(entries)
    known = _described(held)
    told: set[str] = set()
    force = in_force(entries)
    for line, strike in sorted(force.items(), key=lambda pair: -pair[1].line):
        lost = _once_described(entries, line) - known - told
        told |= lost
        orphans = _naming(held, lost)
        if orphans:
            yield _fault(strike.line, line, lost, orphans)


def _once_described(entries: Iterable[Entry], line: int) -> frozenset[str]:
    """What a line described, or any strike that ever took its place."""
    names: frozenset[str] = frozenset()
    for entry in entries:
        if entry.line == line:
            names |= described_in(entry.fact)
        elif isinstance(entry.fact, Struck) and entry.fact.line == line < entry.line:
            names |= described_in(entry.fact.instead)
    return names


def _described(entries: Iterable[Entry]) -> frozenset[str]:
    return frozenset().union(*(described_in(entry.fact) for entry in entries))


def _naming(entries: Iterable[Entry], names: frozenset[str]) -> tuple[Entry, ...]:
    return tuple(e for e in entries if names.intersection(named_in(e.fact))) if names else ()


def _fault(line: int, struck: int, lost: frozenset[str], orphans: tuple[Entry, ...]) -> Fault:
    names = "; ".join(sorted(name for name in lost if any(name in named_in(o.fact) for o in orphans)))
    lines = ", ".join(str(number) for number in sorted(orphan.line for orphan in orphans))
    return Fault(
        line=line,
        rule="orphan",
        what=f"Striking line {struck} left {names} described nowhere, yet named on line {lines}.",
        do="Describe it again, or strike those lines as well.",
    )
