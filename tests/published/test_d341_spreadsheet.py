"""A spreadsheet for the viscosity line."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.ground.units import Celsius, CentiStoke, Ratio

SOURCE = Cited(
    title="Viscosity and temperature calculator after ASTM D341",
    where="32 cSt at 40 °C and 5.4 cSt at 100 °C",
    standing="handbook",
)


A, B = oils.viscosity_line(CentiStoke(32), Celsius(40), CentiStoke(5.4), Celsius(100))

PRINTED = (
    Printed(
        "oils viscosity",
        "at 80 °C, cSt",
        "8.5",
        lambda: oils.viscosity_at(Ratio(A), Ratio(B), Celsius(80)),
    ),
)

BESIDE = (
    Printed("oils viscosity", "constant A", "9.5259", lambda: A, "it takes 273 for 273.15; ours is 9.53"),
    Printed("oils viscosity", "constant B", "3.7449", lambda: B, "it takes 273 for 273.15; ours is 3.75"),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
