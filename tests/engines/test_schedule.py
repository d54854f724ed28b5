"""The best schedule against trying every order, the bounds against the best, and answers that never lie."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from benchmarks.calendars_made import calendar_problem
from tests.engines.schedules_made import best_value, schedule_problems
from witnessmark.engines.schedule import by_steps, schedule
from witnessmark.engines.schedule_check import answer_faults
from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target

SLOW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@SLOW
@given(schedule_problems(most=5))
def test_no_order_is_better_and_the_proof_holds(problem: Problem) -> None:
    answer = schedule(problem, by_steps(200, exact=5.0))
    assert answer_faults(problem, answer) == ()
    assert answer.value == answer.bound == best_value(problem)


@SLOW
@given(schedule_problems(most=5))
def test_bounds_found_without_a_search_never_lie_above_the_best(problem: Problem) -> None:
    assert schedule(problem).bound <= best_value(problem)


@settings(SLOW, max_examples=3)
@given(schedule_problems(most=8))
def test_annealing_alone_comes_to_the_best_of_eight(problem: Problem) -> None:
    assert schedule(problem, by_steps(300)).value == best_value(problem)


@SLOW
@given(schedule_problems(most=6, groups=True), st.integers(0, 3))
def test_shared_set_ups_are_right_and_proven(problem: Problem, seed: int) -> None:
    quick = schedule(problem, by_steps(100), seed=seed)
    exact = schedule(problem, by_steps(100, exact=5.0), seed=seed)
    assert answer_faults(problem, exact) == ()
    assert exact.proven
    assert quick.bound <= exact.value <= quick.value <= quick.first


@SLOW
@given(schedule_problems(most=6), st.data())
def test_more_to_do_never_lowers_the_bound(problem: Problem, data: st.DataObject) -> None:
    number = data.draw(st.integers(0, len(problem.activities) - 1))
    activities = list(problem.activities)
    activities[number] = replace(activities[number], minutes=activities[number].minutes + 1)
    longer = replace(problem, activities=tuple(activities))
    assert schedule(longer).bound >= schedule(problem).bound


@SLOW
@given(schedule_problems(most=6))
def test_another_session_first_never_makes_it_later(problem: Problem) -> None:
    moved = tuple(replace(s, start=s.start + 50) for s in problem.sessions)
    later = replace(problem, sessions=moved)
    more = replace(problem, sessions=(Session(start=44, minutes=5, capacities=(2, 1)), *moved))
    assert schedule(more, by_steps(200, exact=5.0)).value <= schedule(later, by_steps(200, exact=5.0)).value


def test_the_same_seed_and_steps_give_the_same_answer() -> None:
    problem = calendar_problem(40, hard=True, seed=3)
    assert schedule(problem, by_steps(300), seed=5) == schedule(problem, by_steps(300), seed=5)


def test_a_thousand_activities_have_a_schedule_from_rules_alone() -> None:
    problem = calendar_problem(1_000, hard=True, seed=0)
    answer = schedule(problem)
    assert answer_faults(problem, answer) == ()
    assert answer.gap < 0.25


def test_two_sprays_on_one_day_share_what_is_set_up() -> None:
    sprays = tuple(Activity(minutes=40, demands=(1,), in_one_go=True, group=0, earliest=e) for e in (0, 150))
    sessions = tuple(Session(start=n * 100, minutes=100, capacities=(1,)) for n in range(4))
    problem = Problem(
        activities=sprays, sessions=sessions, held_over=(True,), targets=(Target(activities=(0, 1)),),
        set_ups=(20,),
    )  # fmt: skip
    answer = schedule(problem, by_steps(100, exact=1.0))
    assert answer.ends == (200,)


def test_what_runs_out_of_sessions_is_told_and_not_half_planned() -> None:
    problem = Problem(
        activities=(Activity(minutes=60, demands=(1,)),) * 3,
        sessions=(Session(start=0, minutes=100, capacities=(1,)),),
        held_over=(True,),
        targets=(Target(activities=(0, 1, 2)),),
    )
    answer = schedule(problem, by_steps(10))
    assert [(t.kind, t.needed, t.there) for t in answer.troubles] == [("ran_out", 180, 100)]
    assert answer.schedule.placed == ()


def test_a_circle_ends_at_once() -> None:
    problem = Problem(
        activities=(Activity(minutes=1, demands=(1,)),) * 2,
        sessions=(Session(start=0, minutes=9, capacities=(1,)),),
        held_over=(True,),
        targets=(Target(activities=(0,)),),
        links=(Link(0, 1), Link(1, 0)),
    )
    assert [t.kind for t in schedule(problem).troubles] == ["circle"]


def test_the_last_schedule_is_taken_up_and_bettered() -> None:
    problem = calendar_problem(60, hard=True, seed=4)
    before = schedule(problem, by_steps(1_500))
    again = schedule(problem, last=before.schedule)
    assert again.value <= before.value
