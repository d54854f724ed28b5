"""Two compositions, a trade calculator."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import steel
from witnessmark.ground.units import Percent

SOURCE = Cited(
    title="Carbon equivalent and weldability",
    issuer="a trade calculator",
    where="its two examples",
    standing="handbook",
)


def ours(*parts: float) -> float:
    """C, Mn, Cr, Mo, V, Ni, Cu."""
    return steel.carbon_equivalent(*(Percent(part) for part in parts))


PRINTED = (
    Printed(
        "steel equivalent",
        "C 0.15 Mn 1.2 Cr 0.10 Mo 0.05 V 0.02 Ni 0.50 Cu 0.20",
        "0.431",
        lambda: ours(0.15, 1.2, 0.10, 0.05, 0.02, 0.50, 0.20),
    ),
    Printed(
        "steel equivalent",
        "C 0.40 Mn 0.85 Cr 0.95 Mo 0.20",
        "0.772",
        lambda: ours(0.40, 0.85, 0.95, 0.20, 0, 0, 0),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
