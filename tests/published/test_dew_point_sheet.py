"""A paint maker's sheet of dew points and of the most water that air holds."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import air
from witnessmark.ground.units import Celsius, Percent

SOURCE = Cited(
    title="Relation between dew point, air temperature and relative humidity",
    issuer="a paint maker",
    where="sheet 1650, page 1, four cells and ten rows seen",
    edition="June 2013",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint window",
        "dew point at 20 °C, 60 %",
        "12.0",
        lambda: air.dew_point(Celsius(20), Percent(60)),
    ),
)

BESIDE = (
    Printed(
        "paint window",
        "most water at 0 °C, g/m³",
        "4.8",
        lambda: air.vapour_content(Celsius(0)),
        "not a result of the question; within 0.3 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 5 °C, g/m³",
        "6.8",
        lambda: air.vapour_content(Celsius(5)),
        "not a result of the question; within 0.3 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 15 °C, g/m³",
        "12.8",
        lambda: air.vapour_content(Celsius(15)),
        "not a result of the question; within 0.3 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 20 °C, g/m³",
        "17.3",
        lambda: air.vapour_content(Celsius(20)),
        "not a result of the question; within 0.3 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 25 °C, g/m³",
        "23.0",
        lambda: air.vapour_content(Celsius(25)),
        "not a result of the question; within 0.3 g/m³",
    ),
)

NOT_REPRODUCED = (
    Printed(
        "paint window",
        "dew point at 25 °C, 50 %",
        "13.8",
        lambda: air.dew_point(Celsius(25), Percent(50)),
        "ours is 13.85; the sheet follows another curve",
    ),
    Printed(
        "paint window",
        "most water at 10 °C, g/m³",
        "9.5",
        lambda: air.vapour_content(Celsius(10)),
        "the sheet follows another saturation curve; ours is within 0.4 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 30 °C, g/m³",
        "30.4",
        lambda: air.vapour_content(Celsius(30)),
        "the sheet follows another saturation curve; ours is within 0.4 g/m³",
    ),
    Printed(
        "paint window",
        "most water at 45 °C, g/m³",
        "65.0",
        lambda: air.vapour_content(Celsius(45)),
        "the sheet follows another saturation curve; ours is within 0.4 g/m³",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
