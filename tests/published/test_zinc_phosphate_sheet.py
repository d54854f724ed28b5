"""Product sheets of two-pack primers: spreading, films, and times that fit no simple rule."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Celsius, Micrometre, Percent

SOURCE = Cited(
    title="Epoxy zinc phosphate primer; protective epoxy primer",
    issuer="a paint maker",
    where="53 % solids, 50 to 62 µm dry; times at 10, 20 and 30 °C",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint quantity",
        "spreading at 50 µm, m²/L",
        "10.6",
        lambda: paint.spreading_rate(Micrometre(50), Percent(53)),
    ),
    Printed(
        "paint quantity",
        "spreading at 62 µm, m²/L",
        "8.5",
        lambda: paint.spreading_rate(Micrometre(62), Percent(53)),
    ),
    Printed(
        "paint quantity",
        "wet film for 50 µm",
        "94",
        lambda: paint.wet_film(Micrometre(50), Percent(53), Percent(0)),
    ),
    Printed(
        "paint cure",
        "pot life at 10 °C from 24 h at 20 °C, in h",
        "48",
        lambda: paint.cure_doubling(Celsius(10), (20, 24), 2),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "paint quantity",
        "wet film for 62 µm",
        "118",
        lambda: paint.wet_film(Micrometre(62), Percent(53), Percent(0)),
        "62 / 0.53 is 117",
    ),
    Printed(
        "paint cure",
        "pot life at 30 °C from 24 h at 20 °C, in h",
        "8",
        lambda: paint.cure_doubling(Celsius(30), (20, 24), 2),
        "a real sheet: three times, not twice",
    ),
    Printed(
        "paint cure",
        "pot life at 7 °C from 24 h at 20 °C, in h",
        "48",
        lambda: paint.cure_doubling(Celsius(7), (20, 24), 2),
        "a real sheet: 1.7 times for each 10 °C",
    ),
    Printed(
        "paint cure",
        "full cure at 10 °C from 5 days at 20 °C",
        "7",
        lambda: paint.cure_doubling(Celsius(10), (20, 5), 2),
        "a real sheet: 1.4 times",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
