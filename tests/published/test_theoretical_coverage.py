"""Theoretical and practical coverage, a painter's page."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import M2, Micrometre, Percent

SOURCE = Cited(
    title="What is theoretical and practical coverage",
    where="50 % thinned 10 %, 60 µm, 30 % lost",
    edition="April 2022",
    standing="common practice",
)


THINNED = paint.solids_thinned(Percent(50), Percent(10))
RATE = paint.spreading_rate(Micrometre(60), THINNED)

PRINTED = (Printed("paint quantity", "solids after thinning", "45.45", lambda: THINNED),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "paint quantity",
        "theoretical, m²/L",
        "7.57",
        lambda: RATE,
        "cut off, not rounded: its own figures give 7.576",
    ),
    Printed(
        "paint quantity",
        "practical, m²/L",
        "5.299",
        lambda: 1 / paint.paint_volume(M2(1), RATE, Percent(30)),
        "follows from the cut figure before it",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
