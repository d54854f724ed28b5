"""A boosted pedal, an online tool."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import brakes
from witnessmark.ground.units import Mm, Newton, Ratio

SOURCE = Cited(
    title="Brake line pressure calculator",
    where="110 lb at 5 to 1 on 1 in, boost 1.8",
    edition="April 2026",
    standing="common practice",
)


def psi(pounds: float, ratio: float, inches: float, boost: float = 1.0) -> float:
    """Ours, psi."""
    found = brakes.line_pressure(Newton(pounds * 4.4482216), Ratio(ratio), Mm(inches * 25.4), Ratio(boost))
    return found / 0.006894757


PRINTED = (
    Printed(
        "brakes line",
        "110 lbf, 5 to 1, 1 in, boost 1.8, bar",
        "86.9",
        lambda: psi(110, 5, 1, 1.8) * 0.06894757,
    ),
)

BESIDE = (
    Printed(
        "brakes line",
        "110 lbf, 5 to 1, 1 in, boost 1.8, psi",
        "1261",
        lambda: psi(110, 5, 1, 1.8),
        "its area is rounded to 0.785; ours is 1260.5",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
