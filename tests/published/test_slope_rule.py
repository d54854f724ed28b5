"""A rule for slopes, a maker of winches."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="How slope angle affects winching force",
    issuer="a maker of winches",
    where="5000 lb at 30°; a quarter for each 15°",
    standing="maker",
)


def part(slope: float, ground: float) -> float:
    """Ours, as a part of the weight."""
    return loads.recovery_force(Kilogram(1000), Degree(slope), Ratio(ground)) / (1000 * loads.GRAVITY)


PRINTED = (Printed("loads towing", "5000 lb up 30°, lb", "2500", lambda: 5000 * part(30, 0)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed("loads towing", "45° by rule, %", "75", lambda: 100 * part(45, 0), "the sine gives 70.7"),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
