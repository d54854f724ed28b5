"""What holds a gate and what a thin record is asked; a gate never releases."""

from __future__ import annotations

import pytest

from tests.building import FIRST_DAY, described, evening, state_of
from witnessmark.gate.asks import GATES, asked_of, gate_called, gates
from witnessmark.gate.holds import ask_gate
from witnessmark.ground.errors import BadInput
from witnessmark.ground.missed import if_missed
from witnessmark.journal import facts as f
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.things import Joint

ROD = Joint(name="track rod end, left", kind="ball-joint-taper")
TRIM = Joint(name="trim screws", kind="plain-fixing")
NUTS = Joint(name="wheel nuts, left rear", kind="wheel-nuts")


def answer(gate: str, *facts: f.Doing, body: str = "car"):
    state = state_of(described(ROD, TRIM, NUTS), *facts, body=body)
    return ask_gate(gate, state, owed_by(state, evening()), FIRST_DAY)


def test_holds_come_by_what_happens_if_missed_and_joints_before_papers():
    facts = (f.TookOff(at=(TRIM.name,)), f.TookOff(at=(ROD.name,)), f.Bagged(what="clips"))
    holds = answer("road", *facts).holds
    ranks = [if_missed(h.if_missed) for h in holds]
    assert ranks == sorted(ranks)
    assert holds[0].joint == ROD.name
    assert holds[0].state == "apart"
    looks = [h for h in holds if h.if_missed == "looks"]
    assert looks[0].joint == TRIM.name
    assert looks[-1].joint == ""


def test_the_roll_gate_asks_only_what_rolling_needs():
    facts = (f.TookOff(at=(TRIM.name,)), f.TookOff(at=(NUTS.name,)))
    assert {h.joint for h in answer("roll", *facts).holds} == {NUTS.name}


def test_follow_ups_hold_the_road_only_once_overdue():
    shut = (f.TookOff(at=(NUTS.name,)), f.Closed(at=(NUTS.name,), seen=True))
    assert "look_again" not in {h.sort for h in answer("road", *shut).holds}
    assert "look_again" in {h.sort for h in answer("road", *shut, f.Ran(km=60)).holds}


@pytest.mark.parametrize("body", ["car", "trailer", "motorcycle", "pickup"])
def test_a_thin_record_is_asked_the_whole_round_and_a_look_at_every_system_that_can_let_go(body):
    state = state_of(body=body)
    road = ask_gate("road", state, (), FIRST_DAY)
    assert len(road.not_known) == len(asked_of(gates()["road"], state.vehicle))
    looked = {u.system for u in road.not_known if u.name.startswith("look over")}
    lets_go = {"brakes", "steering", "axles", "structure", "restraint", "fuel"}
    assert looked == lets_go & state.vehicle.systems


def test_a_look_over_a_system_counts_no_more_once_it_was_opened():
    looked = f.LookedAt(check="look over steering")
    assert "look over steering" not in {u.name for u in answer("road", looked).not_known}
    again = answer("road", looked, f.TookOff(at=(ROD.name,)))
    (unknown,) = [u for u in again.not_known if u.name == "look over steering"]
    assert "opened since" in unknown.because


def test_every_limit_shown_carries_its_authority_and_place():
    for gate in gates().values():
        for ask in gate.ask:
            assert all(limit.authority and limit.place and limit.edition for limit in ask.limit), ask.id


def test_gates_are_known_by_command_and_by_screen_name():
    assert gate_called("inspection").name == "test"
    assert [gate_called(name).name for name in GATES] == list(GATES)
    with pytest.raises(BadInput) as trouble:
        gate_called("raod")
    assert "raod" in trouble.value.given


def test_a_gate_never_releases():
    for name in GATES:
        headline = answer(name).headline()
        assert "safe" not in headline.lower()
    empty = answer("road", *(f.Proved(check=a.name) for a in gates()["road"].ask))
    assert empty.headline() == "Road: nothing known holds. This is not a release."


def test_the_same_ask_in_two_gates_is_answered_once():
    shared = {a.name for a in gates()["test"].ask} & {a.name for a in gates()["road"].ask}
    for name in shared:
        for gate in ("test", "road"):
            assert name not in {u.name for u in answer(gate, f.Proved(check=name)).not_known}
