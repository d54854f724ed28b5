"""Lower bounds that no search is needed for: what links, windows and the sum of work leave possible at best.

A set of targets is all reached no sooner than the last of its activities could end, each placed as if
alone; and no sooner than the sessions have room for the work of all of them together, of those that
cannot begin before some moment after that moment, and with what must follow still to come. Whatever the
order in which targets are reached, the last of each set is held by the bound of that set: the best order
under these bounds bounds the value.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from witnessmark.engines.schedule_axis import Axis
from witnessmark.engines.schedule_kernel import earliest
from witnessmark.engines.schedule_tails import in_order_of_links, needed, target_tails

Array = Any

# With more targets than this, sets of them are not looked at one by one: only the heaviest are.
MOST_TARGETS = 9
# So many different tails are looked at for a set of targets.
MOST_TAILS = 12


class Bounds(NamedTuple):
    """The bound of the value, of each target by itself, and the order of targets that the bound takes."""

    value: int
    targets: tuple[int, ...]
    order: tuple[int, ...]


def bounds_of(axis: Axis) -> Bounds:
    """Clock minutes and a weighted sum of them that no schedule can beat."""
    return _Bounding(axis).bounds()


class _Bounding:
    def __init__(self, axis: Axis) -> None:
        self.axis = axis
        order = in_order_of_links(axis)
        self.need = needed(axis, order)
        self.count = len(axis.weight)
        self.tail = [target_tails(axis, order, self.need, t) for t in range(self.count)]
        self.head = np.zeros(len(order), dtype=np.int64)
        self.end = np.zeros(len(order), dtype=np.int64)
        earliest(axis, np.array(order), self.head, self.end)
        self.by_head = np.argsort(-self.head, kind="stable")
        self.works = [*_energies(axis), *_one_at_a_time(axis)]

    def bounds(self) -> Bounds:
        singles = tuple(self.reached((t,)) for t in range(self.count))
        weight = [int(w) for w in self.axis.weight]
        heaviest = sorted(range(self.count), key=lambda t: -weight[t])[:MOST_TARGETS]
        value, order = self._best_order(heaviest, singles, weight)
        left = [t for t in range(self.count) if t not in heaviest]
        value += sum(weight[t] * singles[t] for t in left)
        return Bounds(value, singles, (*order, *sorted(left, key=lambda t: singles[t])))

    def _best_order(
        self, targets: list[int], singles: tuple[int, ...], weight: list[int]
    ) -> tuple[int, list[int]]:
        """The cheapest order: each set's last target is reached no sooner than the set."""
        best: dict[int, tuple[int, list[int]]] = {0: (0, [])}
        for chosen in range(1, 1 << len(targets)):
            members = [t for n, t in enumerate(targets) if chosen >> n & 1]
            whole = self.reached(tuple(members))
            choices = []
            for n, last in enumerate(targets):
                if chosen >> n & 1:
                    cost, order = best[chosen & ~(1 << n)]
                    choices.append((cost + weight[last] * max(whole, singles[last]), [*order, last]))
            best[chosen] = min(choices)
        return best[(1 << len(targets)) - 1]

    def reached(self, targets: tuple[int, ...]) -> int:
        """The clock minute before which not all of these targets are reached."""
        mask = self.need[list(targets)].any(axis=0)
        tail = np.max([self.tail[t] * self.need[t] for t in targets], axis=0)
        at_least = int(max(self._clock_end(self.end[mask]) + tail[mask], default=0))
        for queue in self._queues(tail[mask]):
            held = mask & (tail >= queue)
            for capacity, work in self.works:
                boundary = self._room(held, capacity, work)
                if boundary:
                    at_least = max(at_least, int(self._clock_end(np.array([boundary]))[0]) + int(queue))
        return self._in_session(at_least)

    def _queues(self, tail: Array) -> Array:
        distinct = np.unique(tail)
        if len(distinct) <= MOST_TAILS:
            return distinct
        return np.unique(np.quantile(tail, np.linspace(0, 1, MOST_TAILS), method="lower"))

    def _room(self, held: Array, capacity: Array, work: Array) -> int:
        """The first boundary by which there was room for all this work after the moments it may begin."""
        order = self.by_head[held[self.by_head]]
        done = np.cumsum(work[order])
        if not len(order) or not done[-1]:
            return 0
        done = done + self._set_ups(order, work)
        due = int(np.max(np.where(done > 0, capacity[self.head[order]] + done, 0)))
        boundary = int(np.searchsorted(capacity, due))
        return min(boundary, len(capacity) - 1)

    def _set_ups(self, order: Array, work: Array) -> Array:
        """The least that set-ups add to each sum along an order of activities: so many sessions each."""
        added = np.zeros(len(order), dtype=np.int64)
        for group, cells in enumerate(self.axis.set_up[:-1]):
            of_it = self.axis.group[order] == group
            taking = work[order] > 0
            if not cells or not of_it.any() or not taking[of_it].all():
                continue
            longest = int((self.axis.closes - self.axis.opens).max()) - cells
            least = int((work[order] // self.axis.length[order])[of_it].min())
            done = np.cumsum(self.axis.length[order] * of_it)
            added += -(-done // max(1, longest * self._together(order[of_it]))) * cells * least
        return added

    def _together(self, members: Array) -> int:
        """How many of these activities could at most run at once."""
        demand, most = self.axis.demand[members].min(axis=0), self.axis.free.max(axis=0)
        return int(min((m // d for m, d in zip(most, demand, strict=True) if d), default=len(members)))

    def _clock_end(self, boundary: Array) -> Array:
        session = self.axis.session[boundary - 1]
        return self.axis.clock[session] + (boundary - self.axis.opens[session]) * self.axis.unit

    def _in_session(self, minute: int) -> int:
        """The first clock minute from here on at which something can end."""
        cells = self.axis.closes - self.axis.opens
        ends = self.axis.clock + cells * self.axis.unit
        session = int(np.searchsorted(ends, minute))
        if session == len(ends):
            return int(ends[-1])
        return max(minute, int(self.axis.clock[session]) + self.axis.unit)


def _energies(axis: Axis) -> list[tuple[Array, Array]]:
    """For each resource the room there was by each boundary, and what each activity takes of it."""
    rooms = [_summed(axis.free[:, r]) for r in range(axis.free.shape[1])]
    return [(room, axis.length * axis.demand[:, r]) for r, room in enumerate(rooms)]


def _one_at_a_time(axis: Axis) -> list[tuple[Array, Array]]:
    """Of activities that take more than half of the most there is, two are never done at once."""
    found = []
    for r in range(axis.free.shape[1]):
        most, demand = axis.free[:, r].max(), axis.demand[:, r]
        wide = 2 * demand > most
        if wide.any() and most > 1:
            least = demand[wide].min()
            found.append((_summed((axis.free[:, r] >= least).astype(np.int64)), axis.length * wide))
    return found


def _summed(free: Array) -> Array:
    return np.concatenate(([0], np.cumsum(free.astype(np.int64))))
