"""The exact way against every set, against another solver, and where it is stopped early."""

import pytest
from hypothesis import given, settings

from benchmarks.reach import adversarial, deep, vehicle_like
from benchmarks.second_solver import second_way
from tests.engines.ways_made import every_way, way_problems
from witnessmark.engines.cheapest_way import WayProblem, cheapest_way
from witnessmark.engines.way_exact import exact_way
from witnessmark.engines.way_faults import way_faults


@given(way_problems())
def test_no_set_is_cheaper(problem: WayProblem) -> None:
    way = exact_way(problem)
    reached = tuple(t for t in problem.targets if t not in way.no_way)
    assert way_faults(problem, way) == ()
    assert way.proven
    assert way.bound == way.cost == every_way(problem, reached)[0][0]


@settings(max_examples=60)
@given(way_problems(most=12))
def test_it_costs_what_the_search_by_branches_finds(problem: WayProblem) -> None:
    searched = cheapest_way(problem, steps=100_000)
    assert searched.proven
    assert exact_way(problem).cost == searched.cost


@pytest.mark.parametrize("seed", range(6))
def test_another_solver_finds_the_same_cost_among_circles(seed: int) -> None:
    problem = adversarial(60, 150, 6, seed)
    way = exact_way(problem)
    reached = tuple(t for t in problem.targets if t not in way.no_way)
    assert way_faults(problem, way) == ()
    assert way.proven
    other = second_way(problem, reached)
    assert other.proven
    assert way.cost == other.cost


def test_another_solver_finds_the_same_cost_on_a_whole_vehicle() -> None:
    problem = vehicle_like(600, 1500, 12, 3)
    way = exact_way(problem)
    reached = tuple(t for t in problem.targets if t not in way.no_way)
    assert len(reached) > 6
    assert (way.proven, way_faults(problem, way)) == (True, ())
    other = second_way(problem, reached)
    assert other.proven
    assert way.cost == other.cost


def test_one_with_no_time_left_still_answers_and_states_its_distance() -> None:
    problem = deep(300, 750, 10, 0)
    way = exact_way(problem, left=lambda: 0.0)
    best = exact_way(problem, nodes=20_000)
    assert way_faults(problem, way) == ()
    assert way.bound is not None
    assert way.bound <= best.cost <= way.cost
    assert way.proven == (way.bound == way.cost)


def test_stopped_by_nodes_it_gives_the_same_answer_again() -> None:
    problem = deep(400, 1000, 12, 5)
    assert exact_way(problem, nodes=1, rounds=2) == exact_way(problem, nodes=1, rounds=2)


def test_a_bound_is_never_above_the_proven_cost() -> None:
    for seed in range(5):
        problem = deep(120, 300, 8, seed)
        cut_short, whole = exact_way(problem, nodes=0, rounds=1), exact_way(problem, nodes=100_000)
        assert whole.proven
        assert cut_short.bound is not None
        assert cut_short.bound <= whole.cost
