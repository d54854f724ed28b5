"""Two passes, a workshop calculator."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Ampere, MmPerSecond, Ratio, Volt

SOURCE = Cited(
    title="Welding heat input calculator",
    where="its two examples",
    standing="common practice",
)


def heat(volts: float, amps: float, speed: float, share: float) -> float:
    """Ours, kJ/mm."""
    return welds.heat_input(Volt(volts), Ampere(amps), MmPerSecond(speed), Ratio(share))


PRINTED = (
    Printed("welds heat", "24 V, 200 A, 300 mm/min, 80 %", "0.768", lambda: heat(24, 200, 5, 0.8)),
    Printed("welds heat", "24 V, 200 A, in kJ/in", "19.51", lambda: heat(24, 200, 5, 0.8) * 25.4),
    Printed("welds heat", "28 V, 250 A, 250 mm/min, 80 %", "1.344", lambda: heat(28, 250, 250 / 60, 0.8)),
    Printed("welds heat", "28 V, 250 A, in kJ/in", "34.14", lambda: heat(28, 250, 250 / 60, 0.8) * 25.4),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
