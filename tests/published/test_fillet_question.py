"""A question on a transverse fillet with a wrong throat."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Two plates joined by a transverse fillet, a multiple-choice question",
    where="5 kN, 10 mm, 150 MPa, factor 3",
    standing="common practice",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "welds group",
        "length for 5 kN, mm",
        "20.0",
        lambda: 5000 / (welds.throat(Mm(10)) * 150 / 3),
        "takes half the square of the leg as a throat",
    ),
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
