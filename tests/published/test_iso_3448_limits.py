"""Limits of industrial oil grades, from their middles."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.oils import answer_grade

SOURCE = Cited(
    title="Industrial liquid lubricants, ISO viscosity classification",
    issuer="International Organization for Standardization",
    where="limits as two oil suppliers print them",
    standing="standard",
)


def limit(grade: str, middle: float, end: str) -> float:
    """An end of the grade that a middle viscosity is found in."""
    row = next(r for r in answer_grade(kind="industrial", at40=middle).rows("grades") if r["grade"] == grade)
    return float(row[end] or 0)


PRINTED = (
    Printed("oils grade", "least of VG 2", "1.98", lambda: limit("ISO VG 2", 2.2, "low")),
    Printed("oils grade", "most of VG 2", "2.42", lambda: limit("ISO VG 2", 2.2, "high")),
    Printed("oils grade", "least of VG 5", "4.14", lambda: limit("ISO VG 5", 4.6, "low")),
    Printed("oils grade", "most of VG 5", "5.06", lambda: limit("ISO VG 5", 4.6, "high")),
    Printed("oils grade", "least of VG 46", "41.4", lambda: limit("ISO VG 46", 46.0, "low")),
    Printed("oils grade", "most of VG 46", "50.6", lambda: limit("ISO VG 46", 46.0, "high")),
    Printed("oils grade", "least of VG 220", "198", lambda: limit("ISO VG 220", 220.0, "low")),
    Printed("oils grade", "most of VG 220", "242", lambda: limit("ISO VG 220", 220.0, "high")),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
