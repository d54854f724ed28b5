"""Two bores compared by people who build cars."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import brakes
from witnessmark.ground.units import Mm, Newton, Ratio

SOURCE = Cited(
    title="Brake line pressure, a thread",
    where="75 lb at 5 to 1 on 5/8 in and 0.7 in",
    standing="common practice",
)


def psi(pounds: float, ratio: float, inches: float, boost: float = 1.0) -> float:
    """Ours, psi."""
    found = brakes.line_pressure(Newton(pounds * 4.4482216), Ratio(ratio), Mm(inches * 25.4), Ratio(boost))
    return found / 0.006894757


PRINTED = (Printed("brakes line", "75 lbf, 5 to 1, 0.7 in, psi", "974", lambda: psi(75, 5, 0.7)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "brakes line",
        "75 lbf, 5 to 1, 5/8 in, psi",
        "1221",
        lambda: psi(75, 5, 0.625),
        "375 / 0.3068 is 1222",
    ),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
