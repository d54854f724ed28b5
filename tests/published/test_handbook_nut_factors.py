"""Torque coefficients for metric coarse threads, by friction in the thread and under the head."""

from __future__ import annotations

from functools import partial

import pytest

from tests.published.nut_factors import average
from tests.published.printed import Cited, Printed, agrees, name_of

SOURCE = Cited(
    issuer="Industrial Press",
    title="Machinery's Handbook, torque coefficients K for metric hexagon head bolt and nut, coarse threads",
    where="table 3, page 1662, five lines of its ten",
    edition="31st",
    standing="handbook",
)

IN_THREAD = (0.08, 0.10, 0.12, 0.15, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45)
TABLE = {
    0.08: "0.117 0.127 0.138 0.153 0.180 0.206 0.232 0.258 0.285 0.311",
    0.10: "0.130 0.140 0.151 0.167 0.193 0.219 0.245 0.271 0.298 0.324",
    0.12: "0.143 0.153 0.164 0.180 0.206 0.232 0.258 0.284 0.311 0.337",
    0.15: "0.163 0.173 0.184 0.199 0.226 0.252 0.278 0.304 0.330 0.357",
    0.20: "0.195 0.206 0.216 0.232 0.258 0.284 0.311 0.337 0.363 0.389",
}
COUNTED_HEADS, COUNTED_THREADS = (0.08, 0.12, 0.20), (0.08, 0.10, 0.12, 0.15, 0.20)
"""The frictions a person meets; no more than fifteen values of one question count."""
LAST_DIGIT = "one unit of the last digit away: the head sizes behind the average had to be taken from ISO"
NO_ROOM = "agrees; fifteen of this question count already"


def cell(in_thread: float, under_head: float, printed: str, why: str = "") -> Printed:
    """One cell of the table."""
    what = f"{in_thread:g} in the thread, {under_head:g} under the head"
    return Printed("bolts nut_factor", what, printed, partial(average, in_thread, under_head), why)


OFF = ((0.15, 0.08), (0.35, 0.12))
"""Ours lies 0.0005 over: rounded the other way."""
CELLS = tuple(
    (in_thread, under_head, printed)
    for under_head, line in TABLE.items()
    for in_thread, printed in zip(IN_THREAD, line.split(), strict=True)
)
COUNT = tuple(
    one for one in CELLS if one[0] in COUNTED_THREADS and one[1] in COUNTED_HEADS and one[:2] not in OFF
)

PRINTED = tuple(cell(*one) for one in COUNT)

BESIDE = tuple(cell(*one, NO_ROOM) for one in CELLS if one not in COUNT and one[:2] not in OFF)

NOT_REPRODUCED = tuple(cell(*one, LAST_DIGIT) for one in CELLS if one[:2] in OFF)


@pytest.mark.parametrize("one", BESIDE, ids=name_of)
def test_the_others_agree_as_well(one: Printed) -> None:
    assert agrees(one), one.ours()


def test_no_cell_is_further_off_than_one_digit() -> None:
    assert len(CELLS) == 50
    assert max(abs(float(printed) - average(a, b)) for a, b, printed in CELLS) < 0.001
