"""First orders of activities by rules: targets one after the other, and what has most behind it first."""

from __future__ import annotations

from collections.abc import Iterator
from heapq import heapify, heappop, heappush
from typing import Any

import numpy as np

from witnessmark.engines.schedule_axis import Axis
from witnessmark.engines.schedule_tails import in_order_of_links, needed, tails

Array = Any

# How many times the average wait for a suitable session, and for one after a lag, is counted in.
TIMES = ((1.0, 1.0), (0.0, 0.0), (2.0, 1.0))
# What suits fewer than two sessions in three is laid first, with all that leads to it.
SELDOM = 1.5


def rule_orders(axis: Axis, targets: tuple[int, ...]) -> Iterator[Array]:
    """Orders to begin with, the most promising rules first.

    targets  the order in which targets are reached under the lower bound

    A minute of work counts as one on the clock, or as many as pass on average until there is room for
    it; and an activity waits for a session that suits it, the longer the more seldom there is one.
    """
    links = in_order_of_links(axis)
    need = needed(axis, links)
    whole = float(axis.clock[-1] - axis.clock[0])
    work = axis.length * axis.unit * (whole / len(axis.session) / axis.unit + 1)
    gap = whole / len(axis.clock)
    seldom = _seldom(axis)
    waits = gap * (seldom - 1)
    ranks = _ranks(need, targets)
    leading = 2 * ranks + ~_leads_to(axis, links, seldom > SELDOM)
    for first in (ranks, leading):
        for times, pauses in TIMES:
            yield ordered(axis, first, tails(axis, links, work + times * waits, pauses * gap))
    for spans in (axis.length * axis.unit * 1.0, work + waits):
        yield ordered(axis, np.zeros(len(links), dtype=np.int64), tails(axis, links, spans))


def _leads_to(axis: Axis, links: list[int], marked: Array) -> Array:
    """Which activities are marked, or come before one that is."""
    found = marked.copy()
    for number in reversed(links):
        found[number] |= found[axis.then[axis.then_at[number] : axis.then_at[number + 1]]].any()
    return found


def ordered(axis: Axis, ranks: Array, tail: Array) -> Array:
    """An order in which links hold: lowest rank first, of one rank the longest tail."""
    waits = np.diff(axis.before_at).tolist()
    then_at, then = axis.then_at.tolist(), axis.then.tolist()
    keys = [(int(rank), -float(t), n) for n, (rank, t) in enumerate(zip(ranks, tail, strict=True))]
    ready = [keys[n] for n, count in enumerate(waits) if not count]
    heapify(ready)
    found = []
    while ready:
        number = heappop(ready)[2]
        found.append(number)
        for after in then[then_at[number] : then_at[number + 1]]:
            waits[after] -= 1
            if not waits[after]:
                heappush(ready, keys[after])
    return np.array(found, dtype=np.int64)


def _ranks(need: Array, targets: tuple[int, ...]) -> Array:
    """For each activity the place of the first target that needs it."""
    ranks = np.full(need.shape[1], len(targets), dtype=np.int64)
    for place, target in reversed(list(enumerate(targets))):
        ranks[need[target]] = place
    return ranks


def _seldom(axis: Axis) -> Array:
    """Of how many sessions one suits each activity, on average."""
    found = np.ones(len(axis.length))
    for demand in np.unique(axis.demand, axis=0):
        suits = int((axis.free[axis.opens] >= demand).all(axis=1).sum())
        found[(axis.demand == demand).all(axis=1)] = len(axis.opens) / max(1, suits)
    return found
