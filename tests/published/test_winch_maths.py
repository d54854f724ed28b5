"""Winch maths of a driving school."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="A little more winch math",
    where="5700 lb on hard ground, up slopes and in mud",
    standing="common practice",
)


def part(slope: float, ground: float) -> float:
    """Ours, as a part of the weight."""
    return loads.recovery_force(Kilogram(1000), Degree(slope), Ratio(ground)) / (1000 * loads.GRAVITY)


PRINTED = (
    Printed("loads towing", "5700 lb on hard ground, lb", "285", lambda: 5700 * part(0, 0.05)),
    Printed("loads towing", "5700 lb up 30°, lb", "2850", lambda: 5700 * part(30, 0)),
    Printed("loads towing", "5700 lb body deep, lb", "8550", lambda: 5700 * part(0, 1.5)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "loads towing",
        "5700 lb up 15°, lb",
        "1425",
        lambda: 5700 * part(15, 0),
        "a quarter by rule; the sine gives 1475",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
