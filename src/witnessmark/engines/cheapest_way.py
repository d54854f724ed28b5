"""The cheapest set of things to be gone so that every target can be reached: an AND/OR search on integers.

A thing is reached when all things of any one of its routes are gone; it can be gone only once it is
reached. The answer is exact unless the limit of steps was met, and it can be carried out in the order
given: a circle of things, each waiting for the next, never justifies itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from witnessmark.engines.way_bits import bits, members
from witnessmark.engines.way_graph import Graph, graph_of

Routes = tuple[tuple[int, ...], ...]

STEPS = 4_000


class WayProblem(Struct, frozen=True, kw_only=True):
    """Things are numbered from 0.

    costs    what it costs to have each thing gone, 0 or more
    routes   for each thing its routes; none at all, or an empty one, means reached at once
    targets  things to be reached (they need not be gone themselves)
    gone     things gone already, at no cost
    """

    costs: tuple[int, ...]
    routes: tuple[Routes, ...]
    targets: tuple[int, ...]
    gone: frozenset[int] = frozenset()


class Way(Struct, frozen=True, kw_only=True):
    """What must go, outermost first.

    proven  no cheaper way exists; False only where the limit of steps was met first
    no_way  targets that nothing lets a hand reach (a circle in the description)
    bound   no way costs less; None where only `proven` tells
    """

    remove: tuple[int, ...]
    cost: int
    proven: bool = True
    no_way: tuple[int, ...] = ()
    steps: int = 0
    bound: int | None = None


def cheapest_way(problem: WayProblem, *, steps: int = STEPS, without: frozenset[int] = frozenset()) -> Way:
    """The cheapest way, of equal cost the one with fewest things; `without` forbids things to be taken off.

    >>> problem = WayProblem(costs=(9, 2, 3, 1), routes=((), (), ((1,),), ((0,), (2,))), targets=(3,))
    >>> cheapest_way(problem)
    Way(remove=(1, 2), cost=5, proven=True, no_way=(), steps=3, bound=5)
    """
    graph = graph_of(problem.costs, problem.routes, problem.gone, problem.targets, without)
    found, proven, used = _search(graph, steps)
    order = tuple(graph.in_order(found))
    return Way(
        remove=order,
        cost=sum(problem.costs[t] for t in order),
        proven=proven,
        no_way=graph.no_way,
        steps=used,
        bound=graph.plain_cost(found if proven else graph.needed_by(graph.targets)),
    )


def _search(graph: Graph, limit: int) -> tuple[int, bool, int]:
    """Depth first, cheapest branch first; the limit counts nodes and only holds once a way was found."""
    start = graph.needed_by(graph.targets)
    best, best_cost = -1, -1
    stack, seen, steps = [start], {start}, 0
    while stack:
        if steps >= limit and best >= 0:
            return best, False, steps
        taken = stack.pop()
        steps += 1
        reached = graph.reached(taken)
        waiting = (taken | graph.targets) & ~reached
        cost = graph.cost(taken)
        if best >= 0 and cost + _least_more(graph, taken, waiting) >= best_cost:
            continue
        if not waiting:
            best, best_cost = taken, cost
            continue
        children = {graph.closed(taken | way) for way in _branches(graph, taken, waiting)}
        for child in sorted(children, key=graph.cost, reverse=True):
            if child not in seen:
                seen.add(child)
                stack.append(child)
    return max(best, 0), True, steps


def _branches(graph: Graph, taken: int, waiting: int) -> Iterator[int]:
    """Sets one of which every way from here must take whole.

    A thing with no route inside `taken` needs one of its routes. Where all have one, they wait for each
    other in a circle, and one of them needs a route from outside the circle.
    """
    unsupported = [t for t in members(waiting) if not any(r & ~taken == 0 for r in graph.routes[t])]
    if unsupported:
        yield from graph.routes[min(unsupported, key=lambda t: (len(graph.routes[t]), t))]
        return
    for thing in members(waiting):
        yield from (route for route in graph.routes[thing] if not route & waiting)


def _least_more(graph: Graph, taken: int, waiting: int) -> int:
    """What must at least be added: each waiting thing's cheapest route, as far as these do not overlap."""
    claims: list[tuple[int, int]] = []
    for thing in members(waiting):
        rest = [graph.closed(route) & ~taken for route in graph.routes[thing]]
        least = min(graph.cost(r) for r in rest)
        if least:
            claims.append((least, bits(rest)))
    total, claimed = 0, 0
    for least, span in sorted(claims, reverse=True):
        if not span & claimed:
            total += least
            claimed |= span
    return total
