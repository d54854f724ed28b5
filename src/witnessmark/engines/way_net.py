"""An AND/OR graph as plain lists: what can be carried out in which order, and a good way found quickly."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from heapq import heappop, heappush

from witnessmark.engines.way_bits import members
from witnessmark.engines.way_graph import Graph


class Net:
    """Routes numbered through, each with the thing it leads to.

    of      thing -> numbers of the routes to it
    behind  thing -> numbers of the routes it is part of
    """

    def __init__(self, graph: Graph) -> None:
        self.targets = tuple(members(graph.targets))
        self.owner: list[int] = []
        self.route: list[tuple[int, ...]] = []
        self.of: dict[int, list[int]] = {thing: [] for thing in graph.routes}
        self.behind: dict[int, list[int]] = {thing: [] for thing in graph.routes}
        for thing, routes in graph.routes.items():
            for route in routes:
                number = len(self.route)
                self.owner.append(thing)
                self.route.append(tuple(members(route)))
                self.of[thing].append(number)
                for member in self.route[number]:
                    self.behind[member].append(number)
        self._sizes = [len(route) for route in self.route]
        self._at_once = {
            thing for thing, numbers in self.of.items() if any(not self.route[n] for n in numbers)
        }

    def carried_out(self, taken: Collection[int]) -> tuple[list[int], set[int]]:
        """What of `taken` can go, outermost first, and everything a hand comes to with it gone."""
        wanting = self._sizes.copy()
        reached = self._at_once.copy()
        order = sorted(reached.intersection(taken))
        for thing in order:  # grows while it is read
            for number in self.behind[thing]:
                wanting[number] -= 1
                owner = self.owner[number]
                if not wanting[number] and owner not in reached:
                    reached.add(owner)
                    if owner in taken:
                        order.append(owner)
        return order, reached

    def works(self, taken: Collection[int]) -> bool:
        """Whether every target is reached with these taken."""
        return self.carried_out(taken)[1].issuperset(self.targets)

    def quick(self, price: Mapping[int, int], targets: Iterable[int], have: Iterable[int] = ()) -> set[int]:
        """A way found by adding up prices, as if nothing were shared; what is in `have` is free.

        A route counts only once all that stands in it is settled: no circle can justify itself.
        """
        free = set(have)
        come_to = self._settled({t: 0 if t in free else p for t, p in price.items()})
        taken, todo = set(free), list(targets) + [t for t in free]
        seen = set(todo)
        while todo:
            for member in self.route[come_to[todo.pop()]]:
                taken.add(member)
                if member not in seen:
                    seen.add(member)
                    todo.append(member)
        return taken

    def _settled(self, price: Mapping[int, int]) -> dict[int, int]:
        """Thing -> the route it is best reached by, for prices added up."""
        wanting = self._sizes.copy()
        total = [0] * len(self.route)
        heap = [(0, number) for number, route in enumerate(self.route) if not route]
        by: dict[int, int] = {}
        while heap:
            cost, number = heappop(heap)
            thing = self.owner[number]
            if thing in by:
                continue
            by[thing] = number
            for further in self.behind[thing]:
                wanting[further] -= 1
                total[further] += cost + price[thing]
                if not wanting[further]:
                    heappush(heap, (total[further], further))
        return by

    def thinned(
        self, taken: Collection[int], price: Mapping[int, int], needed: Collection[int] = ()
    ) -> list[int]:
        """What is left of a way that works once nothing more can be spared, in order; dearest tried first.

        needed  things known to be in every way
        """
        kept = set(self.carried_out(taken)[0])
        for thing in sorted(kept.difference(needed), key=lambda t: (-price[t], -t)):
            less = kept - {thing}
            if thing in kept and self.works(less):
                kept = set(self.carried_out(less)[0])
        return self.carried_out(kept)[0]

    def circles(self, waiting: Collection[int], used: Collection[int]) -> list[set[int]]:
        """Sets of waiting things that wait, along the routes in use, for nobody outside the set."""
        among = set(waiting)
        before = {
            thing: [m for n in self.of[thing] if n in used for m in self.route[n] if m in among]
            for thing in among
        }
        return [one for one in strong_components(before) if all(m in one for t in one for m in before[t])]


def strong_components(arrows: Mapping[int, Sequence[int]]) -> list[set[int]]:
    """Sets within which every thing leads to every other, by Tarjan's method without recursion.

    >>> strong_components({1: [2], 2: [1], 3: [1]})
    [{1, 2}, {3}]
    """
    index: dict[int, int] = {}
    low: dict[int, int] = {}
    path: list[int] = []
    on_path: set[int] = set()
    found: list[set[int]] = []
    for root in arrows:
        if root in index:
            continue
        calls = [(root, iter(arrows[root]))]
        index[root] = low[root] = len(index)
        path.append(root)
        on_path.add(root)
        while calls:
            thing, rest = calls[-1]
            fresh = next((n for n in rest if n not in index), None)
            if fresh is not None:
                index[fresh] = low[fresh] = len(index)
                path.append(fresh)
                on_path.add(fresh)
                calls.append((fresh, iter(arrows[fresh])))
                continue
            calls.pop()
            low[thing] = min([low[thing], *(low[n] for n in arrows[thing] if n in on_path)])
            if low[thing] == index[thing]:
                cut = path.index(thing)
                found.append(set(path[cut:]))
                on_path -= found[-1]
                del path[cut:]
    return found
