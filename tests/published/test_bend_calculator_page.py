"""A bend worked beside a calculator."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import sheet
from witnessmark.ground.units import Degree, Mm, Ratio

SOURCE = Cited(
    title="Bend allowance calculator",
    where="its example check: 1 mm, radius 2 mm, 90°, K 0.33",
    standing="handbook",
)

PRINTED = (
    Printed(
        "sheet bend",
        "allowance, mm",
        "3.660",
        lambda: sheet.bend_allowance(Mm(1), Mm(2), Degree(90), Ratio(0.33)),
    ),
    Printed(
        "sheet bend",
        "deduction, mm",
        "2.340",
        lambda: sheet.bend_deduction(Mm(1), Mm(2), Degree(90), Ratio(0.33)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
