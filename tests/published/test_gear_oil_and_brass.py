"""GL-5 or GL-4 where brass synchronisers run in the oil: what the trade prints."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.oil_cases import answer_suits

SOURCE = Cited(
    issuer="a journal of lubrication, and a dealer in gearboxes",
    title="Gear oil applications: may GL-5 stand in for transmission fluid; which gear oil for a gearbox",
    standing="common practice",
)

OPINION = "our table was written from opinions such as this one: it agrees, and proves nothing"


def verdict(oil: str, metal: str) -> str:
    """What the question answers."""
    return str(answer_suits(api_class=oil, metals=(metal,)).verdict)


PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed("oils suits", "GL-5 on brass synchronisers", "no", lambda: verdict("GL-5", "brass"), OPINION),
    Printed("oils suits", "GL-4 on brass synchronisers", "fits", lambda: verdict("GL-4", "brass"), OPINION),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", BESIDE, ids=name_of)
def test_ours_says_what_the_trade_says(one: Printed) -> None:
    assert agrees(one), one.ours()
