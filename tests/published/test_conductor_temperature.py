"""Correction of conductors for temperature."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import wires
from witnessmark.ground.units import Celsius

SOURCE = Cited(
    title="Power copper conductors according to IEC 60228",
    where="correction at 50 and 85 °C",
    standing="standard",
)

PRINTED = (
    Printed("wires size", "factor to 20 °C at 50 °C", "0.893", lambda: 1 / wires.copper_factor(Celsius(50))),
    Printed("wires size", "factor to 20 °C at 85 °C", "0.794", lambda: 1 / wires.copper_factor(Celsius(85))),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
