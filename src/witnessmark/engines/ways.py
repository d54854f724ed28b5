"""The cheapest way by whichever means proves it: a quick search for small graphs, else an integer programme.

The programme's library is read only where the quick search could not prove its answer.
"""

from __future__ import annotations

from collections.abc import Callable

from witnessmark.engines.cheapest_way import Way, WayProblem, cheapest_way

# Above so many things, or after so many steps, the search by branches is left for the programme.
SMALL, FEW_STEPS = 400, 200


def best_way(
    problem: WayProblem,
    *,
    without: frozenset[int] = frozenset(),
    left: Callable[[], float] | None = None,
) -> Way:
    """The cheapest way, proven unless a limit was met; then with its bound.

    left  seconds that are left; only a shell passes it

    >>> problem = WayProblem(costs=(9, 2, 3, 1), routes=((), (), ((1,),), ((0,), (2,))), targets=(3,))
    >>> best_way(problem).remove
    (1, 2)
    """
    if len(problem.costs) <= SMALL:
        way = cheapest_way(problem, steps=FEW_STEPS, without=without)
        if way.proven:
            return way
    from witnessmark.engines.way_exact import exact_way

    return exact_way(problem, without=without, left=left)


def next_best(
    problem: WayProblem, best: Way, *, number: int = 1, left: Callable[[], float] | None = None
) -> tuple[Way, ...]:
    """Other ways, cheapest first; none of them holds all of the best one. The first is the true second best.

    Where time runs out, as far as it was looked.

    >>> problem = WayProblem(costs=(9, 2, 3, 1), routes=((), (), ((1,),), ((0,), (2,))), targets=(3,))
    >>> [way.remove for way in next_best(problem, best_way(problem))]
    [(0,)]
    """
    found: dict[frozenset[int], Way] = {}
    for thing in best.remove:
        if left is not None and left() <= 0:
            break
        way = best_way(problem, without=frozenset({thing}), left=left)
        if way.no_way == best.no_way:
            found.setdefault(frozenset(way.remove), way)
    return tuple(sorted(found.values(), key=lambda w: (w.cost, len(w.remove), w.remove))[:number])
