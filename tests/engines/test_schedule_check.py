"""The second reading of a schedule sees each fault; and what has no schedule is told, all at once."""

import pytest
from msgspec.structs import replace

from witnessmark.engines.schedule_check import answer_faults, schedule_faults
from witnessmark.engines.schedule_model import (
    Activity,
    Answer,
    Link,
    Piece,
    Placed,
    Problem,
    Schedule,
    Session,
    Target,
    Trouble,
)
from witnessmark.engines.schedule_trouble import troubles_of

ALONE, WITH_HELPER = (1, 1), (2, 1)
ONE, TWO, BENCH = (1, 0), (2, 0), (1, 1)


def week(number: int, capacities: tuple[int, ...] = ALONE, minutes: int = 100) -> Session:
    return Session(start=1_000 * number, minutes=minutes, capacities=capacities)


PROBLEM = Problem(
    activities=(
        Activity(minutes=150, demands=ONE),
        Activity(minutes=40, demands=BENCH, in_one_go=True),
        Activity(minutes=30, demands=ONE, group=0),
        Activity(minutes=20, demands=TWO, earliest=2_000),
        Activity(minutes=30, demands=ONE, group=0),
    ),
    sessions=(week(1), week(2), week(3, WITH_HELPER)),
    held_over=(True, False),
    targets=(Target(activities=(0, 1), weight=2), Target(activities=(2, 3, 4))),
    links=(Link(0, 1, 900),),
    set_ups=(10,),
)
GOOD = Schedule(
    (
        Placed((Piece(0, 1_000, 100), Piece(1, 2_000, 50))),
        Placed((Piece(2, 3_000, 40),)),
        Placed((Piece(2, 3_000, 40),), set_up=True),
        Placed((Piece(2, 3_080, 20),)),
        Placed((Piece(2, 3_040, 30),)),
    )
)
ANSWER = Answer(schedule=GOOD, value=2 * 3_040 + 3_100, ends=(3_040, 3_100), bound=9_000)


def moved(number: int, *pieces: Piece, set_up: bool = False) -> Schedule:
    placed = list(GOOD.placed)
    placed[number] = Placed(pieces, set_up)
    return Schedule(tuple(placed))


def test_a_good_answer_has_no_faults() -> None:
    assert schedule_faults(PROBLEM, GOOD) == ()
    assert answer_faults(PROBLEM, ANSWER) == ()
    assert not ANSWER.proven
    assert ANSWER.gap == pytest.approx(180 / 9_000)


@pytest.mark.parametrize(
    ("schedule", "fault"),
    [
        (Schedule(()), "not every activity is placed"),
        (moved(3, Piece(2, 3_080, 10)), "3 runs 10 minutes, not 20"),
        (moved(3, Piece(2, 3_080, 20), set_up=True), "3 has a set-up and needs none"),
        (moved(3, Piece(2, 3_090, 20)), "3 runs outside session 2"),
        (moved(3, Piece(7, 9_000, 20)), "3 runs in no session"),
        (moved(1, Piece(2, 3_000, 20), Piece(3, 4_000, 20)), "1 is put down and may not be"),
        (moved(0, Piece(0, 1_000, 90), Piece(1, 2_000, 60)), "0 is not carried on from session 0"),
        (moved(0, Piece(0, 1_000, 100), Piece(2, 3_000, 50)), "0 is not carried on from session 0"),
        (moved(0, Piece(1, 2_000, 50), Piece(0, 1_000, 100)), "0 goes back in time"),
        (moved(3, Piece(0, 1_000, 20)), "3 begins before minute 2000"),
        (moved(1, Piece(1, 2_060, 40)), "1 begins too soon after 0"),
        (moved(3, Piece(1, 2_060, 20)), "resource 0 is taken 2 times in session 1 at minute 2060"),
        (moved(2, Piece(2, 3_000, 30)), "2 begins and nothing was set up for it"),
        (moved(4, Piece(2, 3_005, 30)), "4 begins and nothing was set up for it"),
        (moved(4, Piece(1, 2_050, 30)), "4 begins and nothing was set up for it"),
    ],
)
def test_each_fault_is_seen(schedule: Schedule, fault: str) -> None:
    assert fault in schedule_faults(PROBLEM, schedule)


def test_figures_that_do_not_follow_from_the_schedule_are_seen() -> None:
    assert answer_faults(PROBLEM, replace(ANSWER, value=1)) == (
        "the value said is 1",
        "the bound 9000 lies above the value 1",
    )
    assert answer_faults(PROBLEM, replace(ANSWER, ends=(3_040, 3_000)))
    assert answer_faults(PROBLEM, replace(ANSWER, schedule=Schedule(())))


def test_the_problem_above_has_no_troubles() -> None:
    assert troubles_of(PROBLEM) == ()


def never_there(number: int, *, needed: int, there: int) -> Trouble:
    return Trouble(kind="never_there", activities=(number,), resource=0, needed=needed, there=there)


def too_long(number: int, *, needed: int, there: int = 100) -> Trouble:
    return Trouble(kind="too_long", activities=(number,), needed=needed, there=there)


def changed(number: int, **fields: object) -> Problem:
    activities = list(PROBLEM.activities)
    activities[number] = replace(activities[number], **fields)
    return replace(PROBLEM, activities=tuple(activities))


@pytest.mark.parametrize(
    ("problem", "trouble"),
    [
        (changed(0, minutes=0), Trouble(kind="numbers", activities=(0,))),
        (changed(0, demands=(1,)), Trouble(kind="numbers", activities=(0,))),
        (changed(0, demands=(-1, 0)), Trouble(kind="numbers", activities=(0,))),
        (changed(0, group=4), Trouble(kind="numbers", activities=(0,))),
        (replace(PROBLEM, links=(Link(0, 9),)), Trouble(kind="numbers", activities=(0, 9))),
        (replace(PROBLEM, links=(Link(0, 1, -5),)), Trouble(kind="numbers", activities=(0, 1))),
        (replace(PROBLEM, targets=(Target(activities=(8,)),)), Trouble(kind="numbers", activities=(8,))),
        (replace(PROBLEM, set_ups=(-1,)), Trouble(kind="numbers")),
        (replace(PROBLEM, sessions=()), Trouble(kind="sessions")),
        (replace(PROBLEM, sessions=(week(1), week(1))), Trouble(kind="sessions", there=1_000)),
        (replace(PROBLEM, sessions=(week(1, minutes=0),)), Trouble(kind="sessions", there=1_000)),
        (replace(PROBLEM, targets=()), Trouble(kind="nothing_aimed_at")),
        (replace(PROBLEM, targets=(Target(activities=()),)), Trouble(kind="nothing_aimed_at")),
        (changed(3, demands=(3, 0)), never_there(3, needed=3, there=2)),
        (changed(1, minutes=120), too_long(1, needed=120)),
        (changed(2, minutes=95, in_one_go=True), too_long(2, needed=105)),
        (changed(3, minutes=150), too_long(3, needed=150)),
        (changed(3, earliest=3_090), Trouble(kind="too_late", activities=(3,), needed=3_090, there=3_100)),
    ],
)
def test_each_trouble_is_told(problem: Problem, trouble: Trouble) -> None:
    assert trouble in troubles_of(problem)


def test_a_circle_is_told_in_its_order_and_alone() -> None:
    circle = (Link(0, 2), Link(2, 3), Link(3, 0, 60), Link(3, 1))
    (trouble,) = troubles_of(replace(PROBLEM, links=circle))
    assert trouble.kind == "circle"
    turned = trouble.activities * 2
    assert (0, 2, 3) in [turned[n : n + 3] for n in range(3)]


def test_what_is_never_there_all_at_once_is_told() -> None:
    sessions = (week(1, (2, 0)), week(2, (1, 1)))
    problem = replace(PROBLEM, sessions=sessions, activities=(Activity(minutes=9, demands=(2, 1)),) * 5)
    assert {(t.kind, t.resource) for t in troubles_of(problem)} == {("never_there", -1)}
