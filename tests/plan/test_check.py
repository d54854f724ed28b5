"""The second reading of a plan sees each kind of fault."""

import pytest
from msgspec.structs import replace

from tests.building import described
from tests.plan.sessions import read, session
from witnessmark.journal import facts as f
from witnessmark.plan.check import PlanFault, checked, faults_of
from witnessmark.plan.session import SafeStop, SessionPlan
from witnessmark.vehicle.things import Joint, Part

FACTS = (
    described(
        Joint(name="track rod end", kind="ball-joint-taper"),
        Joint(name="arm bolts", kind="running-gear-bolts", holds=("arm",)),
        Joint(name="brake union", kind="brake-union"),
        Part(name="arm"),
    ),
    f.Opened(at=("track rod end",)),
    f.Owned(item="split pin"),
)
PLAN = session(*FACTS)
STATE, DEBTS, JOBS = read(*FACTS)


def faults(plan: SessionPlan) -> str:
    return "; ".join(faults_of(plan, STATE, DEBTS, JOBS))


def test_a_good_plan_is_handed_through() -> None:
    assert checked(PLAN, STATE, DEBTS, JOBS) is PLAN
    assert len(PLAN.operations) >= 3


def test_a_plan_with_a_fault_is_not_shown() -> None:
    with pytest.raises(PlanFault, match="planned twice"):
        checked(replace(PLAN, operations=(*PLAN.operations, PLAN.operations[0])), STATE, DEBTS, JOBS)


def test_it_sees_a_wrong_order_and_a_missing_step() -> None:
    assert "comes before close/track rod end" in faults(replace(PLAN, operations=PLAN.operations[::-1]))
    without = tuple(o for o in PLAN.operations if not o.id.startswith("close/"))
    assert "comes before close/track rod end" in faults(replace(PLAN, operations=without))


def test_it_sees_hands_stages_and_strangers() -> None:
    first, *rest = PLAN.operations
    for change, said in (
        ({"hands": 2}, "takes two pairs of hands"),
        ({"stage": "road"}, "is not done in the garage"),
        ({"id": "open/nothing"}, "belongs to no job"),
    ):
        assert said in faults(replace(PLAN, operations=(replace(first, **change), *rest)))


def test_it_sees_a_debt_paid_twice_or_never_owed() -> None:
    paying = next(o for o in PLAN.operations if o.pays)
    others = tuple(o for o in PLAN.operations if o is not paying)
    twice = replace(paying, pays=paying.pays * 2)
    assert "is paid 2 times" in faults(replace(PLAN, operations=(twice, *others)))
    assert "is paid and not owed" in faults(
        replace(PLAN, operations=(replace(paying, pays=("????",)), *others))
    )


def test_it_sees_more_going_in_than_was_ever_had() -> None:
    first, *rest = PLAN.operations
    greedy = replace(first, needs=("split pin",) * 5)
    assert "things go in" in faults(replace(PLAN, operations=(greedy, *rest)))


def test_it_sees_a_joint_that_lets_go_left_loose() -> None:
    facts = (*FACTS, f.TookOff(at=("arm",)), f.Bagged(at=("arm bolts",)))
    state, debts, jobs = read(*facts)
    plan = session(*facts)
    assert faults_of(plan, state, debts, jobs) == ()
    arm = replace(plan.operations[0], id="fit/arm", name="arm", sort="garage", after=(), pays=(), needs=())
    broken = replace(plan, operations=(*plan.operations, arm))
    assert "arm bolts would be left loose" in "; ".join(faults_of(broken, state, debts, jobs))


def test_it_sees_hot_work_that_is_not_watched_out() -> None:
    facts = (described(Joint(name="bracket weld", kind="plug-weld-seam")), f.Opened(at=("bracket weld",)))
    state, debts, jobs = read(*facts)
    plan = session(*facts, hours=6)
    assert "watch/bracket weld" in [o.id for o in plan.operations]
    unwatched = tuple(o for o in plan.operations if o.sort != "watch")
    assert "not watched out" in "; ".join(faults_of(replace(plan, operations=unwatched), state, debts, jobs))


def test_it_sees_what_is_closed_over_and_left_apart() -> None:
    nuts = Joint(name="wheel nuts", kind="wheel-nuts", holds=("wheel",))
    screws = Joint(name="drum screws", kind="plain-fixing", behind=(("wheel",),))
    facts = (described(nuts, screws, Part(name="wheel")), f.Wanted(at=("drum screws",), job="renew"))
    state, debts, jobs = read(*facts)
    plan = session(*facts)
    assert faults_of(plan, state, debts, jobs) == ()
    without = tuple(o for o in plan.operations if o.id != "close/drum screws")
    assert "closed over" in "; ".join(faults_of(replace(plan, operations=without), state, debts, jobs))


def test_it_sees_an_untrue_list_of_what_is_loose() -> None:
    assert "left loose are others" in faults(replace(PLAN, left_loose=("brake union",)))


def test_it_sees_what_is_not_for_a_short_session() -> None:
    first, *rest = PLAN.operations
    wet = replace(first, put_down=False)
    assert "not for a short session" in faults(replace(PLAN, hours=0.5, operations=(wet, *rest)))
    assert "not for a short session" not in faults(replace(PLAN, operations=(wet, *rest)))


def test_it_sees_figures_that_are_none() -> None:
    assert "no figures" in faults(replace(PLAN, chance=1.2))
    assert "no figures" in faults(replace(PLAN, minutes=(3, 2, 1)))
    stop = SafeStop(after=99, what="", chance=1)
    assert "outside the plan" in faults(replace(PLAN, safe_stops=(stop,)))
    rising = (SafeStop(after=0, what="", chance=0.4), SafeStop(after=1, what="", chance=0.9))
    assert "more surely" in faults(replace(PLAN, safe_stops=rising))
