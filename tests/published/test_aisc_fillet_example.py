"""A fillet of a design example."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="Design Examples, example J.1",
    issuer="American Institute of Steel Construction",
    edition="14.0",
    where="pages J-2 and J-3",
    standing="standard",
)

PRINTED = (
    Printed(
        "welds group",
        "3/16 in of E70, kip/in",
        "5.57",
        lambda: 0.6 * 70 * welds.throat(Mm(25.4 * 3 / 16)) / 25.4,
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
