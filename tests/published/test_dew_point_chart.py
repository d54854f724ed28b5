"""A chart of dew points in Fahrenheit."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import air
from witnessmark.ground.units import Celsius, Percent

SOURCE = Cited(
    title="Dew point calculation sample chart",
    where="row 90 %, and the worked line 65 % at 70 °F",
    standing="handbook",
)


def fahrenheit(air_f: float, humidity: float) -> float:
    """Our dew point in °F."""
    return air.dew_point(Celsius((air_f - 32) / 1.8), Percent(humidity)) * 1.8 + 32


PRINTED = (
    Printed("paint window", "90 % at 20 °F", "18", lambda: fahrenheit(20, 90)),
    Printed("paint window", "90 % at 40 °F", "37", lambda: fahrenheit(40, 90)),
    Printed("paint window", "90 % at 50 °F", "47", lambda: fahrenheit(50, 90)),
    Printed("paint window", "90 % at 60 °F", "57", lambda: fahrenheit(60, 90)),
    Printed("paint window", "90 % at 70 °F", "67", lambda: fahrenheit(70, 90)),
    Printed("paint window", "90 % at 80 °F", "77", lambda: fahrenheit(80, 90)),
    Printed("paint window", "90 % at 90 °F", "87", lambda: fahrenheit(90, 90)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "paint window",
        "65 % at 70 °F",
        "57",
        lambda: fahrenheit(70, 65),
        "cut off, not rounded; ours is 57.7",
    ),
    Printed(
        "paint window",
        "least steel for 65 % at 70 °F",
        "62",
        lambda: fahrenheit(70, 65) + 5,
        "five above the cut figure",
    ),
    Printed(
        "paint window",
        "90 % at 30 °F",
        "28",
        lambda: fahrenheit(30, 90),
        "the chart goes over to the frost point; ours is over water, 27.4",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
