"""What is owed says which line pays it: typed so, the line is understood and pays."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime

import pytest

from tests.building import state_of
from witnessmark.journal.facts import AnyFact, Coated, Described, Filled, Fitted, Tightened, TookOff, Welded
from witnessmark.owed.debt import Debt
from witnessmark.owed.owed import owed_by
from witnessmark.vehicle.starting_lists import expand, starting_lists
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.read import read_line
from witnessmark.words.vocabulary import vocabulary_of

NOW = datetime(2026, 3, 9, 12)
TODAY = date(2026, 3, 9)
SIDE_FOR = {"corner": "left rear", "side": "left", "vehicle": ""}


def stories(key: str) -> Iterator[tuple[list[AnyFact], frozenset[str]]]:
    """All of a list apart; and all of it closed but not proven: with the sorts of debt each can show."""
    parts, joints = expand(key, SIDE_FOR[starting_lists()[key].per], Vehicle())
    joint_names = tuple(j.name for j in joints)
    every = (*joint_names, *(p.name for p in parts))
    apart: list[AnyFact] = [Described(parts=parts, joints=joints, from_list=key), TookOff(at=every)]
    yield apart, frozenset({"close", "refit"})
    closing: list[AnyFact] = [Fitted(at=every), Tightened(at=joint_names), Filled(at=joint_names)]
    yield (
        [*apart, *closing, Welded(at=joint_names), Coated(at=joint_names)],
        frozenset({"renew", "check", "put_right", "record"}),
    )


@pytest.mark.parametrize("key", list(starting_lists()))
def test_the_line_that_pays_is_understood_and_pays(key: str) -> None:
    unpaid = [line for facts, sorts in stories(key) for line in _unpaid(facts, sorts)]
    assert unpaid == []


def _unpaid(facts: list[AnyFact], sorts: frozenset[str]) -> Iterator[str]:
    state = state_of(*facts)
    vocabulary = vocabulary_of(state.vehicle)
    for debt in owed_by(state, NOW):
        if debt.sort not in sorts or debt.pays.startswith("measured"):
            continue
        reading = read_line(debt.pays, vocabulary, today=TODAY).best
        if not reading.sure or _is_owed(debt, [*facts, *reading.facts]):
            yield f"{debt.pays} -> {reading.sentence} {reading.doubts}"


def _is_owed(debt: Debt, facts: list[AnyFact]) -> bool:
    return debt.key in {other.key for other in owed_by(state_of(*facts), NOW)}


@pytest.mark.parametrize("key", list(starting_lists()))
def test_a_figure_written_down_pays_its_record(key: str) -> None:
    *_, (facts, _) = stories(key)
    state = state_of(*facts)
    vocabulary = vocabulary_of(state.vehicle)
    for debt in owed_by(state, NOW):
        if debt.pays.startswith("measured"):
            reading = read_line(debt.pays.replace("FIGURE", "47 mm"), vocabulary, today=TODAY).best
            assert reading.sure, (debt.pays, reading.doubts)
            assert not _is_owed(debt, [*facts, *reading.facts]), debt.pays
