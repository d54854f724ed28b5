"""The plan: everything once, in order; what cannot be laid is told with what mends it; what stood is kept."""

from datetime import date, datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.building import described, state_of
from tests.plan.orders import asked, saturdays, step
from witnessmark.engines.schedule import by_steps
from witnessmark.ground.errors import BadInput
from witnessmark.jobs.operation import Operation
from witnessmark.plan.arrivals import Thing
from witnessmark.plan.laying import Asked
from witnessmark.plan.moved import unchanged
from witnessmark.plan.timetable import Timetable
from witnessmark.plan.timetabling import Terms, timetable
from witnessmark.vehicle.things import Joint

BARE = state_of()
TERMS = Terms(allowed=by_steps(100))
QUICK = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def planned(question: Asked, last: Timetable | None = None) -> Timetable:
    return timetable(BARE, question, TERMS, last)


def where(plan: Timetable) -> dict[str, list[int]]:
    """For each operation the numbers of the Saturdays on which something of it is done."""
    found: dict[str, list[int]] = {}
    for held in plan.held:
        for stint in held.stints:
            found.setdefault(stint.operation.id, []).append((held.session.day - date(2026, 6, 6)).days // 7)
    return found


@st.composite
def operations(draw: st.DrawFn) -> list[Operation]:
    size = draw(st.integers(1, 12))
    found = []
    for n in range(size):
        after = (
            draw(st.lists(st.sampled_from([f"o{k}" for k in range(n)]), max_size=2, unique=True)) if n else []
        )
        minutes, hands = draw(st.integers(1, 300)), draw(st.integers(1, 2))
        put_down = draw(st.booleans()) or minutes > 120
        found.append(step(f"o{n}", minutes, *after, put_down=put_down, hands=hands))
    return found


@QUICK
@given(operations())
def test_everything_is_done_once_in_its_order_and_its_minutes(steps: list[Operation]) -> None:
    plan = planned(asked(*steps, sessions=saturdays(200)))
    done: dict[str, tuple[date, int]] = {}
    minutes: dict[str, int] = {}
    for held in plan.held:
        for stint in held.stints:
            id = stint.operation.id
            minutes[id] = minutes.get(id, 0) + stint.minutes
            for before in stint.operation.after:
                assert done[before] <= (held.session.day, stint.start)
            done[id] = (held.session.day, stint.start + stint.minutes)
    assert set(minutes) == {o.id for o in steps}
    assert plan.left_out == ()
    for operation in steps:
        assert operation.minutes.likely <= minutes[operation.id] < operation.minutes.likely + 60


def test_what_is_bound_together_is_done_in_one_session() -> None:
    plan = planned(
        asked(step("fill", 60), step("loosen", 70), step("close", 40, "loosen"), bound={"loosen": ("close",)})
    )
    assert where(plan)["loosen"] == where(plan)["close"]


def test_what_is_longer_than_a_session_is_put_down_and_goes_on() -> None:
    plan = planned(asked(step("rub down", 300)))
    assert where(plan) == {"rub down": [0, 1, 2]}
    assert [s.again for h in plan.held for s in h.stints] == [True, True, False]


def test_hot_work_too_long_for_a_session_is_watched_out_in_each() -> None:
    weld = step("close/seam", 150, sort="close", cautions=("fire-watch",))
    watch = step("watch", 60, "close/seam", sort="watch", put_down=False)
    plan = planned(asked(weld, watch, bound={"close/seam": ("watch",)}))
    assert where(plan) == {"close/seam": [0, 1, 2], "watch": [0, 1, 2]}
    for held in plan.held:
        assert [s.operation.sort for s in held.stints] == ["close", "watch"]


def test_a_coat_dries_overnight_before_what_follows_and_needs_no_one() -> None:
    state = state_of(described(Joint(name="underside", kind="seam-sealing")))
    coat = step("close/underside", 30, sort="close", name="underside")
    plan = timetable(state, asked(coat, step("refit", 30, "close/underside")), TERMS)
    assert where(plan) == {"close/underside": [0], "refit": [1]}
    assert [(w.what, w.sort) for w in plan.waits] == [("underside dries", "dries")]


def test_a_helper_nobody_promised_is_counted_on_as_often_as_one_came_and_told() -> None:
    plan = planned(asked(step("bleed", 30, hands=2)))
    assert where(plan) == {"bleed": [3]}
    assert [held.assumed for held in plan.held] == [True]
    promised = planned(asked(step("bleed", 30, hands=2), sessions=saturdays(9, helper=frozenset({1}))))
    assert where(promised) == {"bleed": [1]}
    assert not promised.held[0].assumed


def test_what_waits_for_a_parcel_comes_after_it_and_what_does_not_comes_before() -> None:
    seal = Thing("pinion seal", date(2026, 6, 17))
    plan = planned(asked(step("fit seal", 60), step("other", 60), things=(seal,), waits={"fit seal": (0,)}))
    assert where(plan) == {"other": [0], "fit seal": [2]}
    assert [w.what for w in plan.waits] == ["pinion seal in the post"]


def test_what_must_still_be_ordered_comes_as_nine_in_ten_do() -> None:
    plan = planned(asked(step("fit", 60), things=(Thing("o-ring", None),), waits={"fit": (0,)}))
    assert where(plan) == {"fit": [2]}


def test_the_next_sessions_sheet_comes_first() -> None:
    steps = [step(f"o{n}", 100) for n in range(4)]
    plan = planned(asked(*steps, gates={"road": frozenset({"o0"})}, first=frozenset({"o3"})))
    assert where(plan)["o3"] == [0]


# ---- what cannot be


def test_a_coat_longer_than_any_session_is_left_out_with_what_follows_and_what_mends_it() -> None:
    plan = planned(asked(step("coat", 200, put_down=False), step("refit", 20, "coat"), step("other", 20)))
    assert set(where(plan)) == {"other"}
    (left,) = plan.left_out
    assert "do coat" in left.what
    assert "200 minutes" in left.because
    assert "120" in left.because
    assert "longer session" in left.do
    assert plan.gates[0].because == "2 operations that hold it are in no session"


def test_a_calendar_that_never_opens_is_refused_with_what_to_say() -> None:
    with pytest.raises(BadInput, match="no session") as refused:
        planned(asked(step("a", 10), sessions=()))
    assert "sessions Saturdays" in refused.value.do


def test_work_that_no_session_is_left_for_is_told() -> None:
    with pytest.raises(BadInput, match="does not fit the 2 sessions"):
        planned(asked(*(step(f"o{n}", 100) for n in range(5)), sessions=saturdays(2)))


def test_a_parcel_due_after_the_last_session_holds_only_what_waits_for_it() -> None:
    late = Thing("rare ring", date(2028, 1, 1))
    plan = planned(asked(step("fit", 10), step("other", 10), things=(late,), waits={"fit": (0,)}))
    assert set(where(plan)) == {"other"}
    assert "before the last session that suits it" in plan.left_out[0].because


def test_two_that_wait_for_each_other_are_done_together_and_never_for_ever() -> None:
    plan = planned(asked(step("a", 10, "b"), step("b", 10, "a")))
    assert where(plan) == {"a": [0], "b": [0]}


def test_what_is_done_on_the_road_is_not_planned_for_the_garage() -> None:
    plan = planned(asked(step("a", 10), step("drive", 10, stage="road"), gates={"road": frozenset({"a"})}))
    assert set(where(plan)) == {"a"}
    assert plan.left_out == ()


def test_nothing_to_do_is_a_plan() -> None:
    plan = planned(asked(gates={"road": frozenset()}))
    assert plan.held == ()
    assert plan.proven


# ---- again


TEN = [step(f"o{n}", 55) for n in range(10)]
SOON = date(2026, 6, 10)
SEAL = Thing("seal", SOON)


def test_a_part_three_weeks_late_moves_what_waits_for_it_and_says_why() -> None:
    waits = {"o2": (0,)}
    before = planned(asked(*TEN, things=(SEAL,), waits=waits))
    late = asked(*TEN, things=(Thing("seal", SOON + timedelta(days=21)),), waits=waits)
    after = planned(late, before)
    (moved,) = [m for m in after.moved if m.name == "o2"]
    assert moved.because == "waits for seal"
    assert moved.now is not None
    assert moved.now > date(2026, 7, 1)
    assert unchanged(after, before, 4) >= 0.6


@QUICK
@given(st.integers(0, 9))
def test_one_thing_done_leaves_the_rest_where_it_stood_or_sooner(number: int) -> None:
    before = planned(asked(*TEN))
    after = planned(asked(*(o for n, o in enumerate(TEN) if n != number)), before)
    gone = [m for m in after.moved if m.now is None]
    assert [m.name for m in gone] == [f"o{number}"]
    assert all(m.now <= m.before for m in after.moved if m.now and m.before)


def test_the_same_question_has_the_same_answer_and_nothing_moves() -> None:
    before = planned(asked(*TEN))
    again = planned(asked(*TEN), before)
    assert again.moved == ()
    assert [h.stints for h in again.held] == [h.stints for h in before.held]
    assert unchanged(again, before, 4) == 1.0


def test_a_session_called_off_is_the_reason_told() -> None:
    before = planned(asked(*TEN))
    left = saturdays(20)[1:]
    after = planned(asked(*TEN, sessions=left, now=datetime(2026, 6, 8, 20)), before)
    told = {m.because for m in after.moved if m.before == date(2026, 6, 6)}
    assert told == {"that session is over, or called off"}


def test_beyond_the_last_promise_a_helper_is_counted_on_again() -> None:
    sessions = saturdays(30, helper=frozenset({1}))
    plan = planned(asked(step("pad", 400), step("bleed", 30, "pad", hands=2), sessions=sessions))
    assert where(plan)["bleed"] == [5]


def test_what_has_no_session_left_after_what_it_waits_for_is_left_out_alone() -> None:
    """The last session with a helper lies before the first part is done; the rest is planned."""
    sessions = saturdays(3, helper=frozenset({0}))
    plan = planned(
        asked(step("strip", 200), step("lift", 20, "strip", hands=2), step("paint", 20), sessions=sessions)
    )
    assert set(where(plan)) == {"strip", "paint"}
    assert plan.left_out[0].name == "lift"
