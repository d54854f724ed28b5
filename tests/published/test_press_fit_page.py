"""A pin pressed into a hub, the example of a calculator page."""

from __future__ import annotations

from tests.published.press_fits import STEEL, force, hoop, pressure
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Press fit calculator, example", issuer="metricmech.com", where="25 mm pin, 50 mm hub, 20 µm",
    standing="common practice",
)  # fmt: skip

PRINTED = (
    Printed("fits press", "25 in 50 mm, 20 µm, MPa", "63", lambda: pressure(25, 50, 0.020, STEEL)),
    Printed("fits press", "25 in 50 mm, hoop stress, MPa", "105", lambda: hoop(25, 50, 0.020, STEEL)),
)

BESIDE = (
    Printed(
        "fits press", "25 in 50 mm over 20 mm at 0.1, N", "9900",
        lambda: force(25, 50, 0.020, STEEL, 20, 0.1),
        "printed to two figures: ours is 9896",
    ),
)  # fmt: skip

NOT_REPRODUCED: tuple[Printed, ...] = ()
