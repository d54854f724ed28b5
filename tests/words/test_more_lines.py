"""Lines by other hands, each list in its own voice: how many are read rightly, how few wrongly and sure.

The floors are what the reader reached; they may only be raised. Lists: a chatty, a2 formal, b terse (one cold
thumb), b2 young (little trade language), c and d in the plain voice of the practice lines.
"""

from __future__ import annotations

import pytest

from tests.words.judging import faults, read, rows

# list: right at least, sure and wrong at most
REACHED = {
    "a": (80, 3),
    "a2": (28, 0),
    "b": (49, 15),
    "b2": (39, 1),
    "c": (140, 6),
    "d": (148, 5),
}


@pytest.mark.parametrize("name", REACHED)
def test_a_list_by_another_hand(name: str) -> None:
    right = wrong_and_sure = 0
    for row in rows(f"more_lines/{name}.json"):
        understood = read(row)
        if not faults(row, understood.best):
            right += 1
        elif understood.best.sure and understood.ask is None:
            wrong_and_sure += 1
    right_at_least, wrong_at_most = REACHED[name]
    assert right >= right_at_least
    assert wrong_and_sure <= wrong_at_most
