"""A sheet on a thick epoxy."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Micrometre, Percent

SOURCE = Cited(
    title="Wet and dry film of an epoxy",
    where="125 µm dry at 71 %",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint quantity",
        "wet film for 125 µm dry at 71 %",
        "176",
        lambda: paint.wet_film(Micrometre(125), Percent(71), Percent(0)),
    ),
    Printed(
        "paint quantity",
        "spreading rate, m²/L",
        "5.7",
        lambda: paint.spreading_rate(Micrometre(125), Percent(71)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
