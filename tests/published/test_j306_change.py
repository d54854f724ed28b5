"""What the 2005 edition of the gear grades changed."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.oils import answer_grade

SOURCE = Cited(
    title="Automotive gear lubricant viscosity classification, abstract",
    issuer="SAE International",
    where="J306: an oil of 19.5 cSt",
    edition="2005",
    standing="standard",
)

PRINTED = (
    Printed(
        "oils grade",
        "19.5 cSt since 2005",
        "SAE 110",
        lambda: str(answer_grade(kind="gear", at100=19.5, edition="2005").rows("grades")[0]["grade"]),
    ),
    Printed(
        "oils grade",
        "19.5 cSt before 2005",
        "SAE 90",
        lambda: str(answer_grade(kind="gear", at100=19.5, edition="older").rows("grades")[0]["grade"]),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
