"""Thick and compound cylinders in a textbook of strength of materials."""

from __future__ import annotations

from tests.published.press_fits import interference_for
from tests.published.printed import Cited, Printed
from witnessmark.bench.fits import hub_hoop_stress
from witnessmark.ground.units import MegaPascal, Mm

SOURCE = Cited(
    issuer="Bhavikatti",
    title="Strength of Materials",
    where="examples 8.8.10 and 8.8.16, pages 337 and 348",
    standing="handbook",
    seen="page",
)

PRINTED = (
    Printed(
        "fits press",
        "cylinder 400 by 600 mm at 80 MPa, greatest hoop stress, MPa",
        "208.0",
        lambda: hub_hoop_stress(MegaPascal(80), Mm(400), Mm(600)),
    ),
    Printed(
        "fits press",
        "radii 100, 125, 150 mm, 30 MPa between, 200 000 MPa: allowance on radius, mm",
        "0.189",
        lambda: interference_for(30, 250, 300, 200_000, bore=200) / 2,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
