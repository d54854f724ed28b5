"""Debts and holds gathered under the joint they are owed on, and joints under what happens if missed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

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


def by_missed(rows: Sequence[JointRow], *, empty: str = "Nothing.") -> tuple[Section, ...]:
    """One section for each word, heaviest first; a word nothing falls under has no section."""
    sections = []
    for missed in IfMissed:
        own = tuple(row for row in rows if row.if_missed == missed.words)
        if own:
            number = sum(max(1, len(row.dues)) for row in own)
            sections.append(
                Section(
                    heading=f"{missed.words}: {counted(number, 'thing')}",
                    if_missed=missed.words,
                    note=MEANINGS[missed],
                    rows=own,
                )
            )
    return tuple(sections) or (Section(heading="owed", empty=empty),)


def joint_row(name: str, state: str, missed: str, dues: Iterable[Due]) -> JointRow:
    """A row whose reason is said once, where every line under it has the same."""
    dues = tuple(dues)
    reasons = {due.because for due in dues}
    if len(reasons) != 1:
        return JointRow(name=name, state=state, if_missed=if_missed(missed).words, dues=dues)
    bare = tuple(
        Due(what=d.what, line=d.line, days=d.days, when=d.when, code=d.code, limits=d.limits) for d in dues
    )
    return JointRow(
        name=name, state=state, if_missed=if_missed(missed).words, because=reasons.pop(), dues=bare
    )
