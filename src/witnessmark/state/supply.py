"""What was wanted, ordered, came, was offered, paid and is owned; and the hours it took."""

from __future__ import annotations

from datetime import date
from typing import Any

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    Came,
    DownedTools,
    Guessed,
    Held,
    Left,
    Offered,
    Ordered,
    Owned,
    Paid,
    Quoted,
    SettledPlan,
    TookTime,
    Valued,
    Wanted,
)
from witnessmark.state.lane import Step, copied


class Line(Struct, frozen=True):
    """A fact with the line and day it stands on."""

    line: int
    day: date
    fact: Any


class Supply(Struct, frozen=True, kw_only=True):
    """Lines by subject, each in reading order."""

    wanted: tuple[Line, ...] = ()
    left: tuple[Line, ...] = ()
    guessed: tuple[Line, ...] = ()
    took: tuple[Line, ...] = ()
    held: tuple[Line, ...] = ()
    downed: tuple[Line, ...] = ()
    settled: tuple[Line, ...] = ()
    ordered: tuple[Line, ...] = ()
    came: tuple[Line, ...] = ()
    offered: tuple[Line, ...] = ()
    quoted: tuple[Line, ...] = ()
    valued: tuple[Line, ...] = ()
    paid: tuple[Line, ...] = ()
    owned: tuple[Line, ...] = ()


_SUBJECTS: dict[type, str] = {
    Wanted: "wanted",
    Left: "left",
    Guessed: "guessed",
    TookTime: "took",
    Held: "held",
    DownedTools: "downed",
    SettledPlan: "settled",
    Ordered: "ordered",
    Came: "came",
    Offered: "offered",
    Quoted: "quoted",
    Valued: "valued",
    Paid: "paid",
    Owned: "owned",
}


class SupplyLane:
    """Wishes, orders, money and hours, on their way through the journal."""

    def __init__(self) -> None:
        self.lines: dict[str, list[Line]] = {subject: [] for subject in _SUBJECTS.values()}

    @property
    def steps(self) -> dict[type, Step]:
        return {kind: self.keep for kind in _SUBJECTS}

    def keep(self, entry: Entry, fact: Any) -> None:
        self.lines[_SUBJECTS[type(fact)]].append(Line(entry.line, entry.day, fact))

    def copied(self) -> SupplyLane:
        fresh = copied(self)
        fresh.lines = {subject: lines.copy() for subject, lines in self.lines.items()}
        return fresh

    def supply(self) -> Supply:
        return Supply(**{subject: tuple(lines) for subject, lines in self.lines.items()})


def same_supplier(one: str, other: str) -> bool:
    """Whether two names mean one supplier: the same, or the one cut short.

    >>> same_supplier("Ottermere", "Ottermere Seals"), same_supplier("Otter", "Ottermere")
    (True, False)
    """
    words, others = one.casefold().split(), other.casefold().split()
    shorter = min(len(words), len(others))
    return shorter > 0 and words[:shorter] == others[:shorter]
