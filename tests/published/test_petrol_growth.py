"""Petrol that grows, worked for a reader."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.ground.units import Celsius, Litre, PerKelvin

SOURCE = Cited(
    title="Coefficient of expansion of fuels",
    where="5 litres from 20 to 30 °C",
    standing="handbook",
)

PRINTED = (
    Printed(
        "oils fill",
        "5 L of petrol 10 °C warmer, L",
        "5.0475",
        lambda: oils.grown(Litre(5), Celsius(20), Celsius(30), PerKelvin(0.00095)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
