"""A gear on a shaft, worked on a calculator page for three interferences."""

from __future__ import annotations

from tests.published.press_fits import STEEL, force, hoop, pressure
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Press fit calculator: worked example and table",
    issuer="aionlinecalculator.com",
    where="50 mm shaft, 80 mm hub, 40 mm long, friction 0.12",
    edition="reviewed 19 June 2026",
    standing="common practice",
    seen="page",
)

PRINTED = (
    Printed("fits press", "50 in 80 mm, 20 µm, MPa", "25.6", lambda: pressure(50, 80, 0.02, STEEL)),
    Printed("fits press", "50 in 80 mm, 40 µm, MPa", "51.2", lambda: pressure(50, 80, 0.04, STEEL)),
    Printed("fits press", "50 in 80 mm, 60 µm, MPa", "76.8", lambda: pressure(50, 80, 0.06, STEEL)),
    Printed("fits press", "50 in 80 mm, 40 µm, hoop stress, MPa", "117", lambda: hoop(50, 80, 0.04, STEEL)),
    Printed(
        "fits press",
        "50 in 80 mm, 40 µm, 40 mm at 0.12, kN",
        "38.6",
        lambda: force(50, 80, 0.04, STEEL, 40, 0.12) / 1000,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
