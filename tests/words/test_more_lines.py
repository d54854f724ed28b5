"""Lines by other hands, each list in its own voice: how many are read rightly, how few wrongly and sure.

The likelihood is learned from these very lines, so the floors hold what was learned; what it makes of one
left out is printed by scripts/learn_likelihood.py --check. They may only be raised. Lists: a chatty,
a2 formal, b terse (one cold thumb), b2 young (little trade language), i clipped, k dialect, the others plain.
"""

from __future__ import annotations

import pytest

from tests.words.judging import faults, read
from tests.words.more import LISTS, more_rows

# list: right at least, sure and wrong at most
REACHED = {
    "a": (121, 1),
    "a2": (45, 0),
    "b": (110, 1),
    "b2": (48, 0),
    "c": (175, 0),
    "d": (164, 0),
    "e": (159, 0),
    "f": (161, 0),
    "g": (163, 0),
    "h": (164, 1),
    "i": (149, 1),
    "j": (190, 0),
    "k": (181, 2),
    "l": (178, 1),
}


def test_every_list_has_its_floor() -> None:
    assert tuple(REACHED) == LISTS


@pytest.mark.parametrize("name", REACHED)
def test_a_list_by_another_hand(name: str) -> None:
    right = wrong_and_sure = 0
    for row in more_rows(name):
        understood = read(row)
        if not faults(row, understood.best):
            right += 1
        elif understood.best.sure and understood.ask is None:
            wrong_and_sure += 1
    right_at_least, wrong_at_most = REACHED[name]
    assert right >= right_at_least
    assert wrong_and_sure <= wrong_at_most
