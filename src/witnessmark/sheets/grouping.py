"""Debts and holds gathered under the joint they are owed on, and joints under what happens if missed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from msgspec.structs import replace

from witnessmark.ground.missed import MEANINGS, IfMissed, if_missed
from witnessmark.sheets.phrases import counted
from witnessmark.sheets.rows import Due, JointRow, Section

T = TypeVar("T")
TOLD_WHOLE = ("write down", "put right", "finger-tight", "empty the bag")


def gathered(things: Iterable[T], key: Callable[[T], tuple[str, str]]) -> Mapping[tuple[str, str], list[T]]:
    """Things under their (what happens if missed, name), names in the order they first come."""
    found: dict[tuple[str, str], list[T]] = {}
    for thing in things:
        found.setdefault(key(thing), []).append(thing)
    return found


def by_missed(
    rows: Sequence[JointRow],
    *,
    lead: str,
    empty: str = "Nothing.",
    shown: Callable[[JointRow], JointRow] = lambda row: row,
) -> tuple[Section, ...]:
    """One section for each word that has rows, heaviest first, its heading led by `lead`.

    shown  how a row is shown once everything on it was counted
    """
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
                    rows=tuple(shown(row) for row in own),
                )
            )
    return tuple(sections) or (Section(heading="owed", empty=empty),)


def joint_row(name: str, state: str, missed: str, dues: Iterable[Due]) -> JointRow:
    """A row that says once what is shared under it: the reason all have, the line most of them have."""
    every = tuple(dues)
    reasons = {due.because for due in every}
    because = reasons.pop() if len(reasons) == 1 else ""
    places = Counter((due.line, due.days) for due in every)
    often, times = places.most_common(1)[0] if places else ((None, None), 0)
    line, days = often if times * 2 > len(every) else (None, None)
    bare = tuple(_without(due, because, (line, days)) for due in every)
    return JointRow(
        name=name,
        state=state,
        if_missed=if_missed(missed).words,
        because=because,
        line=line,
        days=days,
        dues=bare,
    )


def brief(row: JointRow) -> JointRow:
    """The same row in two or three lines: all it owes in a few words each, and the reason of the first."""
    if len(row.dues) < 2:
        return row
    words = dict.fromkeys(few_words(due.what) for due in row.dues)
    because = row.because or next((due.because for due in row.dues if due.because), "")
    return replace(row, because=because, dues=(Due(what=" · ".join(words)),))


def few_words(what: str) -> str:
    """A debt in two or three words.

    >>> few_words("pin bent: both legs bent over"), few_words("write down: the figure")
    ('pin bent', 'write down the figure')
    """
    name, colon, text = what.partition(": ")
    return f"{name} {text}" if name in TOLD_WHOLE and colon else name


def _without(due: Due, because: str, place: tuple[int | None, int | None]) -> Due:
    """The due without what its row says already."""
    if (due.line, due.days) == place:
        due = replace(due, line=None, days=None)
    return replace(due, because="") if because else due
