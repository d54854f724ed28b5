"""Parallel fillets of a textbook."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Strength of Materials, B. K. Sarkar",
    where="problem 17.3, page 380, as a collection of worked code prints it",
    standing="handbook",
)

PRINTED = (
    Printed(
        "welds group",
        "each of two 10 mm fillets for 50 kN at 60 MPa, and 12.5 mm, cm",
        "7.143",
        lambda: (50_000 / (2 * welds.throat(Mm(10)) * 60) + 12.5) / 10,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
