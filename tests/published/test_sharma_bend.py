"""A developed length of a textbook."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import sheet
from witnessmark.ground.units import Degree, Mm, Ratio

SOURCE = Cited(
    title="A Textbook of Production Engineering, P. C. Sharma",
    where="example 2.10, page 138",
    standing="handbook",
)

PRINTED = (
    Printed(
        "sheet bend",
        "76 and 115 mm, t 2.3, r 0.9, neutral line at a third, mm",
        "187.22",
        lambda: sheet.flat_length(
            [Mm(76), Mm(115)], sheet.bend_deduction(Mm(2.3), Mm(0.9), Degree(90), Ratio(1 / 3))
        ),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
