"""A textbook problem on a hydraulic press."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.ground.units import Litre, MegaPascal

SOURCE = Cited(
    title="Hydraulic press containing oil, a textbook problem",
    where="250 L, 16 MPa, 5 GPa",
    standing="handbook",
)

PRINTED = (
    Printed(
        "oils fill",
        "250 L at 16 MPa, L lost",
        "0.80",
        lambda: oils.squeezed(Litre(250), MegaPascal(16), MegaPascal(5000)),
    ),
    Printed(
        "oils fill",
        "part lost, %",
        "0.32",
        lambda: oils.squeezed(Litre(100), MegaPascal(16), MegaPascal(5000)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
