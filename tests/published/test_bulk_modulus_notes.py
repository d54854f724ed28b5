"""Oil that gives under pressure."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.ground.units import Litre, MegaPascal

SOURCE = Cited(
    title="Hydraulic fluids; a textbook problem on a hydraulic press",
    where="1000 psi at 250 000 psi; 250 L, 16 MPa, 5 GPa",
    standing="handbook",
)

PRINTED = (
    Printed(
        "oils fill",
        "part lost at 1000 psi, %",
        "0.4",
        lambda: oils.squeezed(Litre(100), MegaPascal(6.894757), MegaPascal(1723.689)),
    ),
    Printed(
        "oils fill",
        "250 L at 16 MPa, L lost",
        "0.80",
        lambda: oils.squeezed(Litre(250), MegaPascal(16), MegaPascal(5000)),
    ),
    Printed(
        "oils fill",
        "the same in %",
        "0.32",
        lambda: oils.squeezed(Litre(100), MegaPascal(16), MegaPascal(5000)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
