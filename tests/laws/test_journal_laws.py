"""What holds for every record, however it came about."""

from __future__ import annotations

import random
from datetime import date

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tests.journal.lines import describing
from tests.laws.records_made import DAYS, FACTS, records
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AnyFact, Doing, Remarked, Struck, TookOff
from witnessmark.journal.order import done_by, in_force, reading_order, standing, written_by
from witnessmark.journal.rules.every import all_faults
from witnessmark.journal.rules.names import described_in, must_be_described
from witnessmark.journal.rules.orphans import orphaned_by
from witnessmark.journal.wire import entry_from_json, entry_to_json, fact_from_json, fact_to_json

SIMPLE: st.SearchStrategy[AnyFact] = st.builds(
    TookOff, at=st.tuples(st.sampled_from(["drum", "hub"]))
) | st.builds(Remarked, remark=st.sampled_from(["a", "b"]))

NAMES = st.sampled_from(["drum", "hub", "nuts"])
NAMING: st.SearchStrategy[AnyFact] = st.builds(TookOff, at=st.tuples(NAMES)) | st.builds(
    describing, NAMES, parts=st.lists(NAMES, max_size=1).map(tuple), assembly=st.sampled_from(["", "drum"])
)


def strike(record: list[Entry], line: int, instead: Doing | None = None) -> Entry:
    """One more line, which strikes another and may correct it."""
    fact = Struck(line=line, why="slip", instead=instead)
    return replace(record[-1], id="strike", line=len(record) + 1, day=date(2025, 2, 1), fact=fact)


# ---- on the wire ------------------------------------------------------------------------------


@given(FACTS)
def test_every_fact_comes_back_from_json_as_it_went(fact: AnyFact) -> None:
    assert fact_from_json(fact_to_json(fact)) == fact


@given(records(most=4))
def test_every_entry_comes_back_from_json_as_it_went(record: list[Entry]) -> None:
    assert [entry_from_json(entry_to_json(e)) for e in record] == record


# ---- the order of reading ---------------------------------------------------------------------


@given(records(doings=SIMPLE), st.randoms(use_true_random=False))
def test_the_order_lines_are_handed_over_in_changes_nothing(
    record: list[Entry], chance: random.Random
) -> None:
    shuffled = record.copy()
    chance.shuffle(shuffled)
    assert standing(shuffled) == standing(record)
    assert in_force(shuffled) == in_force(record)
    assert reading_order(shuffled) == reading_order(record)


@given(records(doings=SIMPLE))
def test_what_stands_is_read_by_day_then_time_and_holds_no_strike(record: list[Entry]) -> None:
    held = standing(record)
    assert [(e.day, e.time) for e in held] == sorted((e.day, e.time) for e in held)
    assert not any(isinstance(e.fact, Struck) for e in held)


@given(records(doings=SIMPLE))
def test_every_plain_line_stands_unless_a_strike_took_it_out_and_then_only_its_correction(
    record: list[Entry],
) -> None:
    force = in_force(record)
    plain = [e for e in record if not isinstance(e.fact, Struck)]
    bare = [e for e in plain if e.line in force and force[e.line].fact.instead is None]  # type: ignore[union-attr]
    assert len(standing(record)) == len(plain) - len(bare)


@given(records(doings=SIMPLE), st.data())
def test_striking_a_line_takes_out_that_line_and_no_other(record: list[Entry], data: st.DataObject) -> None:
    plain = [e for e in record if not isinstance(e.fact, Struck) and e.line not in in_force(record)]
    if not plain:
        return
    struck = data.draw(st.sampled_from(plain))
    before = standing(record)
    assert standing([*record, strike(record, struck.line)]) == [e for e in before if e.line != struck.line]


@given(records(doings=SIMPLE), st.data())
def test_a_correction_stands_exactly_where_the_struck_line_stood(
    record: list[Entry], data: st.DataObject
) -> None:
    plain = [e for e in record if not isinstance(e.fact, Struck) and e.line not in in_force(record)]
    if not plain:
        return
    struck = data.draw(st.sampled_from(plain))
    after = standing([*record, strike(record, struck.line, Remarked(remark="as it was"))])
    place = standing(record).index(struck)
    assert after[place].fact == Remarked(remark="as it was")
    assert [e for e in after if e is not after[place]] == [e for e in standing(record) if e != struck]


@given(records(doings=SIMPLE), st.data())
def test_a_strike_cannot_be_struck(record: list[Entry], data: st.DataObject) -> None:
    strikes = [e for e in record if isinstance(e.fact, Struck)]
    if not strikes:
        return
    doomed = data.draw(st.sampled_from(strikes))
    assert standing([*record, strike(record, doomed.line, Remarked())]) == standing(record)


# ---- looking back -----------------------------------------------------------------------------


@given(records(doings=SIMPLE), DAYS, DAYS)
def test_what_was_known_by_a_day_was_known_by_every_later_day(
    record: list[Entry], one: date, two: date
) -> None:
    earlier, later = sorted([one, two])
    assert set(map(id, written_by(record, earlier))) <= set(map(id, written_by(record, later)))
    assert set(map(id, done_by(record, earlier))) <= set(map(id, done_by(record, later)))


@given(records(doings=SIMPLE), DAYS)
def test_nothing_written_later_changes_what_was_known_by_a_day(record: list[Entry], day: date) -> None:
    known = [e for e in record if e.written_day <= day]
    assert standing(written_by(record, day)) == standing(known)


@given(records(doings=SIMPLE), DAYS)
def test_every_line_done_by_a_day_is_a_strike_or_lies_on_or_before_it(record: list[Entry], day: date) -> None:
    taken = done_by(record, day)
    assert all(isinstance(e.fact, Struck) or e.day <= day for e in taken)
    assert all(e in taken for e in record if e.day <= day)


# ---- faults -----------------------------------------------------------------------------------


@given(records())
def test_faults_are_values_whatever_stands_in_the_record(record: list[Entry]) -> None:
    faults = all_faults(record)
    assert all(fault.line in {e.line for e in record} for fault in faults)
    assert [fault.line for fault in faults] == sorted(
        fault.line for fault in faults if fault.line is not None
    )


@given(records(doings=NAMING), st.data())
def test_what_a_strike_would_orphan_is_what_it_is_faulted_for_afterwards(
    record: list[Entry], data: st.DataObject
) -> None:
    force = in_force(record)
    plain = [e.line for e in record if not isinstance(e.fact, Struck) and e.line not in force]
    if not plain:
        return
    line = data.draw(st.sampled_from(plain))
    shown = orphaned_by(record, line)
    struck = [*record, strike(record, line)]
    new = [f for f in all_faults(struck) if f.rule == "orphan" and f.line == len(struck)]
    assert bool(new) == bool(shown)
    assert all(str(e.line) in new[0].what for e in shown)


@given(records(doings=NAMING))
def test_every_name_that_has_no_effect_is_told_of_by_one_rule_or_the_other(record: list[Entry]) -> None:
    held = standing(record)
    known = {name for e in held for name in described_in(e.fact)}
    lost = {name for e in held for name in must_be_described(e.fact)} - known
    told = [f.what for f in all_faults(record) if f.rule in ("orphan", "undescribed")]
    assert all(any(name in what for what in told) for name in lost)
    assert bool(told) == bool(lost)
