"""Weld figures that do not follow from their own formulas."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Weld capacity per mm of run, a calculator page; a multiple-choice question",
    where="throat 3 mm, three grades; 10 mm fillet with a factor of 3",
    standing="common practice",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "welds group",
        "S235, kN/mm",
        "0.8",
        lambda: 3 * 360 / (math.sqrt(3) * 0.8 * 1.25) / 1000,
        "the page contradicts its own formula",
    ),
    Printed(
        "welds group",
        "S275, kN/mm",
        "0.72",
        lambda: 3 * 430 / (math.sqrt(3) * 0.85 * 1.25) / 1000,
        "the page contradicts its own formula",
    ),
    Printed(
        "welds group",
        "S355, kN/mm",
        "0.82",
        lambda: 3 * 490 / (math.sqrt(3) * 0.9 * 1.25) / 1000,
        "the page contradicts its own formula",
    ),
    Printed(
        "welds group",
        "length for 5 kN, mm",
        "20.0",
        lambda: 5000 / (welds.throat(Mm(10)) * 150 / 3),
        "takes half the square of the leg as a throat",
    ),
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
