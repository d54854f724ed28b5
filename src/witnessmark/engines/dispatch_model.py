"""Operations and sessions as whole numbers, for running one rule of work through many drawn futures.

An operation is a number from 0; numbers stand in the order in which they would rather be done, and
what comes before an operation has a smaller number. Minutes are of work; clocks are minutes since one
moment. Nothing here knows what is worked on.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int32]
Marks = NDArray[np.uint8]

# Of an operation longer than a session, so many minutes are given to it at a time.
SPELL = 60


# Rows of `Work.each`: minutes decided on; minutes that must be left of a session for it to be begun; pairs
# of hands; once begun it is ended, whatever the hour; longer than a session, it may be done in spells; only
# where the weather allows it; minutes decided on for what it may turn up; how many come before it; where
# its part of each list begins.
PLANNED, ASKS, HANDS, WHOLE, LONG, DRY, MORE, BEFORE, THEN_AT, NEEDS_AT, BOUND_AT = range(11)


class Work(NamedTuple):
    """What is to be done.

    each   a row a property, a column an operation, and one column more that ends the lists
    then   numbers of what comes after each operation, and under them the clock minutes between
    needs  numbers of the things that must have come
    bound  numbers of what must be done in the same session
    """

    each: Ints
    then: Ints
    needs: Ints
    bound: Ints

    @property
    def planned(self) -> Ints:
        return self.each[PLANNED, :-1]


class Sessions(NamedTuple):
    """When there is time: the clock at which each begins, and its minutes of work."""

    starts: Ints
    lengths: Ints


class Futures(NamedTuple):
    """What is drawn, one row a future.

    taken    minutes of each operation
    extra    minutes of what it turns up, 0 where nothing; wait: clock minutes until that can be dealt with
    arrival  the clock at which each thing comes
    held     whether each session takes place; helped: with two pairs of hands; dry: its weather allows it
    """

    taken: Ints
    extra: Ints
    wait: Ints
    arrival: Ints
    held: Marks
    helped: Marks
    dry: Marks


class Run(NamedTuple):
    """In which session each operation ended (-1: in none of them), and after how many minutes of it."""

    session: NDArray[np.int16]
    minute: NDArray[np.int16]


def lists(rows: list[list[int]]) -> tuple[Ints, Ints]:
    """Rows of numbers laid end to end, with where each begins.

    >>> at, flat = lists([[1, 2], [], [3]])
    >>> at.tolist(), flat.tolist()
    ([0, 2, 2, 3], [1, 2, 3])
    """
    at = np.zeros(len(rows) + 1, dtype=np.int32)
    at[1:] = np.cumsum([len(row) for row in rows])
    return at, np.array([one for row in rows for one in row], dtype=np.int32)


def work_of(operations: list[dict[str, Any]], session: int = 1 << 20) -> Work:
    """Work from plain rows; what a row leaves out is nothing, one pair of hands, no minutes.

    session  minutes of the usual one: what asks for more is begun at the start of such a one

    >>> work_of([{"planned": 20}, {"planned": 5, "before": [0]}]).then.tolist()
    [[1], [0]]
    """
    befores = [row.get("before", []) for row in operations]
    lags = [row.get("lag", [0] * len(row.get("before", []))) for row in operations]
    then: list[list[tuple[int, int]]] = [[] for _ in operations]
    for i, (before, lag) in enumerate(zip(befores, lags, strict=True)):
        for j, clock in zip(before, lag, strict=True):
            then[j].append((i, clock))
    then_at, numbers = lists([[i for i, _ in row] for row in then])
    needs_at, needs = lists([row.get("needs", []) for row in operations])
    bound_at, bound = lists([row.get("bound", []) for row in operations])
    each = np.zeros((BOUND_AT + 1, len(operations) + 1), dtype=np.int32)
    for row, key, usual in ((PLANNED, "planned", 0), (HANDS, "hands", 1), (MORE, "more", 0)):
        each[row, :-1] = [one.get(key, usual) for one in operations]
    for row, key in ((WHOLE, "whole"), (LONG, "long"), (DRY, "dry")):
        each[row, :-1] = [bool(one.get(key)) for one in operations]
    each[ASKS, :-1] = [min(session, _asks(one, operations)) for one in operations]
    each[BEFORE, :-1] = [len(before) for before in befores]
    each[THEN_AT], each[NEEDS_AT], each[BOUND_AT] = then_at, needs_at, bound_at
    lag = [clock for row in then for _, clock in row]
    return Work(each=each, then=np.array([numbers, lag], dtype=np.int32), needs=needs, bound=bound)


def _asks(row: dict[str, Any], operations: list[dict[str, Any]]) -> int:
    whole = row["planned"] + sum(operations[b]["planned"] for b in row.get("bound", []))
    return int(min(whole, SPELL)) if row.get("long") else int(whole)


def even(work: Work, sessions: int, futures: int = 1) -> Futures:
    """Futures in which everything takes what is planned, all things are here and nobody comes to help."""
    count = len(work.planned)
    things = int(work.needs.max()) + 1 if len(work.needs) else 0
    none = np.zeros((futures, count), dtype=np.int32)
    every = np.ones((futures, sessions), dtype=np.uint8)
    return Futures(
        taken=np.tile(work.planned, (futures, 1)), extra=none, wait=none,
        arrival=np.zeros((futures, things), dtype=np.int32),
        held=every, helped=np.zeros_like(every), dry=every,
    )  # fmt: skip
