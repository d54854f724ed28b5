"""How a joint comes to stand apart, loose or tight, and what is forgotten when it is opened again."""

from __future__ import annotations

import pytest

from tests.building import described, state_of
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.state.joint_state import APART, AS_FOUND, LOOSE, TIGHT
from witnessmark.vehicle.things import Joint, Part

HUB = Joint(name="hub nut, left rear", kind="tapered-drive-hub", holds=("hub, left rear",), assembly="corner")
SEAL = Joint(name="pinion seal", kind="pinion-seal")
WASHER = Joint(name="fill plug", kind="fill-and-drain-plug", assembly="rear axle")
COVER = Joint(name="axle cover", kind="gasketed-cover", assembly="rear axle")
PATCH = Joint(name="floor patch", kind="welded-patch")
PIPE_A = Joint(name="brake union, left rear", kind="brake-union")
PIPE_B = Joint(name="brake hose, left rear", kind="brake-hose")
THINGS = described(HUB, SEAL, WASHER, COVER, PATCH, PIPE_A, PIPE_B, Part(name="hub, left rear"))
TORQUE = (Quantity("140 N·m", 140.0, "N·m"),)
AT = (HUB.name,)


def joint(name: str, *facts: f.Doing):
    return state_of(THINGS, *facts).joints[name]


@pytest.mark.parametrize(
    ("facts", "position"),
    [
        ((), AS_FOUND),
        ((f.TookOff(at=AT),), APART),
        ((f.Slackened(at=AT),), LOOSE),
        ((f.TookOff(at=AT), f.NippedUp(at=AT)), LOOSE),
        ((f.TookOff(at=AT), f.Fitted(at=AT)), LOOSE),
        ((f.TookOff(at=AT), f.Tightened(at=AT)), TIGHT),
        ((f.TookOff(at=AT), f.Tightened(at=AT), f.Slackened(at=AT)), LOOSE),
        ((f.Found(at=AT, condition="loose"),), LOOSE),
        ((f.Found(at=AT, condition="stuck"),), AS_FOUND),
        ((f.TookOff(at=("hub, left rear",)),), APART),
        ((f.TookOff(at=("hub, left rear",)), f.Fitted(at=("hub, left rear",))), LOOSE),
        ((f.TookOff(at=AT), f.Tightened(at=AT), f.DownedTools(at=AT)), LOOSE),
        ((f.Fitted(at=AT, item="split pin", new=True),), LOOSE),
    ],
)
def test_a_joint_stands_as_the_last_act_left_it(facts, position):
    assert joint(HUB.name, *facts).position == position


def test_what_is_fitted_home_is_tight():
    assert joint(SEAL.name, f.TookOff(at=(SEAL.name,)), f.Fitted(at=(SEAL.name,))).position != APART
    assert joint(PATCH.name, f.CutOut(at=(PATCH.name,)), f.Welded(at=(PATCH.name,))).position == TIGHT


def test_opening_again_forgets_what_was_proven():
    once = (f.TookOff(at=AT), f.Tightened(at=AT, figures=TORQUE), f.Proved(at=AT, seen=True))
    proven = joint(HUB.name, *once)
    assert proven.answered
    assert proven.torque == TORQUE[0]
    again = joint(HUB.name, *once, f.Slackened(at=AT))
    assert not again.answered
    assert again.torque is None
    assert again.opened_line == 6


def test_taking_off_what_is_apart_opens_nothing_anew():
    pin = f.Fitted(at=AT, item="split pin", new=True)
    state = joint(HUB.name, f.TookOff(at=AT), pin, f.TookOff(at=AT))
    assert state.opened_line == 3


def test_what_lets_go_is_proved_singly_with_a_figure_or_seen():
    shut = (f.TookOff(at=AT), f.Tightened(at=AT))
    assert not joint(HUB.name, *shut, f.Proved(at=AT)).answered
    assert joint(HUB.name, *shut, f.Proved(at=AT, seen=True)).answered
    assert joint(HUB.name, *shut, f.Proved(at=AT, figures=TORQUE)).answered


def test_a_proof_counts_only_once_the_joint_is_tight():
    loose = joint(PIPE_A.name, f.Opened(at=(PIPE_A.name,)), f.Proved(at=(PIPE_A.name,), check="pedal hold"))
    assert "pedal hold" not in loose.answered


def test_one_act_proves_every_tight_joint_that_shares_it():
    shut: list[f.Doing] = [f.Tightened(at=(PIPE_A.name,)), f.Tightened(at=(PIPE_B.name,))]
    hold = f.Proved(check="pedal hold", figures=(Quantity("2 min", 2.0, "min"),))
    for name in (PIPE_A.name, PIPE_B.name):
        assert "pedal hold" in joint(name, *shut, hold).answered


def test_a_witness_mark_is_a_record_and_no_proof():
    marked = joint(HUB.name, f.TookOff(at=AT), f.Tightened(at=AT, marked=True))
    assert "mark" in marked.recorded
    assert not marked.answered


def test_a_sweep_closes_all_of_an_assembly_but_its_exceptions_and_what_lets_go():
    facts: list[f.Doing] = [f.Opened(at=(WASHER.name, COVER.name))]
    swept: list[f.Doing] = [*facts, f.Closed(at=("rear axle",), but=("axle cover",))]
    assert joint(WASHER.name, *swept).position == TIGHT
    assert joint(COVER.name, *swept).position == APART
    hub: list[f.Doing] = [f.TookOff(at=AT), f.Closed(at=("corner",))]
    assert joint(HUB.name, *hub).position == APART


def test_closing_what_lets_go_without_figure_or_seen_leaves_it_unproven():
    closed = joint(HUB.name, f.TookOff(at=AT), f.Closed(at=AT))
    assert closed.position == TIGHT
    assert not closed.answered
    assert joint(HUB.name, f.TookOff(at=AT), f.Closed(at=AT, figures=TORQUE)).answered


def test_a_finding_stands_until_it_is_put_right():
    worn = f.Found(at=AT, condition="worn")
    assert [x.condition for x in joint(HUB.name, worn).findings] == ["worn"]
    assert joint(HUB.name, worn, f.Fitted(at=AT, new=True)).findings == ()
    assert joint(HUB.name, worn, f.Found(at=AT, condition="good")).findings == ()
    assert joint(HUB.name, worn, f.Left(at=AT, why="looks")).findings
    dull = f.Found(at=(COVER.name,), condition="worn")
    assert joint(COVER.name, dull, f.Left(at=(COVER.name,), why="looks")).findings == ()


def test_distance_run_is_kept_with_the_closing():
    closed = joint(HUB.name, f.Ran(km=120), f.TookOff(at=AT), f.Tightened(at=AT), f.Ran(km=30))
    assert closed.closed_km == 120


def test_what_was_found_loose_is_answered_by_tightening_it_and_still_owes_its_renewals():
    found = f.Found(at=AT, condition="loose")
    tight = joint(HUB.name, found, f.Tightened(at=AT, figures=TORQUE))
    assert tight.findings == ()
    assert tight.opened_line == 3
