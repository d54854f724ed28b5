"""Debts of the garage and of time."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from tests.building import FIRST_DAY, described, entry, evening, state_of
from witnessmark.journal import facts as f
from witnessmark.owed.garage import BRAKE_FLUID_DAYS, TIN_DAYS, TURN_DAYS
from witnessmark.owed.owed import owed_by
from witnessmark.owed.time import FIRE_WATCH_LEAST, FIRE_WATCH_SHOWN
from witnessmark.state.standing import state_from
from witnessmark.vehicle.things import Joint, Part

BOX = Part(name="gearbox", assembly="gearbox")
SEAL = Joint(name="input seal", kind="shaft-seal", assembly="gearbox")
HORN = Part(name="horn")
HORN_BOLT = Joint(name="horn bolt", kind="plain-fixing", holds=("horn",))


def owed(*facts: f.Doing, after_days: int = 0, sort: str = ""):
    debts = owed_by(state_of(*facts), evening(FIRST_DAY + timedelta(days=after_days)))
    return [d for d in debts if not sort or d.sort == sort]


def test_a_part_off_with_no_joint_waiting_for_it_is_owed_back():
    assert [d.what for d in owed(described(BOX), f.TookOff(at=("gearbox",)))] == ["refit"]
    assert owed(described(BOX), f.TookOff(at=("gearbox",)), f.Fitted(at=("gearbox",))) == []
    gone = owed(described(BOX), f.TookOff(at=("gearbox",)), f.Scrapped(at=("gearbox",)))
    assert gone[0].what == "find another and fit it"


def test_a_part_whose_joint_stands_apart_is_owed_by_the_joint_alone():
    debts = owed(described(HORN, HORN_BOLT), f.TookOff(at=("horn",)))
    assert "refit" not in {d.sort for d in debts}
    assert "close" in {d.sort for d in debts}


def test_a_part_away_is_owed_once_it_is_late():
    away = f.SentAway(at=("gearbox",), with_whom="the plater", due_back="2026-03-20")
    assert not owed(described(BOX), away, after_days=5, sort="back")
    assert owed(described(BOX), away, after_days=20, sort="back")


@pytest.mark.parametrize(("days", "overdue"), [(1, False), (TURN_DAYS, True)])
def test_a_stored_assembly_with_seals_is_turned_every_month(days, overdue):
    stored = (described(BOX, SEAL), f.TookOff(at=("gearbox",)), f.Stored(at=("gearbox",), where="shelf"))
    (turn,) = owed(*stored, after_days=days, sort="turn")
    assert turn.overdue is overdue
    assert not owed(
        described(HORN), f.TookOff(at=("horn",)), f.Stored(at=("horn",)), after_days=99, sort="turn"
    )


def test_bags_and_plugs_are_owed_until_counted_out():
    assert owed(f.Bagged(what="clips", number=4), sort="bag")[0].because.startswith(
        "bagged when it came off (4"
    )
    assert owed(f.Blanked(at=("fuel pipe",), number=2), sort="blank")[0].what == "take out 2 blanking plugs"
    assert not owed(f.Blanked(at=("pipe",), number=2), f.Unblanked(at=("pipe",), number=2), sort="blank")
    assert owed(f.Braced(at=("door gap",)), sort="brace")


def test_an_empty_case_is_owed_its_oil():
    assert owed(f.Drained(at=("rear axle",)), sort="fluid")[0].what.endswith("tag it EMPTY")
    assert not owed(f.Drained(at=("rear axle",)), f.Filled(at=("rear axle",), fluid="gear oil"), sort="fluid")


def test_brake_fluid_ages_from_the_bleeding_and_an_open_tin_is_not_kept():
    bled = f.PutRight(what="bleed brakes")
    (young,) = owed(bled, after_days=30, sort="fluid")
    assert not young.overdue
    assert owed(bled, after_days=BRAKE_FLUID_DAYS, sort="fluid")[0].overdue
    assert owed(f.OpenedTin(what="brake fluid"), after_days=TIN_DAYS, sort="fluid")
    assert not owed(f.OpenedTin(what="brake fluid"), after_days=TIN_DAYS - 1, sort="fluid")


def at_hour(*facts: f.Doing, done: str, hours_later: float):
    now = datetime.fromisoformat(f"{FIRST_DAY.isoformat()}T{done}") + timedelta(hours=hours_later)
    return owed_by(state_from([entry(fact, n, time=done) for n, fact in enumerate(facts, 1)]), now)


def test_bare_steel_is_owed_a_coat_at_once_and_flash_rust_after_some_hours():
    early, late = (at_hour(f.Bared(at=("floor",)), done="10:00", hours_later=h)[0] for h in (1, 6))
    assert early.what == "coat the bare steel"
    assert "flash rust" in late.what
    assert late.overdue


def test_the_recoat_window_is_the_sheets_own_and_shuts():
    coat = f.Coated(at=("floor",), product="epoxy", recoat_from_hours=4, recoat_until_hours=168)
    inside, shut = (at_hour(coat, done="15:20", hours_later=h)[0] for h in (160, 168))
    assert not inside.overdue
    assert inside.what == "next coat, inside its window"
    assert shut.overdue
    assert "key and clean" in shut.what
    assert not at_hour(f.Coated(at=("floor",), last_coat=True), done="15:20", hours_later=500)


def test_a_fire_watch_runs_sixty_minutes_and_asks_for_a_last_look():
    """Sixty shown, thirty the least published: see the cautions and their sources."""
    spark = f.LastSpark(at=("outrigger",))
    watch = at_hour(spark, done="11:47", hours_later=0.2)[0]
    assert watch.what.startswith("fire watch until 12:47")
    assert str(FIRE_WATCH_LEAST) in watch.because
    assert FIRE_WATCH_SHOWN >= 2 * FIRE_WATCH_LEAST
    looked = state_from([entry(spark, 1, time="11:47"), entry(f.WatchedFire(), 2, time="12:50")])
    assert not owed_by(looked, datetime(2026, 3, 7, 13, 0))
    early = state_from([entry(spark, 1, time="11:47"), entry(f.WatchedFire(), 2, time="12:20")])
    assert owed_by(early, datetime(2026, 3, 7, 13, 0))
