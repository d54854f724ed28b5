"""A worked check before painting with a swung thermometer."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import air
from witnessmark.bench.answers.paint_window import answer_window
from witnessmark.ground.units import Celsius, HectoPascal

SOURCE = Cited(
    title="Ambient and application conditions",
    where="worked example: dry 21 °C, wet 17 °C, steel 19 °C",
    standing="handbook",
)


DEW = air.dew_point_wet_bulb(Celsius(21), Celsius(17), HectoPascal(1013.25))
HUMIDITY = air.humidity_for(Celsius(21), DEW)
SLIP = answer_window(air=21, humidity=HUMIDITY, steel=19)

PRINTED = (
    Printed("paint window", "dew point, dry 21 °C and wet 17 °C", "15", lambda: DEW),
    Printed("paint window", "steel above dew point", "4", lambda: 19 - DEW),
    Printed("paint window", "acceptable", "fits", lambda: str(SLIP.verdict)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
