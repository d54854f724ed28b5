"""Worked examples that a maker of machine calculators prints beside them."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import brakes, weld_group, welds
from witnessmark.bench.answers.engagement import engagement
from witnessmark.ground.units import Ampere, Mm, MmPerSecond, Newton, Ratio, Volt

SOURCE = Cited(
    title="Welding heat input; weld group; brake line pressure; thread engagement",
    issuer="a maker of machine calculators",
    where="the worked example of each page",
    standing="handbook",
)


HEAT = welds.heat_input(Volt(24), Ampere(180), MmPerSecond(5), Ratio(0.8))
BOX = weld_group.group_of(
    [((0, 0), (100, 0)), ((100, 0), (100, 120)), ((100, 120), (0, 120)), ((0, 120), (0, 0))]
)
LOAD = weld_group.load_on(BOX, (0, -10_000, 0), (150, 60, 0))
MOST = max(weld_group.carried_at(BOX, LOAD, line, end).vector for line in BOX.lines for end in (0, 1))

ALUMINIUM = engagement(thread="M10", grade="8.8", shear_strength=0.6 * 310, tensile_strength=830)

PRINTED = (
    Printed(
        "bolts engagement",
        "M10 with 830 MPa into 310 MPa aluminium, mm",
        "9.4",
        lambda: ALUMINIUM.band("tapped_part_needs").value,
    ),
    Printed("welds heat", "24 V, 180 A, 300 mm/min, 80 %", "0.691", lambda: HEAT),
    Printed("welds heat", "the same in kJ/in", "17.6", lambda: HEAT * 25.4),
    Printed(
        "welds group",
        "10 kN on a box 100 by 120: force over length, N/mm",
        "22.73",
        lambda: 10_000 / BOX.length,
    ),
    Printed("welds group", "the same 100 mm out: greatest, N/mm", "61.11", lambda: MOST),
    Printed("brakes line", "master piston of 25.4 mm, mm²", "506.7", lambda: brakes.piston_area(Mm(25.4))),
    Printed(
        "brakes line",
        "445 N at 6 to 1, bar",
        "52.69",
        lambda: 10 * brakes.line_pressure(Newton(445), Ratio(6), Mm(25.4), Ratio(1)),
    ),
)

BESIDE = (
    Printed(
        "welds group",
        "on the throat of a 6 mm fillet, MPa",
        "14.41",
        lambda: MOST / welds.throat(Mm(6)),
        "it takes 0.707; ours is 14.40",
    ),
    Printed(
        "brakes line",
        "100 lbf at 6 to 1 and 1 in, about, psi",
        "760",
        lambda: brakes.line_pressure(Newton(444.8222), Ratio(6), Mm(25.4), Ratio(1)) / 0.006894757,
        "printed as about; ours is 763.9",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
