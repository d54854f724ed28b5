"""Fasteners in a machine design textbook."""

from __future__ import annotations

from tests.published.imperial import LBF, in_pound_inches, inches, pounds
from tests.published.printed import Cited, Printed
from witnessmark.bench.bolts import tightening_torque, turn_angle
from witnessmark.ground.units import MegaPascal, Mm2, Ratio

SOURCE = Cited(
    issuer="Wentzell",
    title="Machine Design",
    where="examples 6.1, 6.2 and 6.4, pages 120, 121 and 124",
    standing="handbook",
    seen="excerpt",
)

MEGAPOUND_PER_INCH = LBF / 25.4**2

PRINTED = (
    Printed(
        "bolts tighten",
        "3/4-10 grade 5, 0.85 of 85 000 psi on 0.334 in², K 0.2, lbf in",
        "3619.73",
        lambda: in_pound_inches(tightening_torque(pounds(0.85 * 0.334 * 85_000), inches(0.75), Ratio(0.2))),
    ),
    Printed(
        "bolts tighten",
        "1 1/4 in stud, 0.9 of 120 000 psi on 1.073 in², K 0.15, lbf in",
        "21728.25",
        lambda: in_pound_inches(tightening_torque(pounds(0.9 * 1.073 * 120_000), inches(1.25), Ratio(0.15))),
    ),
    Printed(
        "bolts turn",
        "3/4-10 over 5 in to 0.85 of 85 000 psi, 30 million psi, degrees",
        "43.35",
        lambda: turn_angle(
            pounds(0.85 * 0.334 * 85_000),
            inches(5),
            MegaPascal(30e6 * MEGAPOUND_PER_INCH),
            Mm2(0.334 * 25.4**2),
            inches(0.1),
        ),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
