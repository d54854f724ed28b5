"""A table of weld capacities that contradicts its own formula."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of

SOURCE = Cited(
    title="Weld capacity per mm of run",
    where="throat 3 mm, three grades",
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
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
