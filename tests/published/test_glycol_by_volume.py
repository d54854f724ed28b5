"""A table of ethylene glycol by volume, and one of an engine maker."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.coolant import answer_freeze

SOURCE = Cited(
    title="Freezing point of ethylene glycol by volume; engine manual, page 48",
    where="20, 30, 40 and 50 % by volume; 28.4 %, basis not said",
    standing="handbook",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "coolant freeze",
        "20 % by volume, °C",
        "-8",
        lambda: answer_freeze(glycol=20, kind="ethylene", by="volume").band("temperature").value,
        "by volume, with shrinking on mixing left out, the figures by mass give 1 to 3 °C more",
    ),
    Printed(
        "coolant freeze",
        "40 % by volume, °C",
        "-25",
        lambda: answer_freeze(glycol=40, kind="ethylene", by="volume").band("temperature").value,
        "by volume, with shrinking on mixing left out, the figures by mass give 1 to 3 °C more",
    ),
    Printed(
        "coolant freeze",
        "50 % by volume, °C",
        "-37",
        lambda: answer_freeze(glycol=50, kind="ethylene", by="volume").band("temperature").value,
        "by volume, with shrinking on mixing left out, the figures by mass give 1 to 3 °C more",
    ),
    Printed(
        "coolant freeze",
        "28.4 %, °C",
        "-10",
        lambda: answer_freeze(glycol=28.4, kind="ethylene").band("temperature").value,
        "the manual does not say what its % are",
    ),
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
