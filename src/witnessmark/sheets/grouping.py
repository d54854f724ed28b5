"""Debts and holds gathered under the joint they are owed on, and joints under what happens if missed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from msgspec.structs import replace

from witnessmark.ground.missed import MEANINGS, IfMissed, if_missed
from witnessmark.sheets.phrases import counted
from witnessmark.sheets.rows import Due, JointRow, Section

T = TypeVar("T")


def gathered(things: Iterable[T], key: Callable[[T], tuple[str, str]]) -> Mapping[tuple[str, str], list[T]]:
    """Things under their (what happens if missed, name), names in the order they first come."""
    found: dict[tuple[str, str], list[T]] = {}
    for thing in things:
        found.setdefault(key(thing), []).append(thing)
    return found


def by_missed(rows: Sequence[JointRow], *, lead: str, empty: str = "Nothing.") -> tuple[Section, ...]:
    """One section for each word that has rows, heaviest first, its heading led by `lead`."""
    sections = []
    for missed in IfMissed:
        own = tuple(row for row in rows if row.if_missed == missed.words)
        if own:
            number = sum(max(1, len(row.dues)) for row in own)
            sections.append(
                Section(
                    heading=f"{lead}: {counted(number, 'thing')}",
                    if_missed=missed.words,
                    note=MEANINGS[missed],
                    rows=own,
                )
            )
    return tuple(sections) or (Section(heading="owed", empty=empty),)


def joint_row(name: str, state: str, missed: str, dues: Iterable[Due]) -> JointRow:
    """A row that says once what everything under it shares: the reason, the line and the days."""
    every = tuple(dues)
    because, line, days = (
        shared([getattr(due, what) for due in every]) for what in ("because", "line", "days")
    )
    bare = tuple(
        replace(
            due,
            because="" if because else due.because,
            line=None if line is not None else due.line,
            days=None if line is not None else due.days,
        )
        for due in every
    )
    return JointRow(
        name=name,
        state=state,
        if_missed=if_missed(missed).words,
        because=because or "",
        line=line,
        days=days if line is not None else None,
        dues=bare,
    )


def shared(values: Sequence[T]) -> T | None:
    """The value all of them have, or None.

    >>> shared([4, 4]), shared([4, 5]), shared([])
    (4, None, None)
    """
    return values[0] if len(set(values)) == 1 else None
