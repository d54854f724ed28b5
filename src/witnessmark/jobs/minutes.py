"""Minutes of one operation: a share of its joint's minutes."""

from __future__ import annotations

from witnessmark.jobs.operation import Minutes
from witnessmark.reach.minutes import minutes_for
from witnessmark.state.standing import State


def share(state: State, name: str, part: float, *, least: float = 2.0) -> Minutes:
    """A part of a thing's minutes, never likely under `least`; parts of one guess share their luck."""
    whole = minutes_for(state, name)
    times = max(part, least / whole.likely)
    return Minutes(
        low=whole.low * times,
        likely=whole.likely * times,
        high=whole.high * times,
        owner=whole.owner,
        guess=name if whole.owner else "",
    )


def about(likely: float) -> Minutes:
    """Minutes of a small act that nobody guesses: two thirds, once, and twice the likely figure. Our choice.

    >>> about(6)
    Minutes(low=4.0, likely=6, high=12, owner=False, guess='')
    """
    return Minutes(low=likely * 2 / 3, likely=likely, high=likely * 2)
