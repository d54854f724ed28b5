"""Solids of thinned paint, a coating supplier."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Percent

SOURCE = Cited(
    title="Volume solids of a coating",
    issuer="an industrial coatings firm",
    where="60 % with one quart in a gallon",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint quantity",
        "60 % with a quart in a gallon",
        "48",
        lambda: paint.solids_thinned(Percent(60), Percent(25)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
