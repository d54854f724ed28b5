"""Minutes of one operation: a share of its joint's minutes, and the chance that it turns something up."""

from __future__ import annotations

from witnessmark.jobs.operation import Minutes
from witnessmark.reach.minutes import minutes_for
from witnessmark.state.joint_state import JointState
from witnessmark.state.standing import State

# The chance that opening a joint turns something up, by its condition. Choices of this project, no source:
# to be replaced by the record's own counts.
FINDING_NEVER_APART, FINDING_APART_BEFORE, FINDING_FIGHTS = 0.10, 0.02, 0.25

# And for the rest of the work on it: making good, closing, proving. Choices, no source.
FINDING_MAKING_GOOD, FINDING_CLOSING, FINDING_PROVING = 0.05, 0.01, 0.02


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


def finding_on_opening(joint: JointState | None) -> float:
    """The chance that opening it turns something up."""
    if joint is None:
        return FINDING_APART_BEFORE
    if joint.fights:
        return FINDING_FIGHTS
    return FINDING_NEVER_APART if joint.opened_line is None else FINDING_APART_BEFORE
