"""A rule of thumb for oil shut in."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench import oils
from witnessmark.ground.units import Celsius, Litre, MegaPascal, PerKelvin

SOURCE = Cited(
    title="Pressure change due to temperature",
    issuer="a fluid power page",
    where="11 bar for each °C",
    standing="common practice",
)


HOT = oils.grown(Litre(1), Celsius(20), Celsius(21), PerKelvin(0.0007))
RIGID = 10 * oils.shut_in_pressure(
    Litre(1), HOT, MegaPascal(1724), Litre(0), Celsius(20), Celsius(21), MegaPascal(0)
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "oils fill",
        "bar for each °C in a rigid case",
        "11",
        lambda: RIGID,
        "a rule for a case that gives; in a rigid one ours is 12.1 with 0.0007 and 1724 MPa",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()
