"""Where a part is after each act."""

from __future__ import annotations

import pytest

from tests.building import described, state_of
from witnessmark.journal import facts as f
from witnessmark.state.parts import AWAY, BENCH, DONOR, ON, POST, SCRAPPED, SHELF
from witnessmark.vehicle.things import Joint, Part

BOX = Part(name="gearbox", assembly="gearbox")
DONOR_DOOR = Part(name="door, left", where="donor")
THINGS = described(BOX, DONOR_DOOR, Joint(name="input seal", kind="shaft-seal", assembly="gearbox"))
AT = ("gearbox",)


@pytest.mark.parametrize(
    ("facts", "where"),
    [
        ((), ON),
        ((f.TookOff(at=AT),), BENCH),
        ((f.TookOff(at=AT), f.Stored(at=AT, where="top shelf")), SHELF),
        ((f.TookOff(at=AT), f.SentAway(at=AT, with_whom="the plater")), AWAY),
        ((f.TookOff(at=AT), f.SentAway(at=AT), f.CameBack(at=AT)), BENCH),
        ((f.TookOff(at=AT), f.Scrapped(at=AT), f.Ordered(at=AT, item="gearbox")), POST),
        ((f.TookOff(at=AT), f.Scrapped(at=AT)), SCRAPPED),
        ((f.TookOff(at=AT), f.Fitted(at=AT)), ON),
        ((f.Came(at=AT, item="gearbox"),), ON),
    ],
)
def test_a_part_is_where_the_last_act_left_it(facts, where):
    assert state_of(THINGS, *facts).parts["gearbox"].where == where


def test_a_part_may_begin_on_the_donor():
    assert state_of(THINGS).parts["door, left"].where == DONOR


def test_an_assembly_is_stored_and_turned_by_its_own_name():
    state = state_of(THINGS, f.TookOff(at=AT), f.Stored(at=AT, where="shelf"), f.Turned(at=AT), days_apart=1)
    part = state.parts["gearbox"]
    assert part.turned_day is not None
    assert part.stored_day is not None
    assert part.turned_day > part.stored_day


def test_a_part_found_bad_stays_bad_until_a_new_one_is_fitted():
    bad = state_of(THINGS, f.Found(at=AT, condition="cracked"))
    assert bad.parts["gearbox"].bad == "cracked"
    mended = state_of(THINGS, f.Found(at=AT, condition="cracked"), f.Fitted(at=AT, new=True))
    assert mended.parts["gearbox"].bad == ""


def test_a_part_left_as_it_is_is_no_longer_asked_about():
    kept = state_of(THINGS, f.Found(at=AT, condition="cracked"), f.Left(at=AT, why="only the casing fin"))
    assert kept.parts["gearbox"].bad == ""
