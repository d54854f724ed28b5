"""What a positive test is worth when the thing is rare."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import leaks
from witnessmark.ground.units import Ratio

SOURCE = Cited(
    title="Bayes' theorem and screening",
    issuer="a university biology department",
    where="0.5 %, 99 % both ways",
    standing="handbook",
)

PRINTED = (
    Printed(
        "leaks order",
        "chance after it was shown, %",
        "33.2",
        lambda: 100 * leaks.chance_after(Ratio(0.005), Ratio(0.01), Ratio(0.01), shows=True),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
