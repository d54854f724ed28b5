"""The cheapest way against trying every set, and against the plain closure where nothing is to choose."""

import networkx as nx
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from tests.engines.ways_made import every_way, way_problems
from witnessmark.engines.cheapest_way import WayProblem, cheapest_way
from witnessmark.engines.way_faults import way_faults
from witnessmark.engines.ways import next_best


@given(way_problems())
def test_no_set_is_cheaper_and_of_equal_ones_none_is_smaller(problem: WayProblem) -> None:
    way = cheapest_way(problem)
    reached = tuple(t for t in problem.targets if t not in way.no_way)
    cost, size, _ = every_way(problem, reached)[0]
    assert way_faults(problem, way) == ()
    assert way.proven
    assert (way.cost, len(way.remove)) == (cost, size)


@given(way_problems())
def test_the_second_way_is_the_cheapest_that_is_not_the_first_and_more(problem: WayProblem) -> None:
    best = cheapest_way(problem)
    assume(not best.no_way)
    others = [w for w in every_way(problem, problem.targets) if not w[2] >= frozenset(best.remove)]
    second = next_best(problem, best)
    assert [way.cost for way in second] == [w[0] for w in others[:1]]
    assert all(way_faults(problem, way) == () for way in second)


@given(st.lists(st.lists(st.integers(0, 99), max_size=2), min_size=2, max_size=30))
def test_with_one_route_each_it_is_everything_in_front(typed: list[list[int]]) -> None:
    size = len(typed)
    front = [tuple({before % n for before in route}) if n else () for n, route in enumerate(typed)]
    graph = nx.DiGraph()
    graph.add_nodes_from(range(size))
    graph.add_edges_from((before, n) for n, route in enumerate(front) for before in route)
    problem = WayProblem(costs=(1,) * size, routes=tuple((r,) for r in front), targets=(size - 1,))
    assert set(cheapest_way(problem).remove) == nx.ancestors(graph, size - 1)


@given(way_problems(), st.integers(0, 6))
def test_it_never_costs_more_when_something_is_off_already(problem: WayProblem, thing: int) -> None:
    assume(thing < len(problem.costs))
    before = cheapest_way(problem)
    after = cheapest_way(replace(problem, gone=problem.gone | {thing}))
    assume(before.no_way == after.no_way)
    assert after.cost <= before.cost


def test_what_two_targets_share_is_counted_once() -> None:
    problem = WayProblem(costs=(30, 0, 0), routes=((), ((0,),), ((0,),)), targets=(1, 2))
    assert cheapest_way(problem).cost == 30


EITHER = (((0,), (1,)), ((0,), (2,)))


def test_a_shared_opening_beats_two_that_are_cheaper_alone() -> None:
    problem = WayProblem(costs=(5, 4, 4, 0, 0), routes=((), (), (), *EITHER), targets=(3, 4))
    assert cheapest_way(problem).remove == (0,)


def test_what_two_choices_share_is_not_feared_twice() -> None:
    """One opening behind another serves two targets; a bound that counts it for each would cut it off."""
    ways = ((), (), ((1,),), (), (), ((0,), (1,)), ((2,), (3,)), ((2,), (4,)))
    problem = WayProblem(costs=(1, 2, 5, 4, 4, 0, 0, 0), routes=ways, targets=(5, 6, 7))
    assert cheapest_way(problem).remove == (1, 2)


def test_two_things_behind_each_other_are_no_way_in() -> None:
    problem = WayProblem(costs=(1, 1, 1), routes=(((1,),), ((0,),), ((0,),)), targets=(2,))
    way = cheapest_way(problem)
    assert way.no_way == (2,)
    assert way.remove == ()


def test_a_circle_with_another_way_round_is_opened_from_outside() -> None:
    problem = WayProblem(costs=(1, 1, 50, 0), routes=(((1,),), ((0,), (2,)), (), ((0,),)), targets=(3,))
    assert cheapest_way(problem).remove == (2, 1, 0)


def test_out_of_steps_it_still_answers_and_says_so() -> None:
    choices = 12
    routes = tuple(() for _ in range(3 * choices))
    each = range(choices)
    pairs = tuple(((3 * n, (3 * n + 4) % (3 * choices)), (3 * n + 1,), (3 * n + 2, 0)) for n in each)
    problem = WayProblem(
        costs=(3, 4, 2) * choices + (0,) * choices,
        routes=routes + pairs,
        targets=tuple(range(3 * choices, 4 * choices)),
    )
    way = cheapest_way(problem, steps=1)
    assert not way.proven
    assert way_faults(problem, way) == ()


def test_the_second_reading_sees_each_fault() -> None:
    problem = WayProblem(costs=(1, 2, 3), routes=((), ((0,),), ((1,),)), targets=(2,), gone=frozenset())
    good = cheapest_way(problem)
    assert way_faults(problem, replace(good, remove=(1, 0)))
    assert way_faults(problem, replace(good, remove=(0,), cost=1))
    assert way_faults(problem, replace(good, cost=2))
    assert way_faults(problem, replace(good, no_way=(2,)))
    assert way_faults(replace(problem, gone=frozenset({0})), good)
