"""Which look first, and what a test teaches."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import leaks
from witnessmark.ground.units import Ratio

SOURCE = Cited(
    title="An exchange proof for two tests; a false-negative exercise; Bayes' theorem and screening",
    where="p 0.8 and 0.2, cost 3 and 2; prior 0.7; prior 0.5 %",
    standing="handbook",
)


A = leaks.Suspect(name="a", chance=0.8, minutes=3, finds=1.0)
B = leaks.Suspect(name="b", chance=0.2, minutes=2, finds=1.0)

PRINTED = (
    Printed(
        "leaks order",
        "expected cost, likelier first",
        "3.4",
        lambda: leaks.expected_minutes([A, B], Ratio(0)),
    ),
    Printed(
        "leaks order",
        "expected cost, cheaper first",
        "4.4",
        lambda: leaks.expected_minutes([B, A], Ratio(0)),
    ),
    Printed("leaks order", "which first", "a", lambda: leaks.best_order([B, A])[0].name),
    Printed(
        "leaks order",
        "0.7, misses 0.025, cries wolf 0.015, nothing shown",
        "0.055910543",
        lambda: leaks.chance_after(Ratio(0.7), Ratio(0.025), Ratio(0.015), shows=False),
    ),
    Printed(
        "leaks order",
        "0.5 %, 99 % both ways, shown, %",
        "33.2",
        lambda: 100 * leaks.chance_after(Ratio(0.005), Ratio(0.01), Ratio(0.01), shows=True),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
