"""How much oil gives under pressure, notes of a supplier."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import oils
from witnessmark.ground.units import Litre, MegaPascal

SOURCE = Cited(
    title="Hydraulic fluids",
    issuer="a hydraulics supplier",
    where="bulk modulus: 1000 psi at 250 000 psi",
    standing="handbook",
)

PRINTED = (
    Printed(
        "oils fill",
        "part lost at 1000 psi, %",
        "0.4",
        lambda: oils.squeezed(Litre(100), MegaPascal(6.894757), MegaPascal(1723.689)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
