"""A second reading of a way by plain sets: could it be carried out as said, and does it cost what it says?"""

from __future__ import annotations

from collections.abc import Iterable

from witnessmark.engines.cheapest_way import Routes, Way, WayProblem


def way_faults(problem: WayProblem, way: Way) -> tuple[str, ...]:
    """What is wrong with an answer, each in one line; nothing when it holds.

    >>> problem = WayProblem(costs=(1, 2), routes=((), ((0,),)), targets=(1,))
    >>> way_faults(problem, Way(remove=(), cost=0))
    ('target 1 is not reached',)
    """
    wrong: list[str] = []
    gone = set(problem.gone)
    for thing in way.remove:
        if thing in gone:
            wrong.append(f"{thing} is taken off though it is gone")
        if not _reached(problem.routes[thing], gone):
            wrong.append(f"{thing} is taken off before it is reached")
        gone.add(thing)
    for target in problem.targets:
        open_to_hand = target in gone or _reached(problem.routes[target], gone)
        if open_to_hand and target in way.no_way:
            wrong.append(f"target {target} is reached and called out of reach")
        if not open_to_hand and target not in way.no_way:
            wrong.append(f"target {target} is not reached")
    for target in way.no_way:
        if _could_be_reached(problem, target):
            wrong.append(f"target {target} is called out of reach and is not")
    if way.cost != sum(problem.costs[t] for t in way.remove):
        wrong.append(f"the cost said is {way.cost}")
    return tuple(wrong)


def _reached(routes: Routes, gone: Iterable[int]) -> bool:
    have = set(gone)
    return not routes or any(have.issuperset(route) for route in routes)


def _could_be_reached(problem: WayProblem, target: int) -> bool:
    """Whether it would be reached if everything that ever can go had gone."""
    gone = set(problem.gone)
    before = -1
    while before != len(gone):
        before = len(gone)
        gone |= {t for t in range(len(problem.costs)) if _reached(problem.routes[t], gone)}
    return target in gone
