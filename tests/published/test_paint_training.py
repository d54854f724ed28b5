"""A paint maker's training on films and spreading."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Micrometre, Percent

SOURCE = Cited(
    title="Training: calculations",
    issuer="a paint maker",
    where="slides 4 to 7",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint quantity",
        "wet film for 100 µm dry at 65 %",
        "154",
        lambda: paint.wet_film(Micrometre(100), Percent(65), Percent(0)),
    ),
    Printed(
        "paint quantity",
        "the same with 20 % thinner",
        "185",
        lambda: paint.wet_film(Micrometre(100), Percent(65), Percent(20)),
    ),
    Printed(
        "paint quantity",
        "spreading rate, m²/L",
        "6.5",
        lambda: paint.spreading_rate(Micrometre(100), Percent(65)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
