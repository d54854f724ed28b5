"""What a negative test leaves, an exercise."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import leaks
from witnessmark.ground.units import Ratio

SOURCE = Cited(
    title="Bayes exercise with a false negative and a false positive rate",
    where="prior 0.7, misses 0.025, cries wolf 0.015",
    standing="handbook",
)

PRINTED = (
    Printed(
        "leaks order",
        "chance after nothing was shown",
        "0.055910543",
        lambda: leaks.chance_after(Ratio(0.7), Ratio(0.025), Ratio(0.015), shows=False),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
