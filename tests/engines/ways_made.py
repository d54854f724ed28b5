"""Small AND/OR problems for tests, and the answer found by trying every set."""

from __future__ import annotations

from itertools import combinations

from hypothesis import strategies as st

from witnessmark.engines.cheapest_way import WayProblem


@st.composite
def way_problems(draw: st.DrawFn, most: int = 7) -> WayProblem:
    """Any problem of up to `most` things, circles and dead ends among them."""
    size = draw(st.integers(1, most))
    things = st.integers(0, size - 1)
    route = st.lists(things, max_size=3, unique=True).map(tuple)
    routes = st.lists(route, max_size=3).map(tuple)
    return WayProblem(
        costs=tuple(draw(st.lists(st.integers(0, 9), min_size=size, max_size=size))),
        routes=tuple(draw(st.lists(routes, min_size=size, max_size=size))),
        targets=tuple(draw(st.lists(things, min_size=1, max_size=3, unique=True))),
        gone=frozenset(draw(st.lists(things, max_size=2))),
    )


def every_way(problem: WayProblem, targets: tuple[int, ...]) -> list[tuple[int, int, frozenset[int]]]:
    """All sets that can be carried out and reach the targets, as (cost, size, set), cheapest first."""
    free = [t for t in range(len(problem.costs)) if t not in problem.gone]
    found = []
    for size in range(len(free) + 1):
        for taken in combinations(free, size):
            if _works(problem, set(taken), targets):
                found.append((sum(problem.costs[t] for t in taken), size, frozenset(taken)))
    return sorted(found, key=lambda way: way[:2])


def _works(problem: WayProblem, taken: set[int], targets: tuple[int, ...]) -> bool:
    gone, left = set(problem.gone), set(taken)
    while left:
        fresh = {t for t in left if _open(problem, t, gone)}
        if not fresh:
            return False
        gone |= fresh
        left -= fresh
    return all(t in gone or _open(problem, t, gone) for t in targets)


def _open(problem: WayProblem, thing: int, gone: set[int]) -> bool:
    return not problem.routes[thing] or any(set(route) <= gone for route in problem.routes[thing])
