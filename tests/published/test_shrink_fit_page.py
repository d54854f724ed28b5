"""A sleeve shrunk on a shaft, the defaults of a simulator page, with its results in words."""

from __future__ import annotations

from tests.published.press_fits import STEEL, force, hoop, pressure
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Shrink fit stress: what the defaults give",
    issuer="novasolver.jp",
    where="100 mm shaft, 150 mm sleeve, 0.1 mm, 50 mm long, friction 0.15",
    standing="common practice",
    seen="page",
)

PRINTED = (
    Printed("fits press", "100 in 150 mm, 0.1 mm, MPa", "58.3", lambda: pressure(100, 150, 0.1, STEEL)),
    Printed("fits press", "100 in 150 mm, hoop stress, MPa", "151.7", lambda: hoop(100, 150, 0.1, STEEL)),
    Printed(
        "fits press",
        "100 in 150 mm over 50 mm at 0.15, torque it holds, kN·m",
        "6.87",
        lambda: force(100, 150, 0.1, STEEL, 50, 0.15) * 0.05 / 1000,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
