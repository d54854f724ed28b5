"""Sixty lines written down before there was a grammar, and not looked at while it was built.

The aim is nine in ten read rightly at first, and none read wrongly without being marked unsure. The reader is
not there yet: the floors below are what it reached, and may only be raised.
"""

from __future__ import annotations

from tests.words.judging import faults, read, rows

RIGHT_AT_LEAST = 45
SURE_AND_WRONG_AT_MOST = 3


def test_sixty_lines_written_down_beforehand() -> None:
    right = wrong_and_sure = 0
    for row in rows("sixty_lines.json"):
        understood = read(row)
        if not faults(row, understood.best):
            right += 1
        elif understood.best.sure and understood.ask is None:
            wrong_and_sure += 1
    assert right >= RIGHT_AT_LEAST
    assert wrong_and_sure <= SURE_AND_WRONG_AT_MOST
