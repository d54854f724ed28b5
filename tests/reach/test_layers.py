"""Layers at a place: outermost first, everything in front brought along, circles last."""

from __future__ import annotations

from tests.building import described, state_of
from witnessmark.reach.access import access_of
from witnessmark.reach.layers import layers
from witnessmark.vehicle.things import Joint, Part


def test_what_stands_in_front_lies_in_an_earlier_layer() -> None:
    state = state_of(
        described(
            Part(name="wheel"),
            Part(name="drum"),
            Joint(name="wheel nuts", kind="wheel-nuts", holds=("wheel",)),
            Joint(name="drum screw", holds=("drum",), behind=(("wheel",),)),
            Joint(name="shoe pin", behind=(("drum",),)),
        )
    )
    assert layers(access_of(state), ["shoe pin"]) == (
        ("wheel nuts",),
        ("wheel",),
        ("drum screw",),
        ("drum",),
        ("shoe pin",),
    )


def test_one_of_two_ways_is_enough() -> None:
    joints = (
        Joint(name="hatch"),
        Joint(name="cover", behind=(("hatch",),)),
        Joint(name="plug", behind=(("cover",), ("hatch",))),
    )
    piles = layers(access_of(state_of(described(*joints))), ["plug"])
    assert piles == (("hatch",), ("cover", "plug"))


def test_things_behind_each_other_come_last_and_the_list_ends() -> None:
    joints = (Joint(name="cap"), Joint(name="a", behind=(("b",),)), Joint(name="b", behind=(("a",),)))
    assert layers(access_of(state_of(described(*joints))), ["a", "cap"]) == (("cap",), ("a", "b"))


def test_an_unknown_name_is_no_layer() -> None:
    assert layers(access_of(state_of(described(Joint(name="cap")))), ["moon"]) == ()
