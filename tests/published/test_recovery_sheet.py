"""A load sheet of a recovery trader."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="Vehicle recovery load calculation sheet",
    issuer="a recovery trader",
    where="example 1",
    standing="common practice",
)


def part(slope: float, ground: float) -> float:
    """Ours, as a part of the weight."""
    return loads.recovery_force(Kilogram(1000), Degree(slope), Ratio(ground)) / (1000 * loads.GRAVITY)


PRINTED = (
    Printed(
        "loads towing",
        "20 000 lb: mire 1.00, slope 0.17, damage 0.67, lb",
        "36800",
        lambda: 20_000 * part(math.degrees(math.asin(0.17)), 1.67),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
