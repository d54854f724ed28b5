"""A weld of 25 inches in two minutes, an inspectors' forum."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Ampere, MmPerSecond, Ratio, Volt

SOURCE = Cited(
    title="Heat input calculation",
    where="29 V, 325 A",
    standing="common practice",
)


def heat(volts: float, amps: float, speed: float, share: float) -> float:
    """Ours, kJ/mm."""
    return welds.heat_input(Volt(volts), Ampere(amps), MmPerSecond(speed), Ratio(share))


PRINTED = (
    Printed(
        "welds heat",
        "29 V, 325 A, 25 in in 2 min, kJ/in",
        "45.24",
        lambda: heat(29, 325, 12.5 * 25.4 / 60, 1) * 25.4,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
