"""A table of ethylene glycol by volume."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.coolant import answer_freeze

SOURCE = Cited(
    title="Freezing point of ethylene glycol by volume, an engineering table",
    where="20 to 50 %",
    standing="handbook",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "coolant freeze",
        "30 % by volume, °C",
        "-16",
        lambda: answer_freeze(glycol=30, kind="ethylene", by="volume").band("temperature").value,
        "agrees here, and not beside it",
    ),
)

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
)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
