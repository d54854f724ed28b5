"""The rule of two for pot life, worked by a paint maker."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import paint
from witnessmark.ground.units import Celsius

SOURCE = Cited(
    title="Pot life and temperature",
    issuer="a paint maker",
    where="4 h at 23 °C",
    standing="maker",
)

PRINTED = (
    Printed(
        "paint cure",
        "pot life at 13 °C from 4 h at 23 °C, in h",
        "8",
        lambda: paint.cure_doubling(Celsius(13), (23, 4), 2),
    ),
    Printed(
        "paint cure",
        "pot life at 33 °C from 4 h at 23 °C, in h",
        "2",
        lambda: paint.cure_doubling(Celsius(33), (23, 4), 2),
    ),
    Printed(
        "paint cure",
        "pot life at 43 °C from 4 h at 23 °C, in h",
        "1",
        lambda: paint.cure_doubling(Celsius(43), (23, 4), 2),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
