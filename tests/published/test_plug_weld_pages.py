"""Least hole for a plug weld in plate, as pages on a structural welding code work it."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.welds import plug_hole
from witnessmark.ground.measures import INCH
from witnessmark.ground.units import Mm

SOURCE = Cited(
    issuer="pages on the American structural welding code",
    title="Plug and slot welds; minimum hole for a plug weld",
    where="plate of 1/2 in and of 5/16 in",
    standing="common practice",
)


def least(inches: float) -> float:
    """Least hole, mm."""
    return plug_hole(Mm(inches * INCH))[0]


PRINTED = (
    Printed("welds plugs", "1/2 in plate: least hole, mm", "21", lambda: least(1 / 2)),
    Printed("welds plugs", "5/16 in plate: least hole, in", "0.625", lambda: least(5 / 16) / INCH),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "welds plugs",
        "5/16 in plate, one and a half times as thick, in",
        "0.469",
        lambda: least(5 / 16) / INCH,
        "the page's rule of thumb stays under the hole that it then names, 5/8 in",
    ),
)


def test_the_hole_grows_with_the_plate() -> None:
    assert least(1 / 2) - least(5 / 16) == (1 / 2 - 5 / 16) * INCH
