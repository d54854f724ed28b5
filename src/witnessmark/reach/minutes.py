"""Minutes to open a joint: a share of its kind's minutes, or of the owner's own guess."""

from __future__ import annotations

from math import exp, sqrt

from msgspec import Struct

from witnessmark.state.joint_state import JointState
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.kind import Kind

# What part of a joint's minutes goes where. A choice of this project, no source.
OPENING, MAKING_GOOD, CLOSING, PROVING = 0.3, 0.3, 0.3, 0.1

# A part that nothing holds any more is lifted off in this many minutes. Our choice, no source.
LIFTING = 2

# A thing named as being in the way and never described. A guess.
NOT_DESCRIBED = 15

# Where only a likely figure was guessed, its spread by condition. Common practice, no source.
SPREAD_CLEAN, SPREAD_OLD, SPREAD_NEVER_APART, SPREAD_FIGHTS = 0.30, 0.50, 0.70, 0.90
Z90 = 1.2816


class ThreeGuesses(Struct, frozen=True, kw_only=True):
    """Minutes for the whole of one joint: well, likely, if it fights; `owner` where the owner typed them."""

    low: float
    likely: float
    high: float
    owner: bool = False


def minutes_for(state: State, name: str) -> ThreeGuesses:
    """The whole minutes of a joint: the owner's latest guess, else its kind's, harder where it fights."""
    guessed = owners_guess(state, name)
    if guessed is not None:
        return guessed
    if name not in state.vehicle.joints:
        return ThreeGuesses(low=LIFTING / 2, likely=LIFTING, high=LIFTING * 3)
    return catalogue_minutes(kind_of(state.vehicle.joints[name].kind), state.joints[name])


def catalogue_minutes(kind: Kind, joint: JointState) -> ThreeGuesses:
    """The kind's minutes. A joint that fights takes the high end more often: likely becomes the low guess."""
    low, likely, high = (float(m) for m in kind.minutes)
    if joint.fights:
        low, likely = likely, sqrt(likely * high)
    return ThreeGuesses(low=low, likely=likely, high=high)


def owners_guess(state: State, name: str) -> ThreeGuesses | None:
    """The owner's latest guess for a thing, on whatever job; missing ends are filled in by its condition.

    It covers the thing itself, not the way in to it.
    """
    guesses = [line.fact for line in state.supply.guessed if name in line.fact.at and line.fact.likely > 0]
    if not guesses:
        return None
    guess = guesses[-1]
    width = exp(Z90 * spread_of(state.joints.get(name)))
    low = min(guess.low or guess.likely / width, guess.likely)
    high = max(guess.high or guess.likely * width, guess.likely)
    return ThreeGuesses(low=low, likely=guess.likely, high=high, owner=True)


def spread_of(joint: JointState | None) -> float:
    """How wide a likely figure is spread, by what is known of the joint."""
    if joint is None:
        return SPREAD_OLD
    if joint.fights:
        return SPREAD_FIGHTS
    if joint.opened_line is None:
        return SPREAD_NEVER_APART
    return SPREAD_OLD if joint.findings else SPREAD_CLEAN


def opening_minutes(state: State, name: str, *, held: bool = False) -> int:
    """Likely minutes to open one thing, whole and at least 1; `held`: some joint is known to hold it."""
    if name in state.vehicle.joints:
        return max(1, round(OPENING * minutes_for(state, name).likely))
    return LIFTING if held or name in state.vehicle.parts else NOT_DESCRIBED
