"""The AND/OR graph of a way, cut down to what matters: what is gone drops out, what cannot be reached too."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from witnessmark.engines.way_bits import bits, members, set_of


class Graph:
    """Things that can be reached, with routes as bit sets of things still to go.

    routes   thing -> routes none of which holds another; [0] where it is reached at once
    needs    thing -> all that must be gone, itself among it, whichever routes are taken
    targets  bit set of targets not reached yet; no_way: targets never reached
    """

    def __init__(self, costs: Sequence[int], routes: dict[int, list[int]], targets: Iterable[int]) -> None:
        wanted = list(targets)
        self.no_way = tuple(sorted(t for t in wanted if t not in routes))
        # One more for each thing, below the least real cost: of equal ways the one with fewest things wins.
        self._each = len(costs) + 1
        self._costs = costs
        self._price: dict[int, int] = {}
        self.routes = _before(routes, [t for t in wanted if t in routes])
        self.needs = _needs(self.routes)
        self.targets = set_of(t for t in wanted if t in routes)

    def cost(self, things: int) -> int:
        price = self._price.get(things)
        if price is None:
            price = sum(self._costs[t] * self._each + 1 for t in members(things))
            self._price[things] = price
        return price

    def plain_cost(self, things: int) -> int:
        """What these cost, and nothing for their number."""
        return sum(self._costs[t] for t in members(things))

    def closed(self, things: int) -> int:
        """These things and all that each of them needs in any case."""
        return bits(self.needs[t] for t in members(things))

    def needed_by(self, targets: int) -> int:
        """What must go in any case for the targets to be reached; a target itself need not go."""
        return bits(_shared(self.closed(r) for r in self.routes[t]) for t in members(targets))

    def reached(self, taken: int) -> int:
        """What a hand comes to when only `taken` may go, one after the other."""
        found, gone = 0, 0
        candidates = list(members(taken | self.targets))
        while True:
            fresh = [t for t in candidates if any(r & ~gone == 0 for r in self.routes[t])]
            if not fresh:
                return found
            found |= set_of(fresh)
            gone = found & taken
            candidates = [t for t in candidates if not found >> t & 1]

    def in_order(self, taken: int) -> list[int]:
        """The things of a way, outermost first."""
        order: list[int] = []
        gone, left = 0, list(members(taken))
        while left:
            layer = [t for t in left if any(r & ~gone == 0 for r in self.routes[t])]
            order += layer
            gone |= set_of(layer)
            left = [t for t in left if not gone >> t & 1]
        return order


def graph_of(
    costs: Sequence[int],
    routes: Sequence[Sequence[Sequence[int]]],
    gone: frozenset[int],
    targets: Sequence[int],
    without: frozenset[int],
) -> Graph:
    """What can stand before a target: routes without what is gone, may not go, or is never reached."""
    barred = set_of(without - gone)
    free: dict[int, list[int]] = {}
    todo = [t for t in targets if t not in gone]
    while todo:
        thing = todo.pop()
        if thing not in free:
            plain = [set_of(m for m in r if m not in gone) for r in routes[thing] or ((),)]
            free[thing] = _thinned(r for r in plain if not r & (barred | 1 << thing))
            todo += members(bits(free[thing]))
    reachable = _ever_reached(free)
    kept = {t: [r for r in free[t] if r & ~reachable == 0] for t in members(reachable)}
    return Graph(costs, kept, [t for t in dict.fromkeys(targets) if t not in gone])


def _thinned(routes: Iterable[int]) -> list[int]:
    """Routes that hold no other route: a longer way round is never needed."""
    kept: list[int] = []
    for route in sorted(set(routes), key=lambda r: (r.bit_count(), r)):
        if not any(k & ~route == 0 for k in kept):
            kept.append(route)
    return kept


def _ever_reached(routes: dict[int, list[int]]) -> int:
    reached, left = 0, list(routes)
    while True:
        fresh = [t for t in left if any(r & ~reached == 0 for r in routes[t])]
        if not fresh:
            return reached
        reached |= set_of(fresh)
        left = [t for t in left if not reached >> t & 1]


def _before(routes: dict[int, list[int]], targets: list[int]) -> dict[int, list[int]]:
    """Only what can stand before a target."""
    kept: dict[int, list[int]] = {}
    todo = list(targets)
    while todo:
        thing = todo.pop()
        if thing not in kept:
            kept[thing] = routes[thing]
            todo += [m for r in routes[thing] for m in members(r)]
    return kept


def _needs(routes: dict[int, list[int]]) -> dict[int, int]:
    """For each thing what every way to it holds: the greatest sets that satisfy their own definition."""
    everything = set_of(routes)
    needs = {t: 1 << t if r == [0] else everything for t, r in routes.items()}
    behind: dict[int, list[int]] = {t: [] for t in routes}
    for thing, ways in routes.items():
        for member in members(bits(ways)):
            behind[member].append(thing)
    todo = [t for t, r in routes.items() if r != [0]]
    while todo:
        changed: dict[int, None] = {}
        for thing in todo:
            least = 1 << thing | _shared(bits(needs[m] for m in members(r)) for r in routes[thing])
            if least != needs[thing]:
                needs[thing] = least
                changed |= dict.fromkeys(behind[thing])
        todo = list(changed)
    return needs


def _shared(sets: Iterable[int]) -> int:
    both: int | None = None
    for one in sets:
        both = one if both is None else both & one
    return both or 0
