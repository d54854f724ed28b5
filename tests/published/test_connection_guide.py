"""A C of welds under a slanting force."""

from __future__ import annotations

import math

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import weld_group

SOURCE = Cited(
    title="A Beginner's Guide to the Steel Construction Manual",
    issuer="T. B. Quimby",
    where="14th edition, example 5.4",
    edition="14th",
    standing="handbook",
)


GROUP = weld_group.group_of([((0, 11), (4, 11)), ((0, 0), (0, 11)), ((0, 0), (4, 0))])
SLANT = math.radians(10)
FORCE = (52 * math.sin(SLANT), -52 * math.cos(SLANT), 0.0)
LOAD = weld_group.Load(FORCE, (0.0, 0.0, -416.0))

PRINTED = (
    Printed("welds group", "centre from the back, in", "0.842", lambda: GROUP.x),
    Printed(
        "welds group",
        "greatest, ksi",
        "25.2",
        lambda: (
            max(math.hypot(*weld_group.field_at(GROUP, LOAD, *end)) for line in GROUP.lines for end in line)
            / 0.354
        ),
    ),
)

BESIDE = (
    Printed(
        "welds group",
        "polar moment with the throat, in⁴",
        "135.15",
        lambda: GROUP.polar * 0.354,
        "it adds terms in the cube of the throat; ours is 135.10",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)
