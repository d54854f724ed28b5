"""One composition, a reference page."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import steel
from witnessmark.ground.units import Percent

SOURCE = Cited(
    title="Carbon equivalent calculator",
    where="its worked example",
    standing="handbook",
)


def ours(*parts: float) -> float:
    """C, Mn, Cr, Mo, V, Ni, Cu."""
    return steel.carbon_equivalent(*(Percent(part) for part in parts))


PRINTED = (
    Printed(
        "steel equivalent",
        "C 0.18 Mn 1.2 Cr 0.2 Mo 0.05 Ni 0.1 Cu 0.15",
        "0.4467",
        lambda: ours(0.18, 1.2, 0.2, 0.05, 0, 0.1, 0.15),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
