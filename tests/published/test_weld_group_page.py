"""Two upright welds, worked on a tool maker's page."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import weld_group

SOURCE = Cited(
    title="Weld group, elastic method",
    issuer="a maker of engineering tools",
    where="two lines of 200 mm, 100 mm apart, 50 kN at 150 mm",
    standing="handbook",
)


GROUP = weld_group.group_of([((0, 0), (0, 200)), ((100, 0), (100, 200))])
LOAD = weld_group.load_on(GROUP, (0, -50_000, 0), (200, 100, 0))
FIELD = weld_group.field_at(GROUP, LOAD, 100, 0)

PRINTED = (
    Printed("welds group", "Ix, mm³", "1.333e+6", lambda: GROUP.along_x),
    Printed("welds group", "Iy, mm³", "1.000e+6", lambda: GROUP.along_y),
    Printed("welds group", "J, mm³", "2.333e+6", lambda: GROUP.polar),
    Printed("welds group", "direct, N/mm", "125.00", lambda: 50_000 / GROUP.length),
    Printed("welds group", "by turning, along x", "321.43", lambda: abs(FIELD[0])),
    Printed("welds group", "by turning, along y", "160.71", lambda: abs(FIELD[1]) - 125),
    Printed("welds group", "together", "430.06", lambda: math.hypot(*FIELD)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
