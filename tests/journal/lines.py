"""Short ways to make entries for tests."""

from __future__ import annotations

from datetime import date

from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import AnyFact, Described
from witnessmark.vehicle.things import Joint, Part


def entry(
    line: int,
    fact: AnyFact,
    *,
    day: str = "2026-03-14",
    time: str = END_OF_DAY,
    written: str = "",
    words: str = "",
    id: str = "",
    who: str = "you",
) -> Entry:
    return Entry(
        id=id or f"id-{line}",
        day=date.fromisoformat(day),
        time=time,
        written=written or f"{day}T18:00:00",
        line=line,
        who=who,
        words=words or f"line {line}",
        fact=fact,
    )


def unwritten(number: int, fact: AnyFact, **heading: str) -> Entry:
    """An entry not yet in a record; the number only makes its id and words."""
    made = entry(number, fact, **heading)
    return Entry(
        id=made.id,
        day=made.day,
        time=made.time,
        written=made.written,
        line=0,
        who=made.who,
        words=made.words,
        fact=made.fact,
    )


def describing(*joints: str, parts: tuple[str, ...] = (), assembly: str = "") -> Described:
    return Described(
        parts=tuple(Part(name=name, assembly=assembly) for name in parts),
        joints=tuple(Joint(name=name, kind="wheel-nuts", assembly=assembly) for name in joints),
    )
