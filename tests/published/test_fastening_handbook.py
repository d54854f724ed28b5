"""One preload under five conditions of friction, from a handbook of fastening."""

from __future__ import annotations

from tests.published.imperial import in_pound_inches, inches, pounds
from tests.published.printed import Cited, Printed
from witnessmark.bench.bolts import tightening_torque
from witnessmark.ground.units import Ratio

SOURCE = Cited(
    title="Mechanical Fastening, Joining, and Assembly",
    where="page 85, No. 10 screw at 1275 lbf",
    standing="handbook",
    seen="excerpt",
)


def number_ten(factor: float) -> float:
    """Torque in lbf in for 1275 lbf on 0.190 in."""
    return in_pound_inches(tightening_torque(pounds(1275), inches(0.190), Ratio(factor)))


PRINTED = (
    Printed("bolts tighten", "No. 10 at K 0.30, lbf in", "72.7", lambda: number_ten(0.30)),
    Printed("bolts tighten", "No. 10 at K 0.25, lbf in", "60.6", lambda: number_ten(0.25)),
    Printed("bolts tighten", "No. 10 at K 0.20, lbf in", "48.5", lambda: number_ten(0.20)),
    Printed("bolts tighten", "No. 10 at K 0.15, lbf in", "36.3", lambda: number_ten(0.15)),
    Printed("bolts tighten", "No. 10 at K 0.10, lbf in", "24.2", lambda: number_ten(0.10)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
