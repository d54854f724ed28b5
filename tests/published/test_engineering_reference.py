"""Worked examples of an engineering reference: oil that grows, wire that loses."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils, wires
from witnessmark.ground.units import Ampere, Celsius, Litre, Metre, Ohm, PerKelvin

SOURCE = Cited(
    title="Volumetric expansion; 12 volt wire",
    issuer="an engineering reference",
    where="100 litres from 20 to 40 °C; 6 mm² with 10 A",
    standing="handbook",
)

PRINTED = (
    Printed(
        "oils fill",
        "growth of 100 L from 20 to 40 °C, L",
        "1.4",
        lambda: oils.grown(Litre(100), Celsius(20), Celsius(40), PerKelvin(0.0007)) - 100,
    ),
    Printed(
        "wires size",
        "length for 2 % of 12 V at 10 A, m",
        "8.3",
        lambda: 0.24 / wires.voltage_drop(Ampere(10), Metre(1), Ohm(0.0029)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
