"""Voltage drop on a narrow boat."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Mm2, Ohm, OhmMm2PerMetre

SOURCE = Cited(
    title="Voltage drop",
    issuer="a boat owner",
    where="1.6 A over 22 m of 1.5 mm²",
    standing="common practice",
)


def drop(amps: float, way: float, ohms: float) -> float:
    """Ours, V."""
    return wires.voltage_drop(Ampere(amps), Metre(way), Ohm(ohms))


PRINTED = (
    Printed(
        "wires size",
        "1.6 A over 22 m of 1.5 mm² at 0.0164, V",
        "0.38",
        lambda: drop(1.6, 22, wires.resistance(Mm2(1.5), OhmMm2PerMetre(0.0164))),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
