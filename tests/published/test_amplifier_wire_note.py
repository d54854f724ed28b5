"""Voltage drop of thick wire, a reference for car audio."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Ohm

SOURCE = Cited(
    title="Voltage drop in DC circuits",
    issuer="an audio reference",
    where="100 A over 15 ft, three sizes",
    standing="common practice",
)


def drop(amps: float, way: float, ohms: float) -> float:
    """Ours, V."""
    return wires.voltage_drop(Ampere(amps), Metre(way), Ohm(ohms))


PRINTED = (
    Printed("wires size", "100 A over 30 ft of 4 AWG, V", "0.75", lambda: drop(100, 30, 0.00025)),
    Printed("wires size", "4 AWG, part of 12 V, %", "6.25", lambda: drop(100, 30, 0.00025) / 12 * 100),
    Printed("wires size", "100 A over 30 ft of 2 AWG, V", "0.48", lambda: drop(100, 30, 0.00016)),
    Printed("wires size", "100 A over 30 ft of 0 AWG, V", "0.30", lambda: drop(100, 30, 0.0001)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
