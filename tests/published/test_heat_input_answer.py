"""A machine-written answer found on a page of the web, which does not hold."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Ampere, MmPerSecond, Ratio, Volt

SOURCE = Cited(
    title="What is the formula for calculating welding heat input",
    edition="August 2024",
    where="its example",
    standing="common practice",
)


def heat(volts: float, amps: float, speed: float, share: float) -> float:
    """Ours, kJ/mm."""
    return welds.heat_input(Volt(volts), Ampere(amps), MmPerSecond(speed), Ratio(share))


PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "welds heat",
        "25 V, 200 A, 10 mm/s, 0.85",
        "35294.12",
        lambda: heat(25, 200, 10, 0.85),
        "divides by the efficiency and mixes seconds with minutes; ours is 0.425 kJ/mm",
    ),
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
