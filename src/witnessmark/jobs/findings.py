"""How likely an operation is to turn something up: a start for each sort, moved by this record's own counts.

The chance of one sort is a beta distribution: the start counts like so many openings, each opening that
was written counts as one more. The starts are choices of this project, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from witnessmark.state.standing import State
from witnessmark.state.turned_up import APART_BEFORE, FIGHTS, NEVER_APART, Tally

MAKING_GOOD, CLOSING, PROVING = "making good", "closing", "proving"

STARTS: Mapping[str, float] = MappingProxyType(
    {NEVER_APART: 0.10, APART_BEFORE: 0.02, FIGHTS: 0.25, MAKING_GOOD: 0.05, CLOSING: 0.01, PROVING: 0.02}
)

# So many openings the start is worth. Our choice.
WORTH = 20.0

# That five minutes become two hours on a joint not apart for decades is known of the trade (common practice,
# no source): however lucky a record was, its chance of a finding there is not taken under this.
LEAST_NEVER_APART = 0.06


def beta_of(state: State, sort: str) -> tuple[float, float]:
    """The beta distribution of one sort's chance: start and counts together, as (found, not found)."""
    tally = state.turned_up.get(sort, Tally())
    start = STARTS[sort] * WORTH
    return start + tally.found, WORTH - start + tally.opened - tally.found


def least(sort: str) -> float:
    """What a chance of this sort is not taken under."""
    return LEAST_NEVER_APART if sort == NEVER_APART else 0.0


def finding(state: State, sort: str) -> dict[str, Any]:
    """The mean chance of a sort, and the sort, as an operation carries them."""
    found, clean = beta_of(state, sort)
    return {"finding": max(least(sort), found / (found + clean)), "turns_up": sort}


def finding_on_opening(state: State, joint: str) -> dict[str, Any]:
    """The chance that opening a joint turns something up, by how it stands."""
    known = state.joints[joint]
    if known.fights:
        return finding(state, FIGHTS)
    return finding(state, NEVER_APART if known.opened_line is None else APART_BEFORE)
