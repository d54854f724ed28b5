"""Voltage drop of 16 AWG, a note on small solar systems."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Mm2, Ohm, OhmMm2PerMetre

SOURCE = Cited(
    title="Calculating voltage drop on 12 volt",
    where="1 A over 20 m of 16 AWG, out and back",
    edition="November 2010",
    standing="common practice",
)


def drop(amps: float, way: float, ohms: float) -> float:
    """Ours, V."""
    return wires.voltage_drop(Ampere(amps), Metre(way), Ohm(ohms))


PRINTED = (
    Printed(
        "wires size",
        "1 A, 40 m of 1.3 mm² at 0.01785, V",
        "0.549",
        lambda: drop(1, 40, wires.resistance(Mm2(1.3), OhmMm2PerMetre(0.01785))),
    ),
    Printed(
        "wires size",
        "part of 12 V, %",
        "4.58",
        lambda: drop(1, 40, wires.resistance(Mm2(1.3), OhmMm2PerMetre(0.01785))) / 12 * 100,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
