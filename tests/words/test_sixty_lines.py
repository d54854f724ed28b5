"""Sixty lines written down before there was a grammar, and not looked at while it was built.

Two people who knew neither the reader nor each other's answers wrote down how each line should be
understood; it is read rightly where it is read as one of them understood it. The aim is nine in ten read
rightly at first, and none read wrongly without being marked unsure.

The fresh lines are 180 by another hand, written after everything was learned, and never learned from.

The floors are what was reached, and may only be raised.
"""

from __future__ import annotations

from typing import Any

from tests.words.judging import faults, read, rows

RIGHT_AT_LEAST = 53
SURE_AND_WRONG_AT_MOST = 2


FRESH_RIGHT_AT_LEAST = 162
FRESH_SURE_AND_WRONG_AT_MOST = 1


def understood_by_both() -> list[tuple[dict[str, Any], dict[str, Any]]]:
    pairs = list(zip(rows("sixty_lines.json"), rows("sixty_second.json"), strict=True))
    assert all(first["line"] == second["line"] for first, second in pairs)
    return pairs


def test_sixty_lines_written_down_beforehand() -> None:
    right = wrong_and_sure = 0
    for first, second in understood_by_both():
        understood = read(first)
        if not faults(first, understood.best) or not faults(second, understood.best):
            right += 1
        elif understood.best.sure and understood.ask is None:
            wrong_and_sure += 1
    assert right >= RIGHT_AT_LEAST
    assert wrong_and_sure <= SURE_AND_WRONG_AT_MOST


def test_lines_by_another_hand_never_learned_from() -> None:
    right = wrong_and_sure = 0
    for row in rows("fresh_lines.json"):
        understood = read(row)
        if not faults(row, understood.best):
            right += 1
        elif understood.best.sure and understood.ask is None:
            wrong_and_sure += 1
    assert right >= FRESH_RIGHT_AT_LEAST
    assert wrong_and_sure <= FRESH_SURE_AND_WRONG_AT_MOST
