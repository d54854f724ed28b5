"""Bend deductions measured in a shop, with the K that each gives."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import sheet
from witnessmark.ground.units import Degree, Mm

SOURCE = Cited(
    title="Bend deductions, cold rolled steel",
    issuer="a sheet metal shop",
    where="eight rows, inches",
    standing="measured",
)


def k(thickness: float, radius: float, deduction: float) -> float:
    """Ours, from inches."""
    return sheet.k_from_deduction(Mm(thickness * 25.4), Mm(radius * 25.4), Degree(90), Mm(deduction * 25.4))


PRINTED = (
    Printed("sheet bend", "t 0.036 R 0.03 BD 0.054", "0.546", lambda: k(0.036, 0.03, 0.054)),
    Printed("sheet bend", "t 0.048 R 0.03 BD 0.072", "0.4891", lambda: k(0.048, 0.03, 0.072)),
    Printed("sheet bend", "t 0.06 R 0.03 BD 0.088", "0.4762", lambda: k(0.06, 0.03, 0.088)),
    Printed("sheet bend", "t 0.03 R 0.03 BD 0.047", "0.5491", lambda: k(0.03, 0.03, 0.047)),
    Printed("sheet bend", "t 0.06 R 0.06 BD 0.106", "0.4218", lambda: k(0.06, 0.06, 0.106)),
    Printed("sheet bend", "t 0.048 R 0.06 BD 0.088", "0.4477", lambda: k(0.048, 0.06, 0.088)),
    Printed("sheet bend", "t 0.12 R 0.03 BD 0.18", "0.3866", lambda: k(0.12, 0.03, 0.18)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "sheet bend",
        "t 0.074 R 0.03 BD 0.112",
        "0.4318",
        lambda: k(0.074, 0.03, 0.112),
        "the K printed does not follow from the deduction beside it",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
