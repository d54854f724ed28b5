"""The comparison force of a towbar, whose example does not follow."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import loads
from witnessmark.ground.units import Kilogram

SOURCE = Cited(
    title="Towbars and type approval",
    issuer="a trailer association",
    where="D for 3500 and 3500 kg",
    standing="handbook",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "loads towing",
        "D for 3500 and 3500 kg, kN",
        "17.7",
        lambda: loads.coupling_d(Kilogram(3500), Kilogram(3500)) / 1000,
        "its own formula gives 17.2",
    ),
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
