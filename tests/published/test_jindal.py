"""Threaded fasteners in a machine design textbook, as worked in an open companion to it."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.bolts import nut_factor, tightening_torque
from witnessmark.bench.threads import diameter_at, stress_area
from witnessmark.ground.units import Degree, Mm, Newton, Ratio

SOURCE = Cited(
    issuer="Jindal",
    title="Machine Design",
    where="examples 9-1, 9-3, 9-5 and 9-6, pages 266 to 269",
    standing="handbook",
    seen="page",
)

SIXTY_PITCH, SIXTY_ROOT = Ratio(0.649519), Ratio(1.226869)


def area(diameter: float, pitch: float) -> float:
    """Stress area of a metric thread."""
    return stress_area(
        diameter_at(Mm(diameter), Mm(pitch), SIXTY_PITCH), diameter_at(Mm(diameter), Mm(pitch), SIXTY_ROOT)
    )


PRINTED = (
    Printed("threads size", "stress area of M16 x 2, mm²", "156.7", lambda: area(16, 2)),
    Printed("threads size", "stress area of M16 x 1.5, mm²", "167.2", lambda: area(16, 1.5)),
    Printed(
        "bolts tighten",
        "M14, three quarters of 650 MPa on 115 mm², K 0.2, N·m",
        "156.97",
        lambda: tightening_torque(Newton(0.75 * 650 * 115), Mm(14), Ratio(0.2)),
    ),
    Printed(
        "bolts tighten",
        "M20 at 120 kN, K 0.18, N·m",
        "432",
        lambda: tightening_torque(Newton(120_000), Mm(20), Ratio(0.18)),
    ),
)

BESIDE = (
    Printed(
        "bolts nut_factor",
        "M18, friction 0.15 and 0.13, mean collar 1.25 d",
        "0.18343",
        lambda: nut_factor(Mm(18), Mm(2.5), Mm(16.4665), Degree(60), Ratio(0.15), Ratio(0.13), Mm(1.25 * 18)),
        "the book keeps the wedge exact, ours is the linear form of VDI 2230: 0.4 % lower",
    ),
)

NOT_REPRODUCED = (
    Printed(
        "bolts check",
        "M20 at 120 kN on 245 mm², MPa",
        "489.0",
        lambda: 120_000 / 245,
        "printed from a whole-number division; its own numbers give 489.8",
    ),
)
