"""Starting lists brought to a vehicle."""

from __future__ import annotations

import pytest

from witnessmark.ground.errors import BadInput
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.starting_lists import assembly_name, expand, side_wanted, starting_lists
from witnessmark.vehicle.things import Vehicle

SIDE_FOR = {"corner": "left rear", "side": "left", "vehicle": ""}


def vehicle_with(*lists: tuple[str, str]) -> Vehicle:
    vehicle = Vehicle()
    for key, side in lists:
        parts, joints = expand(key, side, vehicle)
        vehicle = Vehicle(
            parts={**vehicle.parts, **{p.name: p for p in parts}},
            joints={**vehicle.joints, **{j.name: j for j in joints}},
        )
    return vehicle


@pytest.mark.parametrize("key", list(starting_lists()))
def test_every_list_stands_by_itself(key: str) -> None:
    chosen = starting_lists()[key]
    parts, joints = expand(key, SIDE_FOR[chosen.per], Vehicle())
    known = {p.name for p in parts} | {j.name for j in joints}
    assert len(parts) == len(chosen.part)
    assert len(joints) == len(chosen.joint)
    assert all(j.kind in catalogue() for j in joints)
    assert {n for j in joints for n in j.holds} <= {p.name for p in parts}
    assert {n for j in joints for route in j.behind for n in route} <= known
    assert {p.assembly for p in parts} | {j.assembly for j in joints} == {
        assembly_name(key, SIDE_FOR[chosen.per])
    }


def test_each_corner_has_its_own_names() -> None:
    vehicle = vehicle_with(("drum-brake-corner", "left rear"), ("drum-brake-corner", "right rear"))
    nuts = [name for name in vehicle.joints if name.startswith("hub nut,")]
    assert nuts == ["hub nut, left rear", "hub nut, right rear"]
    assert vehicle.joints["hub nut, right rear"].holds == ("hub, right rear",)
    assert vehicle.assemblies == ("drum brake corner, left rear", "drum brake corner, right rear")


def test_a_name_already_known_is_not_described_again() -> None:
    vehicle = vehicle_with(("drum-brake-corner", "left rear"))
    assert expand("drum-brake-corner", "left rear", vehicle) == ((), ())


def test_the_place_of_a_corner_is_that_corner() -> None:
    parts, _ = expand("drum-brake-corner", "right front", Vehicle())
    assert {(p.place, p.side, parted(p.name)[1]) for p in parts} == {
        ("right front", "right front", "right front")
    }


@pytest.mark.parametrize(
    ("key", "side"), [("drum-brake-corner", ""), ("drum-brake-corner", "left"), ("no-such-list", "")]
)
def test_a_list_that_cannot_be_brought_in_says_what_would_hold(key: str, side: str) -> None:
    with pytest.raises(BadInput) as refused:
        expand(key, side, Vehicle())
    assert refused.value.holds


def test_a_list_for_the_whole_vehicle_wants_no_side() -> None:
    chosen = starting_lists()["drive-axle"]
    assert side_wanted(chosen, "") == ""
    assert assembly_name("drive-axle", "left") == "drive axle"
