"""The size for a lamp, a chandler."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench import wires
from witnessmark.ground.units import Ampere, Metre, Ratio, Volt

SOURCE = Cited(
    title="Electric wire, choosing the section",
    issuer="a chandler",
    where="25 W at 12 V, 18 m, 0.6 V",
    standing="maker",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "wires size",
        "standard size, mm²",
        "2.5",
        lambda: wires.copper_area(Ampere(2.1), Metre(36), Volt(0.6), Ratio(1)),
        "2.17 mm² of solid copper by ours; of stranded wire our answer takes 4, for 2.5 may lose 0.603 V",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()
