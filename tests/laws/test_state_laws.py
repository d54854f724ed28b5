"""Laws of the record: what must hold whatever a person writes."""

from __future__ import annotations

import random
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import entry, evening
from tests.journals import LAST_DAY, VEHICLE, day_after, doings, journals
from witnessmark.gate.asks import asked_of, gates
from witnessmark.gate.holds import ask_gate
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.journal.order import standing
from witnessmark.owed.owed import owed_by
from witnessmark.state.closing import proven
from witnessmark.state.joint_state import AS_FOUND, TIGHT
from witnessmark.state.standing import Fold, state_from
from witnessmark.vehicle.catalogue import kind_of


@given(journals(strikes=True), st.randoms(use_true_random=False))
def test_state_does_not_depend_on_the_order_lines_are_handed_over(
    entries: list[Entry], r: random.Random
) -> None:
    mixed = list(entries)
    r.shuffle(mixed)
    assert state_from(mixed) == state_from(entries)


@given(journals(), st.data())
def test_striking_a_line_is_the_same_as_never_having_written_it(
    entries: list[Entry], data: st.DataObject
) -> None:
    if len(entries) == len(VEHICLE):
        return
    line = data.draw(st.integers(len(VEHICLE) + 1, len(entries)))
    strike = entry(f.Struck(line=line, why="wrong"), len(entries) + 1, LAST_DAY)
    assert standing([*entries, strike]) == standing(e for e in entries if e.line != line)
    now = evening(day_after(entries))
    without = owed_by(state_from(e for e in entries if e.line != line), now)
    assert owed_by(state_from([*entries, strike]), now) == without


@given(journals(), doings, st.data())
def test_a_correction_takes_the_struck_lines_place(
    entries: list[Entry], fact: f.Doing, data: st.DataObject
) -> None:
    if len(entries) == len(VEHICLE):
        return
    line = data.draw(st.integers(len(VEHICLE) + 1, len(entries)))
    strike = entry(f.Struck(line=line, why="wrong", instead=fact), len(entries) + 1, LAST_DAY)
    as_it_should_be = [entry(fact, e.line, e.day, e.time, words="") if e.line == line else e for e in entries]
    corrected = [(e.day, e.time, e.fact) for e in standing([*entries, strike])]
    assert corrected == [(e.day, e.time, e.fact) for e in standing(as_it_should_be)]


@given(journals(strikes=True))
def test_nothing_is_owed_without_a_line_behind_it(entries: list[Entry]) -> None:
    lines = {e.line for e in entries}
    debts = owed_by(state_from(entries), evening(day_after(entries)))
    assert all(debt.line in lines and debt.because and debt.pays for debt in debts)
    assert len({debt.id for debt in debts}) == len(debts)
    assert len({debt.key for debt in debts}) == len(debts)


@given(journals(strikes=True))
def test_every_joint_opened_after_its_last_proof_owes_something(entries: list[Entry]) -> None:
    state = state_from(entries)
    owing = {debt.joint for debt in owed_by(state, evening(day_after(entries)))}
    for name, joint in state.joints.items():
        kind = kind_of(state.vehicle.joints[name].kind)
        disturbed = joint.position not in (AS_FOUND, TIGHT) or (
            joint.opened_line is not None and not proven(kind, joint)
        )
        assert not disturbed or name in owing


@given(journals(strikes=True))
def test_closing_everything_that_is_owed_empties_the_gate(entries: list[Entry]) -> None:
    day = day_after(entries)
    paid = [*entries, *_paying(entries, day)]
    state = state_from(paid)
    answer = ask_gate("road", state, owed_by(state, evening(day)), day)
    assert answer.empty, answer


def _paying(entries: list[Entry], day: object) -> list[Entry]:
    """Lines that close every joint, put everything right, refit and empty everything, answer every ask."""
    state = state_from(entries)
    made: list[f.Doing] = [f.Fitted(at=(name,), new=True) for name in state.parts]
    made += [f.Found(at=(name,), condition="good") for name in (*state.parts, *state.joints)]
    made += [
        f.Found(at=(n,), condition="good", item=x.item) for n, j in state.joints.items() for x in j.findings
    ]
    made += [f.Coated(at=(name,), last_coat=True) for name in state.surfaces]
    made += [f.Filled(at=(t.at,)) for t in state.counts.drained]
    made += [f.Closed(at=(name,), seen=True) for name, j in state.joints.items()]
    made += [f.PutRight(what=u.name) for j in state.vehicle.joints.values() for u in kind_of(j.kind).upset]
    made += [f.Unbagged(at=b.at) for b in state.counts.bags]
    made += [f.Unblanked(at=(t.at,), number=t.number) for t in state.counts.blanks]
    made += [f.WatchedFire(at=())]
    made += [f.Proved(check=ask.name) for ask in asked_of(gates()["road"], state.vehicle)]
    first = max(e.line for e in entries) + 1
    return [entry(fact, n, day_after(entries), "21:30") for n, fact in enumerate(made, first)]


@given(st.sampled_from(["car", "pickup", "trailer", "motorcycle", "", "sidecar outfit"]))
def test_a_new_records_road_gate_is_never_empty(body: str) -> None:
    entries = [entry(f.DescribedVehicle(name="new", body=body), 1)]
    state = state_from(entries)
    answer = ask_gate("road", state, owed_by(state, evening()), entries[0].day)
    assert not answer.empty
    assert all(u.because == "not known to this record" for u in answer.not_known)


@given(journals(strikes=True, most=24), st.data())
def test_folding_on_from_a_kept_state_equals_folding_all(entries: list[Entry], data: st.DataObject) -> None:
    """The tail is cut short, so that base, tail and what reaches behind both are all met."""
    cut = len(entries) - data.draw(st.integers(0, 3))
    tail = data.draw(st.integers(2, 8))
    with short_tail(tail):
        kept = Fold.of(entries[:cut])
        before = kept.state
        after = kept.followed_by(entries[cut:])
        assert kept.state == before == state_from(entries[:cut])
        if after is not None:
            assert after.state == state_from(entries)


@given(journals(strikes=True))
def test_most_lines_at_the_end_of_a_record_fold_on(entries: list[Entry]) -> None:
    """The law above is not empty: a line done last is always laid on, one at a time."""
    last = entry(f.Remarked(remark="x"), max(e.line for e in entries) + 1, day_after(entries))
    assert Fold.of(entries).followed_by([last]) is not None


@contextmanager
def short_tail(lines: int) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("witnessmark.state.standing.TAIL", lines)
        yield
