"""Toe from millimetres to degrees, gathered answers."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import steering
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Convert degrees to mm, wheel alignment",
    where="4 mm at 727.7 mm; a rule in minutes",
    standing="common practice",
)

PRINTED = (
    Printed(
        "steering toe",
        "4 mm at 727.7 mm, degrees",
        "0.31",
        lambda: steering.toe_angle(Mm(4), Mm(727.7)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "steering toe",
        "1 mm on a 10 in wheel, minutes",
        "10",
        lambda: steering.toe_angle(Mm(1), Mm(254)) * 60,
        "at the rim it is 13.5",
    ),
    Printed(
        "steering toe",
        "1 mm on a 15 in wheel, minutes",
        "8",
        lambda: steering.toe_angle(Mm(1), Mm(381)) * 60,
        "at the rim it is 9.0",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
