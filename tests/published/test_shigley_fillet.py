"""A fillet of a textbook, from a rounded table."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench import welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Shigley's Mechanical Engineering Design, example 9-2",
    edition="9th",
    where="page 492",
    standing="handbook",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "welds group",
        "4 in of 3/8 in fillet at 0.30 of 70 ksi, kip",
        "22.28",
        lambda: 4 * 0.3 * 70 * welds.throat(Mm(25.4 * 3 / 8)) / 25.4,
        "from a rounded table figure; ours is 22.27",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()
