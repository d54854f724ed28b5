"""Toe as a length and as an angle."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import steering
from witnessmark.ground.units import Degree, Mm

SOURCE = Cited(
    title="How to check toe; convert degrees to mm, wheel alignment",
    where="24 in at 0.15°; 4 mm at 727.7 mm; a rule in minutes",
    standing="common practice",
)

PRINTED = (
    Printed(
        "steering toe",
        "0.15° at 24 in, in",
        "0.062832",
        lambda: steering.toe_length(Degree(0.15), Mm(24 * 25.4)) / 25.4,
    ),
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
