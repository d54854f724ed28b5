"""Coolant strengths of an engine manual."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.coolant import answer_freeze

SOURCE = Cited(
    title="Engine manual",
    issuer="an engine maker",
    where="page 48, table 2",
    standing="maker",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
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
