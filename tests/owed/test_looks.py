"""Looks after use: at 50 km the wheel nuts, once each; near enough counts, early does not."""

from __future__ import annotations

import pytest

from tests.building import described, evening, state_of
from witnessmark.journal import facts as f
from witnessmark.owed.looks import NEAR_ENOUGH, points
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.kind import LookAgain
from witnessmark.vehicle.things import Joint

NUTS = Joint(name="wheel nuts, left rear", kind="wheel-nuts")
AT = (NUTS.name,)
SHUT = (f.TookOff(at=AT), f.Closed(at=AT, seen=True))


def looks(*facts: f.Doing, body: str = "car"):
    return [
        d for d in owed_by(state_of(described(NUTS), *facts, body=body), evening()) if d.sort == "look_again"
    ]


def test_wheel_nuts_are_looked_at_after_about_fifty_kilometres():
    """50 km: a tyre maker's page on wheel retorquing, read as an excerpt; see the catalogue's sources."""
    assert any(50 in row.km for row in kind_of("wheel-nuts").look_again)


@pytest.mark.parametrize(("run", "overdue"), [(0, False), (49, False), (50, True), (400, True)])
def test_a_look_is_owed_from_the_closing_and_overdue_from_its_distance(run, overdue):
    (debt, *_) = looks(*SHUT, f.Ran(km=run))
    assert debt.overdue is overdue
    assert f"{run} run" in debt.due


def test_a_look_near_its_distance_counts_and_an_early_one_does_not():
    first = kind_of("wheel-nuts").look_again[0]
    enough = 50 * NEAR_ENOUGH
    assert len(looks(*SHUT, f.Ran(km=enough - 1), f.LookedAt(at=AT), f.Ran(km=60))) >= 1
    left = {d.item for d in looks(*SHUT, f.Ran(km=enough), f.LookedAt(at=AT), f.Ran(km=60)) if d.overdue}
    assert first.name not in left


def test_opening_again_starts_the_distance_anew():
    again = looks(*SHUT, f.Ran(km=45), *SHUT, f.Ran(km=45))
    assert all(not d.overdue for d in again if "50 km" in d.due)


def test_days_and_heat_cycles_fall_due_as_well():
    row = LookAgain(name="row", text="", km=(50,), days=(14,), heat_cycles=(1,))
    assert points(row) == (("km", 50), ("days", 14), ("heat", 1))
    cover = Joint(name="rocker cover", kind="gasketed-cover")
    at = (cover.name,)
    facts = (described(cover), f.TookOff(at=at), f.Closed(at=at, seen=True), f.Ran(heat_cycles=1))
    due = [d for d in owed_by(state_of(*facts), evening()) if d.sort == "look_again" and d.overdue]
    assert due
