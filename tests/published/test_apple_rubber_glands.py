"""Squeeze by section as a ring maker's gland tables print it, from its own sections and depths.

The tables give section with tolerance, least and greatest depth, and the least and greatest squeeze in
whole per cent. Ours: the free section at its tolerance against the depth at the other end.
"""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.orings import squeeze
from witnessmark.ground.units import Mm

SOURCE = Cited(
    issuer="Apple Rubber",
    title="Seal design guide: gland tables, in mm",
    where="static radial, static face, dynamic; squeeze in per cent",
    standing="maker",
    seen="excerpt",
)


def least(section: float, tolerance: float, deepest: float) -> float:
    """The thinnest ring in the deepest groove, %."""
    return squeeze(Mm(section - tolerance), Mm(deepest))


def most(section: float, tolerance: float, shallowest: float) -> float:
    """The thickest ring in the shallowest groove, %."""
    return squeeze(Mm(section + tolerance), Mm(shallowest))


PRINTED = (
    Printed("orings check", "static radial 1.02, least", "19", lambda: least(1.02, 0.08, 0.76)),
    Printed("orings check", "static radial 1.02, most", "37", lambda: most(1.02, 0.08, 0.69)),
    Printed("orings check", "static radial 2.62, most", "25", lambda: most(2.62, 0.08, 2.03)),
    Printed("orings check", "static radial 3.53, least", "14", lambda: least(3.53, 0.10, 2.95)),
    Printed("orings check", "static radial 5.33, most", "21", lambda: most(5.33, 0.13, 4.32)),
    Printed("orings check", "static face 3.53, most", "30", lambda: most(3.53, 0.10, 2.54)),
    Printed("orings check", "static face 6.99, most", "27", lambda: most(6.99, 0.15, 5.21)),
    Printed("orings check", "dynamic 2.62, most", "18", lambda: most(2.62, 0.08, 2.21)),
    Printed("orings check", "dynamic 3.53, least", "9", lambda: least(3.53, 0.10, 3.12)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
