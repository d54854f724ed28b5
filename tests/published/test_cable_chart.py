"""Voltage drop of one wire, a size chart."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Ohm

SOURCE = Cited(
    title="Size cable chart",
    where="4.17 A over 5 m; it leaves the way back out",
    standing="common practice",
)


def drop(amps: float, way: float, ohms: float) -> float:
    """Ours, V."""
    return wires.voltage_drop(Ampere(amps), Metre(way), Ohm(ohms))


PRINTED = (
    Printed("wires size", "4.17 A over 5 m at 0.0127 Ω/m, V", "0.265", lambda: drop(4.17, 5, 0.0127)),
    Printed("wires size", "part of 12 V, %", "2.21", lambda: drop(4.17, 5, 0.0127) / 12 * 100),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
