"""What the log has taught, told plainly, and nothing told of too little."""

from __future__ import annotations

from math import exp, log

import pytest

from tests.building import described, state_of
from witnessmark.journal.facts import AnyFact, Found, Guessed, TookTime
from witnessmark.plan.learning import ALL, ENOUGH, KNOWN, SEIZED, Taught, taught
from witnessmark.plan.overrun import learned, owners_overrun
from witnessmark.state.standing import State
from witnessmark.vehicle.things import Joint


def after(count: int, *, seized: bool = False, took: float = 54, remark: str = "") -> State:
    """So many bolts guessed at half an hour, each of which then took so long."""
    joints = [Joint(name=f"bolt {n}", kind="plain-fixing") for n in range(count)]
    facts: list[AnyFact] = [described(*joints)]
    facts += [Found(at=(j.name,), condition="seized") for j in joints] if seized else []
    facts += [Guessed(at=(j.name,), likely=30) for j in joints]
    facts += [TookTime(at=(j.name,), minutes=took, remark=remark) for j in joints]
    return state_of(*facts)


def by_sort(state: State) -> dict[str, Taught]:
    return {one.sort: one for one in taught(state)}


def test_seven_seized_things_are_enough_to_say_so() -> None:
    """Posterior by hand: the mean of seven times ln 1.8 with the start worth two, then again for the sort."""
    told = by_sort(after(7, seized=True))
    owner = learned([log(1.8)] * 7)
    assert told[ALL].factor == pytest.approx(exp(owner.centre))
    assert told[SEIZED].factor == pytest.approx(exp((3 * owner.centre + 7 * log(1.8)) / 10))
    assert told[SEIZED].says.startswith("you usually take 1.8 × your guess on seized things (7 jobs)")


def test_with_fewer_than_five_nothing_is_said_of_them() -> None:
    told = by_sort(after(ENOUGH - 1, seized=True))
    assert told[SEIZED].says == "seized things: not enough of your own yet (4 jobs)"
    assert KNOWN not in told


def test_what_has_only_lasted_so_far_is_not_finished_and_yet_counts() -> None:
    so_far = owners_overrun(after(6, took=150, remark="so far"))
    assert (so_far.finished, so_far.open, len(so_far.lasted)) == (0, 6, 6)
    assert so_far.factor > owners_overrun(after(0)).factor * 1.5
    assert by_sort(after(6, took=150, remark="so far"))[ALL].finished == 0
