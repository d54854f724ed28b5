"""A schedule within a blink, better ones for as long as is allowed, and always how far from the best.

First rules, then chains of annealing from the best of them (or from the last schedule, where there was
one), then the exact solver with the best schedule as its hint. Everything follows from the seed and the
steps; only who calls may let a clock say how much of what is allowed is used up.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, Protocol

import numpy as np
from msgspec import Struct

from witnessmark.engines.schedule_axis import Axis, axis_of, schedule_of
from witnessmark.engines.schedule_bound import Bounds, bounds_of
from witnessmark.engines.schedule_check import answer_faults
from witnessmark.engines.schedule_kernel import (
    anneal,
    changed,
    clock_at_end,
    earliest,
    forwards,
    improved,
    last_of,
    lateness,
    value_of,
)
from witnessmark.engines.schedule_model import Answer, Problem, Schedule, Trouble
from witnessmark.engines.schedule_rules import ordered, rule_orders
from witnessmark.engines.schedule_tails import in_order_of_links
from witnessmark.engines.schedule_trouble import troubles_of
from witnessmark.ground.errors import WitnessMarkError

Array = Any

CHAINS = 2
# Steps between two looks at what is used up, for a hundred activities; fewer for more.
LOOK = 2_000
# Where a plan stood before, each activity of its next few sessions that goes elsewhere costs as much as so
# many clock minutes later at an average target. Our choice.
NEAR, STAYING = 4, 24 * 60
# Seconds for each activity that must be left, or the exact solver is not asked: telling it takes a fifth.
TELLING = 0.01
# Heat at the beginning and the end, in the measure of `_later`.
HOT, COLD = 1.0, 0.2


class Spread(Protocol):
    """Does something for each of several things: `map`, or the `map` of a pool of threads."""

    def __call__(self, act: Callable[[int], _Found], numbers: Iterable[int], /) -> Iterable[_Found]: ...


class Allowed(Struct, frozen=True, kw_only=True):
    """How much may be spent.

    used     given the steps a chain has made, the share of what is allowed that is used up; 1: stop
    exact    effort of the exact solver in its own deterministic measure, about seconds; 0: not asked
    seconds  the seconds it may take, asked when its turn comes, where the caller has a clock
    workers  threads of the exact solver
    told     is given the best value of a chain whenever it was looked at
    """

    used: Callable[[int], float]
    exact: float = 0.0
    seconds: Callable[[], float] | None = None
    workers: int = 1
    told: Callable[[int], None] | None = None


def by_steps(steps: int, *, exact: float = 0.0) -> Allowed:
    """So many steps a chain; the same every time."""
    return Allowed(used=lambda made: made / max(1, steps), exact=exact)


def schedule(
    problem: Problem,
    allowed: Allowed | None = None,
    *,
    seed: int = 0,
    last: Schedule | None = None,
    spread: Spread = map,
) -> Answer:
    """The best schedule found, read a second time, with a bound that none can beat.

    last    a schedule of the same activities, from which to go on: its order is kept but where a change
            betters it; it need not fit any more
    spread  how the chains are run

    Where there can be none, the answer says why. Without `allowed` only the rules are asked.
    """
    troubles = troubles_of(problem)
    if troubles:
        return Answer(schedule=Schedule(()), troubles=troubles)
    axis = axis_of(problem)
    bounds = bounds_of(axis)
    found = _first(axis, bounds, last)
    if found is None:
        return Answer(schedule=Schedule(()), troubles=(_ran_out(problem, axis),))
    first, bound = found.value, bounds.value
    if allowed is not None and found.value > bound:
        stood = _stood(axis, last)
        found = _annealed(axis, found, bounds, allowed, seed, spread, stood)
        if found.value > bound and _worth_asking(allowed, len(axis.length)):
            from witnessmark.engines.schedule_exact import solved

            begun, bound = solved(axis, bounds, found.start, found.flag, allowed, seed)
            found = _better(axis, found, begun)
    return _checked(problem, _answer(axis, found, first, bound))


def _worth_asking(allowed: Allowed, count: int) -> bool:
    """Whether the exact solver has time for more than to be told the problem."""
    if allowed.seconds is None:
        return allowed.exact > 0
    return allowed.seconds() > count * TELLING


class _Found:
    """An order with its schedule and value; `steps` made to come to it."""

    def __init__(self, axis: Axis, order: Array, join: Array | None = None) -> None:
        count = len(axis.length)
        self.order = order.copy()
        self.join = np.ones(count, dtype=np.bool_) if join is None else join.copy()
        self.start, self.end = np.zeros(count, dtype=np.int64), np.zeros(count, dtype=np.int64)
        self.flag = np.zeros(count, dtype=np.bool_)
        self.value = int(improved(axis, self.order, self.join, self.start, self.end, self.flag))
        self.steps = 1


def _first(axis: Axis, bounds: Bounds, last: Schedule | None) -> _Found | None:
    """The order of the last schedule, where that has room, else the best of the rules; else None."""
    if last is not None:
        found = _Found(axis, _order_of(axis, last))
        if found.value >= 0:
            return found
    fitting = [f for order in rule_orders(axis, bounds.order) if (f := _Found(axis, order)).value >= 0]
    return min(fitting, key=lambda f: f.value) if fitting else None


def _stood(axis: Axis, last: Schedule | None) -> Array:
    """The session each activity began in, where it is one of the next few; -1 elsewhere."""
    stood = np.full(len(axis.length), -1, dtype=np.int64)
    near = axis.clock + (axis.closes - axis.opens) * axis.unit
    for number, placed in enumerate(last.placed if last is not None else ()):
        session = int(np.searchsorted(near, placed.start, side="right"))
        if session < min(NEAR, len(near)) and axis.clock[session] <= placed.start:
            stood[number] = session
    return stood


def _order_of(axis: Axis, last: Schedule) -> Array:
    """Activities by where the last schedule began them, but never before what they wait for now."""
    begun = np.array([p.start for p in last.placed], dtype=np.float64)
    return ordered(axis, np.zeros(len(begun), dtype=np.int64), -begun)


def _annealed(
    axis: Axis, found: _Found, bounds: Bounds, allowed: Allowed, seed: int, spread: Spread, stood: Array
) -> _Found:
    """The best of the chains; where a plan stood before, its next sessions count for something."""
    guide = _Guide(axis, bounds, stood)
    seeds = range(seed * CHAINS, (seed + 1) * CHAINS)
    chains = spread(lambda one: _chain(axis, found, guide, allowed, one), seeds)
    return min((found, *chains), key=guide.price_of)


class _Guide:
    """What a walk is led by beside the value: goals of the targets, and sessions that should stay."""

    def __init__(self, axis: Axis, bounds: Bounds, stood: Array) -> None:
        self.axis = axis
        self.goals = np.array(bounds.targets, dtype=np.int64)
        self.stood = stood
        self.price = int(axis.weight.mean() * STAYING)
        self.hot = HOT if (stood < 0).all() else COLD

    def price_of(self, found: _Found) -> int:
        """The value, with what changes cost."""
        return found.value + int(changed(self.axis, found.start, self.stood, self.price))

    def late(self, found: _Found) -> int:
        return int(lateness(self.axis, found.end, self.goals)) if len(self.axis.clock) > 1 else 0


def _chain(axis: Axis, found: _Found, guide: _Guide, allowed: Allowed, seed: int) -> _Found:
    """One walk, cooling down as the share used up grows; stopped by it and by nothing else."""
    order, join = found.order.copy(), found.join.copy()
    best, best_join = order.copy(), join.copy()
    price = guide.price_of(found)
    values = np.array([price + guide.late(found), price])
    state = np.array([(seed * 2_654_435_761 + 88_172_645) % 4_294_967_291 + 1])
    look = max(5, LOOK * 100 // (len(order) * len(order)))
    made = 0
    later = _later(axis)
    while (used := allowed.used(made)) < 1:
        heat = later * guide.hot ** (1 - used) * COLD**used
        anneal(
            axis, order, join, best, best_join, values, guide.goals, guide.stood, guide.price, state, look,
            heat, heat,
        )  # fmt: skip
        made += look
        if allowed.told is not None:
            allowed.told(int(values[1]))
    came = _Found(axis, best, best_join)
    came.steps = found.steps + made
    return came


def _later(axis: Axis) -> float:
    """What a cell later costs on average; with several sessions, what an hour or so of work later does."""
    return float(axis.weight.mean()) * axis.unit * (1 if len(axis.clock) == 1 else 20)


def _better(axis: Axis, found: _Found, begun: tuple[Array, Array] | None) -> _Found:
    """The better of what was found and what the exact solver found; that pulled forward, if it helps."""
    if begun is None:
        return found
    start, flag = begun
    exact = _Found(axis, np.argsort(start, kind="stable"), found.join)
    exact.steps = found.steps
    end = start + axis.length + np.where(flag, axis.set_up[axis.group], 0)
    value = int(value_of(axis, end))
    if not 0 <= exact.value <= value:
        exact.start, exact.end, exact.flag, exact.value = start, end, flag, value
    return exact if exact.value < found.value else found


def _answer(axis: Axis, found: _Found, first: int, bound: int) -> Answer:
    boundaries = [int(last_of(axis, t, found.end)) for t in range(len(axis.weight))]
    return Answer(
        schedule=schedule_of(axis, found.start, found.flag),
        value=found.value,
        bound=min(bound, found.value),
        ends=tuple(int(clock_at_end(b, axis.session, axis.opens, axis.clock, axis.unit)) for b in boundaries),
        first=first,
        steps=found.steps,
    )


def _checked(problem: Problem, answer: Answer) -> Answer:
    wrong = answer_faults(problem, answer)
    if wrong:
        raise WitnessMarkError(f"a schedule did not stand its second reading: {'; '.join(wrong[:5])}")
    return answer


def _ran_out(problem: Problem, axis: Axis) -> Trouble:
    """No room: for the first activities that have none even alone, else for the first that finds none.

    None is named where the sessions are too few for the work as a whole.
    """
    needed = sum(a.minutes for a in problem.activities)
    there = sum(s.minutes for s in problem.sessions)
    if needed > there:
        return Trouble(kind="ran_out", needed=needed, there=there)
    count = len(axis.length)
    start, end = np.zeros(count, dtype=np.int64), np.zeros(count, dtype=np.int64)
    order = in_order_of_links(axis)
    earliest(axis, np.array(order), start, end)
    late = {n for n in order if end[n] - start[n] < axis.length[n]}
    first = tuple(n for n in order if n in late and not late & set(_before(axis, n)))
    if not first:
        start[:] = -1
        join = np.ones(count, dtype=np.bool_)
        forwards(axis, np.array(order), join, start, end, np.zeros(count, dtype=np.bool_))
        first = (next((n for n in order if start[n] < 0), order[-1]),)
    return Trouble(kind="ran_out", activities=first, needed=needed, there=there)


def _before(axis: Axis, number: int) -> list[int]:
    return [int(n) for n in axis.before[axis.before_at[number] : axis.before_at[number + 1]]]
