"""Toe from degrees to inches, a garage."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import steering
from witnessmark.ground.units import Degree, Mm

SOURCE = Cited(
    title="How to check toe",
    issuer="a garage",
    where="0.15° at 24 in",
    standing="common practice",
)

PRINTED = (
    Printed(
        "steering toe",
        "0.15° at 24 in, in",
        "0.062832",
        lambda: steering.toe_length(Degree(0.15), Mm(24 * 25.4)) / 25.4,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
