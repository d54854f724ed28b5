"""Names fit to be told to anybody."""

from __future__ import annotations

import pytest

from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.vehicle.things import Joint, Vehicle
from witnessmark.words.open_names import is_open, open_name

VEHICLE = Vehicle(
    joints={
        "nut that Barnaby cut": Joint(name="nut that Barnaby cut", kind="wheel-nuts"),
        "Barnaby's thing": Joint(name="Barnaby's thing"),
    }
)


def test_every_name_of_every_starting_list_may_be_told() -> None:
    for chosen in starting_lists().values():
        for name in (*(p.name for p in chosen.part), *(j.name for j in chosen.joint)):
            assert is_open(f"{name}, left rear"), name


@pytest.mark.parametrize(
    "name",
    [
        "Barnaby",
        "barnaby's hub",
        "hub nut <b>",
        "hub `nut`",
        "hub nut 07700",
        "hub from Ottermere",
        "smith",
        "é",
    ],
)
def test_what_may_be_somebodys_own_may_not(name: str) -> None:
    assert not is_open(name)


def test_instead_the_kind_is_told_or_nothing_but_that_it_is_a_thing() -> None:
    names = ("nut that Barnaby cut", "Barnaby's thing", "Barnaby's part", "hub nut, left rear")
    assert [open_name(name, VEHICLE) for name in names] == [
        "wheel and wheel nuts",
        "a joint",
        "a part",
        "hub nut, left rear",
    ]
