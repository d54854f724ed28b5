"""A course on coverage."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Micrometre, Percent

SOURCE = Cited(
    title="Coating calculations, course notes",
    where="coverage of a 35 % coating at 2 mil; wet 8 mil thinned",
    standing="handbook",
)

PRINTED = (
    Printed(
        "paint quantity",
        "35 % at 2 mil, ft²/gal",
        "281",
        lambda: paint.spreading_rate(Micrometre(50.8), Percent(35)) * 10.76391 * 3.785412,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "paint quantity",
        "8 mil wet of a 35 % coating thinned 10 %, dry mil",
        "2.8",
        lambda: 8 / paint.wet_film(Micrometre(1), Percent(35), Percent(10)),
        "the text is garbled; 2.8 is the unthinned film",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
