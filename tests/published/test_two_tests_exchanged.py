"""Two perfect tests in either order, with the proof by exchange."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import leaks
from witnessmark.ground.units import Ratio

SOURCE = Cited(
    title="Order of tests that minimises the expected cost",
    where="p 0.8 and 0.2, cost 3 and 2",
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
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
