"""Voltage drops worked on five pages."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Mm2, Ohm, Ratio, Volt

SOURCE = Cited(
    title="Calculating voltage drop on 12 volt; voltage drop in DC circuits; size cable chart; "
    "voltage drop, a narrow boat page",
    where="16 AWG over 20 m; 100 A over 15 ft; 4.17 A over 5 m; 1.6 A over 22 m",
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
        lambda: drop(1, 40, wires.resistance(Mm2(1.3), 0.01785)),
    ),
    Printed(
        "wires size",
        "1 A, 40 m, part of 12 V, %",
        "4.58",
        lambda: drop(1, 40, wires.resistance(Mm2(1.3), 0.01785)) / 12 * 100,
    ),
    Printed("wires size", "100 A over 30 ft of 4 AWG, V", "0.75", lambda: drop(100, 30, 0.00025)),
    Printed("wires size", "4 AWG, part of 12 V, %", "6.25", lambda: drop(100, 30, 0.00025) / 12 * 100),
    Printed("wires size", "100 A over 30 ft of 2 AWG, V", "0.48", lambda: drop(100, 30, 0.00016)),
    Printed("wires size", "100 A over 30 ft of 0 AWG, V", "0.30", lambda: drop(100, 30, 0.0001)),
    Printed("wires size", "4.17 A over 5 m at 0.0127 Ω/m, V", "0.265", lambda: drop(4.17, 5, 0.0127)),
    Printed("wires size", "4.17 A, part of 12 V, %", "2.21", lambda: drop(4.17, 5, 0.0127) / 12 * 100),
    Printed(
        "wires size",
        "1.6 A over 22 m of 1.5 mm² at 0.0164, V",
        "0.38",
        lambda: drop(1.6, 22, wires.resistance(Mm2(1.5), 0.0164)),
    ),
)

BESIDE = (
    Printed(
        "wires size",
        "25 W lamp, 18 m one way, 0.6 V: size",
        "2.5",
        lambda: wires.copper_area(Ampere(2.1), Metre(36), Volt(0.6), Ratio(1)),
        "2.17 mm² of solid copper by ours; of stranded wire our answer takes 4, for 2.5 may lose 0.603 V",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
