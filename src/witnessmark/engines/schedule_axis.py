"""A problem as arrays on the axis of work: all sessions laid end to end, cut into cells of equal length."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from math import gcd
from typing import Any, NamedTuple

import numpy as np

from witnessmark.engines.schedule_model import Piece, Placed, Problem, Schedule, Session

Array = Any


class Axis(NamedTuple):
    """Cells are numbered from 0 along the axis; a boundary is the number of the cell that follows it.

    unit      clock minutes of one cell
    length    cells each activity takes; one: whether in one go; first: cell before which it may not begin
    demand    activity by resource; group: its group or -1; set_up: cells for each group
    before_at, before, before_lag   links by their later end: those of i lie at before_at[i]:before_at[i+1]
    then_at, then, then_lag         links by their earlier end
    opens, closes   first cell of each session and the boundary at its end; clock: where each session opens
    session   the session of each cell; free: capacity of each cell by resource
    aim_at, aim, weight     activities of each target and its weight
    """

    unit: int
    length: Array
    one: Array
    first: Array
    demand: Array
    group: Array
    set_up: Array
    before_at: Array
    before: Array
    before_lag: Array
    then_at: Array
    then: Array
    then_lag: Array
    opens: Array
    closes: Array
    clock: Array
    session: Array
    free: Array
    aim_at: Array
    aim: Array
    weight: Array


def axis_of(problem: Problem) -> Axis:
    """The arrays of a problem without troubles."""
    unit = _unit(problem)
    cells = np.array([s.minutes // unit for s in problem.sessions], dtype=np.int64)
    closes = np.cumsum(cells)
    opens = closes - cells
    clock = np.array([s.start for s in problem.sessions], dtype=np.int64)
    capacities = np.array([s.capacities for s in problem.sessions], dtype=np.int32)
    count = len(problem.activities)
    earliest = [a.earliest for a in problem.activities]
    links = [(k.before, k.then, k.minutes) for k in problem.links]
    before_at, before, before_lag = _rows(count, [(then, one, lag) for one, then, lag in links])
    then_at, then, then_lag = _rows(count, links)
    aims = [(n, a, 0) for n, t in enumerate(problem.targets) for a in t.activities]
    aim_at, aim, _ = _rows(len(problem.targets), aims)
    return Axis(
        unit=unit,
        length=_whole(a.minutes // unit for a in problem.activities),
        one=np.array([problem.in_one_go(n) for n in range(count)], dtype=np.bool_),
        first=_whole(_cell(problem, opens, unit, minute) for minute in earliest),
        demand=np.array([a.demands for a in problem.activities], dtype=np.int32),
        group=_whole(a.group for a in problem.activities),
        set_up=_whole(m // unit for m in (*problem.set_ups, 0)),
        before_at=before_at, before=before, before_lag=before_lag,
        then_at=then_at, then=then, then_lag=then_lag,
        opens=opens, closes=closes, clock=clock,
        session=np.repeat(np.arange(len(cells)), cells),
        free=np.repeat(capacities, cells, axis=0),
        aim_at=aim_at, aim=aim, weight=_whole(t.weight for t in problem.targets),
    )  # fmt: skip


def schedule_of(axis: Axis, start: Array, flag: Array) -> Schedule:
    """A schedule on the clock, from the cell each activity begins in and whether it sets up."""
    return Schedule(tuple(_placed(axis, n, int(s), bool(flag[n])) for n, s in enumerate(start)))


def _placed(axis: Axis, number: int, start: int, set_up: bool) -> Placed:
    left = int(axis.length[number]) + (int(axis.set_up[axis.group[number]]) if set_up else 0)
    pieces = []
    while left:
        session = int(axis.session[start])
        cells = min(left, int(axis.closes[session]) - start)
        minute = int(axis.clock[session]) + (start - int(axis.opens[session])) * axis.unit
        pieces.append(Piece(session, minute, cells * axis.unit))
        start, left = start + cells, left - cells
    return Placed(tuple(pieces), set_up)


def _unit(problem: Problem) -> int:
    """The longest cell that every length, and every moment something can begin at, is a whole number of."""
    lengths = [a.minutes for a in problem.activities] + [s.minutes for s in problem.sessions]
    lags = [k.minutes for k in problem.links if k.minutes]
    starts = [s.start - problem.sessions[0].start for s in problem.sessions] if lags else []
    inside = (_inside(problem, a.earliest) for a in problem.activities)
    return gcd(*lengths, *problem.set_ups, *lags, *starts, *inside)


def _inside(problem: Problem, minute: int) -> int:
    """Minutes from the start of a session to a moment inside it; 0: it lies in none."""
    number = bisect_right(problem.sessions, minute, key=_end)
    return max(0, minute - problem.sessions[number].start) if number < len(problem.sessions) else 0


def _end(session: Session) -> int:
    return session.end


def _cell(problem: Problem, opens: Array, unit: int, minute: int) -> int:
    """The first cell that begins at a clock minute or later; beyond the last where there is none."""
    number = bisect_right(problem.sessions, minute, key=_end)
    if number == len(problem.sessions):
        return int(opens[-1]) + problem.sessions[-1].minutes // unit
    return int(opens[number]) - (-max(0, minute - problem.sessions[number].start) // unit)


def _whole(numbers: Iterable[int]) -> Array:
    return np.array(list(numbers), dtype=np.int64)


def _rows(count: int, triples: Iterable[tuple[int, int, int]]) -> tuple[Array, Array, Array]:
    """Triples (row, column, value) as rows laid end to end."""
    ordered = sorted(triples)
    at = np.zeros(count + 1, dtype=np.int64)
    for row, _, _ in ordered:
        at[row + 1] += 1
    return np.cumsum(at), _whole(c for _, c, _ in ordered), _whole(v for _, _, v in ordered)
