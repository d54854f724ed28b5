"""A guide to winches."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Degree, Kilogram, Ratio

SOURCE = Cited(
    title="Make yourself a winch genius",
    issuer="an equipment dealer",
    where="drag of 5000 lb on two surfaces",
    standing="common practice",
)


def part(slope: float, ground: float) -> float:
    """Ours, as a part of the weight."""
    return loads.recovery_force(Kilogram(1000), Degree(slope), Ratio(ground)) / (1000 * loads.GRAVITY)


PRINTED = (
    Printed("loads towing", "5000 lb on a road, lb", "200", lambda: 5000 * part(0, 0.04)),
    Printed("loads towing", "5000 lb on packed gravel, lb", "1500", lambda: 5000 * part(0, 0.30)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
