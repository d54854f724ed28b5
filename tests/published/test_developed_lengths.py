"""Developed lengths: a textbook, a calculator page, a note."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import sheet
from witnessmark.ground.units import Degree, Mm, Ratio

SOURCE = Cited(
    title="A Textbook of Production Engineering, P. C. Sharma, example 2.10; bend allowance "
    "calculator; a note on 24 gauge",
    where="page 138; its example check; 0.020 in radius",
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
    Printed(
        "sheet bend",
        "allowance, t 1, r 2, K 0.33",
        "3.660",
        lambda: sheet.bend_allowance(Mm(1), Mm(2), Degree(90), Ratio(0.33)),
    ),
    Printed(
        "sheet bend",
        "deduction, t 1, r 2, K 0.33",
        "2.340",
        lambda: sheet.bend_deduction(Mm(1), Mm(2), Degree(90), Ratio(0.33)),
    ),
)

BESIDE = (
    Printed(
        "sheet bend",
        "allowance, t 0.024, r 0.020, K 0.33, in",
        "0.0438558984",
        lambda: sheet.bend_allowance(Mm(0.024 * 25.4), Mm(0.020 * 25.4), Degree(90), Ratio(0.33)) / 25.4,
        "it takes 0.017453 for the degree; ours agrees to six digits",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
