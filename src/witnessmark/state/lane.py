"""A lane: one subject's way through the journal. All lanes are walked in one pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from copy import copy
from typing import Any, Protocol, TypeVar

from witnessmark.journal.entry import Entry

Step = Callable[[Entry, Any], None]


class Lane(Protocol):
    """One subject: its steps, each for one type of fact, called with the line and its fact."""

    @property
    def steps(self) -> Mapping[type, Step]: ...

    def copied(self) -> Lane: ...


AnyLane = TypeVar("AnyLane")


def copied(lane: AnyLane) -> AnyLane:
    """The same lane once more, standing where this one stands; what either adds the other does not see."""
    fresh = copy(lane)
    for name, value in vars(lane).items():
        if isinstance(value, dict | list | set):
            setattr(fresh, name, value.copy())
    return fresh


def walk(entries: Iterable[Entry], lanes: Iterable[Lane]) -> None:
    """Lead every lane along the entries, which stand in reading order."""
    routes: dict[type, list[Step]] = {}
    for lane in lanes:
        for kind, step in lane.steps.items():
            routes.setdefault(kind, []).append(step)
    nowhere: list[Step] = []
    for entry in entries:
        fact = entry.fact
        for step in routes.get(type(fact), nowhere):
            step(entry, fact)
