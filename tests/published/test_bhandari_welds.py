"""Weld groups of a textbook, by way of its worked code."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import weld_group

SOURCE = Cited(
    title="Introduction to Machine Design, V. B. Bhandari, chapter 8",
    where="examples 8.9 and 8.13, as a collection of worked code prints them",
    standing="handbook",
)


PAIR = weld_group.group_of([((0, 0), (0, 50)), ((50, 0), (50, 50))])
PULL = weld_group.load_on(PAIR, (0, -7500, 0), (150, 25, 0))
UPRIGHT = weld_group.group_of([((0, 0), (0, 400)), ((10, 0), (10, 400))])
BENDING = weld_group.load_on(UPRIGHT, (0, -50_000, 0), (5, 200, 300))
BENT = weld_group.carried_at(UPRIGHT, BENDING, UPRIGHT.lines[0], 1)


def worst(group: weld_group.Group, load: weld_group.Load) -> float:
    """The greatest vector sum on a group, N/mm."""
    return max(weld_group.carried_at(group, load, line, end).vector for line in group.lines for end in (0, 1))


PRINTED = (
    Printed(
        "welds group",
        "throat for 7.5 kN at 125 mm and 100 MPa, mm",
        "4.538894",
        lambda: worst(PAIR, PULL) / 100,
    ),
)

BESIDE = (
    Printed(
        "welds group",
        "throat by the greatest shear, mm",
        "2.198406",
        lambda: math.hypot(BENT.out / 2, math.hypot(BENT.along, BENT.across)) / 70,
        "it takes half the pull with the shear; the vector sum asks 4.116",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
