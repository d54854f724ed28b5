"""Two unequal fillets pulled through their middle, a tutorial."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import weld_group, welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Tutorial five, question 3",
    edition="2011",
    where="25 kN on 80 and 40 mm of 7 mm fillet",
    standing="handbook",
)


UNEQUAL = weld_group.group_of([((0, 0), (80, 0)), ((0, 50), (40, 50))])

PRINTED = (
    Printed(
        "welds group",
        "shear on the throat, MPa",
        "42.08969",
        lambda: 25_000 / UNEQUAL.length / welds.throat(Mm(7)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
