"""Examples of a workshop calculator, and of an inspectors' forum."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Ampere, MmPerSecond, Ratio, Volt

SOURCE = Cited(
    title="Welding heat input, examples",
    where="two passes; a forum example of 25 inches in 2 minutes; an answer of a language model",
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
    Printed(
        "welds heat",
        "29 V, 325 A, 25 in in 2 min, kJ/in",
        "45.24",
        lambda: heat(29, 325, 12.5 * 25.4 / 60, 1) * 25.4,
    ),
)

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


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
