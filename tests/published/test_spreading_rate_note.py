"""A note on spreading rates in both systems."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Micrometre, Percent

SOURCE = Cited(
    title="Spreading rate",
    where="its two examples",
    standing="handbook",
)

PRINTED = (
    Printed(
        "paint quantity",
        "65 % at 125 µm, m²/L",
        "5.2",
        lambda: paint.spreading_rate(Micrometre(125), Percent(65)),
    ),
)

BESIDE = (
    Printed(
        "paint quantity",
        "65 % at 5 mil, ft²/gal",
        "208.52",
        lambda: paint.spreading_rate(Micrometre(127), Percent(65)) * 10.76391 * 3.785412,
        "the note rounds 1604.17 to 1604; ours is 208.54",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
