"""The cheapest way by an integer programme, for graphs with too many choices to be tried one by one.

Circles are kept out by rows that are added where they are needed: a set of things can be begun only by
a route that holds none of them. Without these rows the programme is a looser one, so that its bound
holds at every moment; whatever it proposes is carried out in order before it counts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import ceil

from witnessmark.engines.cheapest_way import Way, WayProblem
from witnessmark.engines.mixed import Programme, Solved
from witnessmark.engines.way_bits import members
from witnessmark.engines.way_graph import Graph, graph_of
from witnessmark.engines.way_net import Net, strong_components

ROUNDS, NODES = 60, 4_000

# The first round looks into so many branches; each that ended unproven lets the next look into twice as many.
FIRST_NODES = 400

# Whole circles up to this size get their rows at once.
SMALL_CIRCLE = 25


def exact_way(
    problem: WayProblem,
    *,
    without: frozenset[int] = frozenset(),
    rounds: int = ROUNDS,
    nodes: int = NODES,
    left: Callable[[], float] | None = None,
) -> Way:
    """The cheapest way, or a good one with the bound that no way can beat.

    rounds, nodes  where to stop, nodes in all; by these alone the same problem gives the same answer
    left           seconds that are left, asked before each round; only a shell passes it: then they decide

    >>> problem = WayProblem(costs=(9, 2, 3, 1), routes=((), (), ((1,),), ((0,), (2,))), targets=(3,))
    >>> exact_way(problem).remove
    (1, 2)
    """
    graph = graph_of(problem.costs, problem.routes, problem.gone, problem.targets, without)
    search = _Search(problem, graph)
    for _ in range(rounds):
        if search.proven or (left is not None and left() <= 0):
            break
        allowed = nodes - search.steps if left is None else None
        if (allowed is not None and allowed < 0) or not search.round(
            allowed, None if left is None else left()
        ):
            break
    return Way(
        remove=tuple(search.best),
        cost=search.cost,
        proven=search.proven,
        no_way=graph.no_way,
        bound=min(search.bound, search.cost),
        steps=search.steps,
    )


class _Search:
    """A best way so far, a bound, and a programme that grows by the circles it ran into."""

    def __init__(self, problem: WayProblem, graph: Graph) -> None:
        self.net = Net(graph)
        self.price = {thing: problem.costs[thing] for thing in graph.routes}
        self.forced = frozenset(members(graph.needed_by(graph.targets)))
        self.best = self._first()
        self.bound = sum(self.price[t] for t in self.forced)
        self.steps, self.nodes = 0, FIRST_NODES
        if not self.proven:
            self._fill()

    @property
    def cost(self) -> int:
        return sum(self.price[t] for t in self.best)

    @property
    def proven(self) -> bool:
        return self.cost <= self.bound

    def round(self, allowed: int | None, seconds: float | None) -> bool:
        """Solve once and learn from it; tells whether another round can help."""
        nodes = self.nodes if allowed is None else min(self.nodes, allowed)
        solved = self.model.solve(nodes=nodes, seconds=seconds, gap=0.9, known=self.cost)
        self.nodes *= 1 if solved.proven else 2
        self.steps += solved.nodes + 1
        self.bound = max(self.bound, ceil(solved.bound - 1e-4)) if solved.bound > -1e18 else self.bound
        if not solved.values:
            return not solved.proven
        chosen = {t for t, column in self.gone.items() if solved.values[column] > 0.5}
        if self.net.works(chosen):
            self._offer(chosen)
            return not solved.proven
        self._offer(self.net.quick(self.price, self.net.targets, chosen & self._possible(chosen)))
        return self._keep_out_circles(chosen, solved) or not solved.proven

    def _possible(self, chosen: Iterable[int]) -> set[int]:
        return set(self.net.carried_out(set(chosen))[0])

    def _offer(self, taken: Iterable[int]) -> None:
        way = self.net.thinned(set(taken), self.price, self.forced)
        if sum(self.price[t] for t in way) < self.cost:
            self.best = way

    def _first(self) -> list[int]:
        """The better of all targets at once and one after the other, from either end."""
        net, price = self.net, self.price
        if net.works(self.forced):
            return net.carried_out(self.forced)[0]
        found = [net.quick(price, net.targets, self.forced)]
        for targets in (net.targets, net.targets[::-1]):
            taken = set(self.forced)
            for target in targets:
                taken = net.quick(price, [target], taken)
            found.append(taken)
        least = min(found, key=lambda way: sum(price[t] for t in way))
        return net.thinned(least, price, self.forced)

    # ---- the programme

    def _fill(self) -> None:
        """A column for each thing that may go and for each route of a thing with several."""
        net, model = self.net, Programme()
        self.model = model
        asked = {m for route in net.route for m in route}
        self.gone = {
            t: model.column(self.price[t], lower=1 if t in self.forced else 0) for t in sorted(asked)
        }
        self.by: dict[int, int] = {}
        for thing, numbers in net.of.items():
            if any(not net.route[n] for n in numbers):
                continue
            if len(numbers) == 1:
                self._only(thing, numbers[0])
                continue
            for n in numbers:
                self.by[n] = model.column()
                for member in net.route[n]:
                    model.at_most(0, {self.by[n]: 1, self.gone[member]: -1})
            self._needs(thing, {self.by[n]: 1.0 for n in numbers})
        arrows = {t: sorted({m for n in net.of[t] for m in net.route[n]}) for t in net.of}
        for circle in strong_components(arrows):
            if 1 < len(circle) <= SMALL_CIRCLE:
                self._begun_from_outside(circle)

    def _only(self, thing: int, number: int) -> None:
        for member in self.net.route[number]:
            self._needs(thing, {self.gone[member]: 1.0})

    def _needs(self, thing: int, row: dict[int, float]) -> None:
        """At least one of these, where the thing goes; in any case, where it is a target."""
        if thing in self.net.targets:
            self.model.at_least(1, row)
        elif thing in self.gone:
            self.model.at_least(0, {**row, self.gone[thing]: row.get(self.gone[thing], 0) - 1})

    def _begun_from_outside(self, circle: set[int]) -> None:
        """Where any of these goes, one of them is come to by a route that holds none of them."""
        outside = [n for t in sorted(circle) for n in self.net.of[t] if circle.isdisjoint(self.net.route[n])]
        if any(not self.net.route[n] for n in outside):
            return
        single = {self.net.owner[n] for n in outside if n not in self.by}
        entries = {self.by[n] for n in outside if n in self.by} | {
            self.gone[t] for t in single if t in self.gone
        }
        for thing in sorted(circle - single):
            self._needs(thing, dict.fromkeys(sorted(entries), 1.0))

    def _keep_out_circles(self, chosen: set[int], solved: Solved) -> bool:
        """Rows against the circles the proposal leans on; tells whether there were any."""
        _, reached = self.net.carried_out(chosen)
        waiting = (chosen | set(self.net.targets)) - reached
        used = {
            n
            for thing in waiting
            for n in self.net.of[thing]
            if (n in self.by and solved.values[self.by[n]] > 0.5) or len(self.net.of[thing]) == 1
        }
        found = self.net.circles(waiting, used)
        for circle in found:
            self._begun_from_outside(circle)
        return bool(found)
