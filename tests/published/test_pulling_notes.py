"""Pulls up slopes and out of mud, worked by winch makers and drivers."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="Winch manual, page 8; slope and winching force; winch maths; recovery load sheet; winch guide",
    where="the examples of each",
    standing="common practice",
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
    Printed("loads towing", "5000 lb up 30°, lb", "2500", lambda: 5000 * part(30, 0)),
    Printed("loads towing", "5700 lb on hard ground, lb", "285", lambda: 5700 * part(0, 0.05)),
    Printed("loads towing", "5700 lb up 30°, lb", "2850", lambda: 5700 * part(30, 0)),
    Printed("loads towing", "5700 lb body deep, lb", "8550", lambda: 5700 * part(0, 1.5)),
    Printed(
        "loads towing",
        "20 000 lb: mire 1.00, slope 0.17, damage 0.67, lb",
        "36800",
        lambda: 20_000 * part(math.degrees(math.asin(0.17)), 1.67),
    ),
    Printed("loads towing", "5000 lb on a road, lb", "200", lambda: 5000 * part(0, 0.04)),
    Printed("loads towing", "5000 lb on packed gravel, lb", "1500", lambda: 5000 * part(0, 0.30)),
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
    Printed(
        "loads towing",
        "5700 lb up 15°, lb",
        "1425",
        lambda: 5700 * part(15, 0),
        "a quarter by rule; the sine gives 1475",
    ),
    Printed("loads towing", "45° by rule, %", "75", lambda: 100 * part(45, 0), "the sine gives 70.7"),
    Printed(
        "loads towing",
        "towbar D for 3500 and 3500 kg, kN",
        "17.7",
        lambda: loads.coupling_d(Kilogram(3500), Kilogram(3500)) / 1000,
        "its own formula gives 17.2",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
