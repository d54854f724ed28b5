"""Snags and changes of plan as they are typed in a hurry."""

from __future__ import annotations

import pytest

from witnessmark.words.snag_line import DEFAULT_DAYS, DOWN, DROP, FREE, LATE, STUCK, Snag, read_snag


@pytest.mark.parametrize(
    ("line", "snag"),
    [
        ("The pinion seal won't come out!", Snag(STUCK, "pinion seal")),
        ("can't get the brake drum left rear off", Snag(STUCK, "brake drum left rear")),
        ("hub nut left rear seized", Snag(STUCK, "hub nut left rear")),
        ("u-bolt nuts three weeks late", Snag(LATE, "u-bolt nuts", 21)),
        ("the half-shaft o-ring is 10 days late", Snag(LATE, "half-shaft o-ring", 10)),
        ("grease seal is late", Snag(LATE, "grease seal", DEFAULT_DAYS, told=False)),
        ("the welder jammed in the middle of the outrigger", Snag(DOWN, "welder", DEFAULT_DAYS, told=False)),
        ("welder broken for a week", Snag(DOWN, "welder", 7)),
        ("two free days", Snag(FREE, "", 2)),
        ("what if drop the job of clutch plate", Snag(DROP, "clutch plate")),
    ],
)
def test_a_snag_is_read(line: str, snag: Snag) -> None:
    assert read_snag(line) == snag


@pytest.mark.parametrize(
    "line", ["took off hub nut left", "held 9:00 to 13:00", "", "tightened flange nut 95 lbf ft"]
)
def test_what_was_done_is_no_snag(line: str) -> None:
    assert read_snag(line) is None
