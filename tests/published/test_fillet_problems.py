"""Fillets pulled through their middle: a tutorial, a textbook, a design example."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import weld_group, welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Tutorial five, question 3; Strength of Materials, B. K. Sarkar, problem 17.3; AISC design "
    "example J.1",
    where="two unequal fillets; two like fillets; throat of 3/16 in",
    standing="handbook",
)


UNEQUAL = weld_group.group_of([((0, 0), (80, 0)), ((0, 50), (40, 50))])

PRINTED = (
    Printed(
        "welds group",
        "25 kN on 80 and 40 mm of 7 mm fillet, MPa",
        "42.08969",
        lambda: 25_000 / UNEQUAL.length / welds.throat(Mm(7)),
    ),
    Printed(
        "welds group",
        "length of each of two 10 mm fillets for 50 kN at 60 MPa, and 12.5 mm, cm",
        "7.143",
        lambda: (50_000 / (2 * welds.throat(Mm(10)) * 60) + 12.5) / 10,
    ),
    Printed(
        "welds group",
        "3/16 in of E70, kip/in",
        "5.57",
        lambda: 0.6 * 70 * welds.throat(Mm(25.4 * 3 / 16)) / 25.4,
    ),
)

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


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
