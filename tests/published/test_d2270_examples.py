"""The worked examples of the standard on viscosity index."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.oils import answer_index, limits_at40

SOURCE = Cited(
    title="Practice for calculating viscosity index",
    issuer="ASTM International",
    where="D2270: 5.1.4, 6.1.4 (1) and (2); the last answer as an open chemistry library keeps it",
    edition="93 and 10",
    standing="standard",
)

PRINTED = (
    Printed(
        "oils index",
        "73.30 and 8.86, before rounding",
        "92.43",
        lambda: answer_index(at40=73.30, at100=8.86).band("index").value,
    ),
    Printed(
        "oils index",
        "22.83 and 5.05, rounded",
        "156",
        lambda: answer_index(at40=22.83, at100=5.05).band("index").value,
    ),
    Printed(
        "oils index",
        "53.47 and 7.80",
        "111",
        lambda: answer_index(at40=53.47, at100=7.80).band("index").value,
    ),
)

BESIDE = (
    Printed(
        "oils index",
        "22.83 and 5.05, before rounding",
        "156.37",
        lambda: answer_index(at40=22.83, at100=5.05).band("index").value,
        "it rounds the power first; ours is 156.42",
    ),
    Printed(
        "oils index",
        "L at 8.86 cSt",
        "119.94",
        lambda: limits_at40(8.86)[0],
        "read between rows of its own table",
    ),
    Printed(
        "oils index",
        "H at 8.86 cSt",
        "69.48",
        lambda: limits_at40(8.86)[1],
        "read between rows of its own table",
    ),
    Printed(
        "oils index",
        "H at 5.05 cSt",
        "28.97",
        lambda: limits_at40(5.05)[1],
        "read between rows of its own table",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
