"""Slopes in the manual of a winch."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="Winch manual",
    issuer="a maker of winches",
    where="page 8: grades and the load of 6000 lb",
    standing="maker",
)


def part(slope: float, ground: float) -> float:
    """Ours, as a part of the weight."""
    return loads.recovery_force(Kilogram(1000), Degree(slope), Ratio(ground)) / (1000 * loads.GRAVITY)


PRINTED = (
    Printed(
        "loads towing",
        "60 % grade, part of the weight",
        "0.51",
        lambda: part(math.degrees(math.atan(0.6)), 0),
    ),
    Printed("loads towing", "22°, %", "37", lambda: 100 * part(22, 0)),
    Printed("loads towing", "45°, %", "71", lambda: 100 * part(45, 0)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed("loads towing", "31°, %", "51", lambda: 100 * part(31, 0), "the sine is 0.515"),
    Printed(
        "loads towing",
        "6000 lb up a 60 % grade, lb",
        "3060",
        lambda: 6000 * part(math.degrees(math.atan(0.6)), 0),
        "from 0.51; the sine gives 3087",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
