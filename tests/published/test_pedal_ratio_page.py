"""Pedal, bore and pressure, a trade calculator."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import brakes
from witnessmark.ground.units import Mm, Newton, Ratio

SOURCE = Cited(
    title="Brake pedal ratio and line pressure; brake system hydraulic line pressure",
    issuer="a trade calculator",
    where="the quick answers, and the force for 1000 psi",
    standing="common practice",
)


def psi(pounds: float, ratio: float, inches: float, boost: float = 1.0) -> float:
    """Ours, psi."""
    found = brakes.line_pressure(Newton(pounds * 4.4482216), Ratio(ratio), Mm(inches * 25.4), Ratio(boost))
    return found / 0.006894757


PRINTED = (
    Printed("brakes line", "area of 1.125 in, in²", "0.994", lambda: brakes.piston_area(Mm(28.575)) / 645.16),
    Printed("brakes line", "100 lbf, 6 to 1, 1.125 in, psi", "604", lambda: psi(100, 6, 1.125)),
    Printed(
        "brakes line",
        "area of 0.875 in, in²",
        "0.6013",
        lambda: brakes.piston_area(Mm(22.225)) / 645.16,
    ),
    Printed("brakes line", "100 lbf, 6 to 1, 0.875 in, psi", "998", lambda: psi(100, 6, 0.875)),
    Printed("brakes line", "lbf for 1000 psi, 6 to 1, 0.875 in", "100.2", lambda: 1000 / psi(1, 6, 0.875)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "brakes line",
        "lbf for 1000 psi, 5 to 1, 0.875 in",
        "120.2",
        lambda: 1000 / psi(1, 5, 0.875),
        "0.6013 × 1000 / 5 is 120.3",
    ),
    Printed(
        "brakes line",
        "lbf for 1000 psi, 4 to 1, 0.875 in",
        "150.2",
        lambda: 1000 / psi(1, 4, 0.875),
        "0.6013 × 1000 / 4 is 150.3",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
