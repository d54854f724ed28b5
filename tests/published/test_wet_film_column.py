"""A painting adviser's column."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Micrometre, Percent

SOURCE = Cited(
    title="Questions and answers on wet film",
    where="October 2003: 1.5 mil dry at 42 %",
    edition="October 2003",
    standing="handbook",
)

PRINTED = (
    Printed(
        "paint quantity",
        "wet film for 1.5 mil dry at 42 %",
        "3.57",
        lambda: paint.wet_film(Micrometre(38.1), Percent(42), Percent(0)) / 25.4,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
