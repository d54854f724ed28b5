from __future__ import annotations

from tests.journal.lines import describing, entry
from witnessmark.journal.facts import Lifted, Remarked, Struck, Tightened, TookOff
from witnessmark.journal.rules.orphans import orphaned_by

NUTS, DRUM = "wheel nuts, left rear", "brake drum, left rear"


def test_the_lines_a_strike_would_orphan_are_shown_before_it_is_made() -> None:
    record = [
        entry(1, describing(NUTS)),
        entry(2, TookOff(at=(NUTS,))),
        entry(3, Remarked(at=(NUTS,))),
        entry(4, Lifted(at=("rear",))),
    ]
    assert [e.line for e in orphaned_by(record, 1)] == [2, 3]
    assert orphaned_by(record, 2) == ()


def test_a_second_description_keeps_the_thing_known() -> None:
    record = [entry(1, describing(NUTS)), entry(2, TookOff(at=(NUTS,))), entry(3, describing(NUTS, DRUM))]
    assert orphaned_by(record, 1) == ()
    assert orphaned_by(record, 3) == ()


def test_a_correction_orphans_only_what_it_leaves_out() -> None:
    record = [
        entry(1, describing(NUTS, DRUM)),
        entry(2, TookOff(at=(NUTS,))),
        entry(3, TookOff(at=(DRUM,))),
    ]
    assert [e.line for e in orphaned_by(record, 1, describing(NUTS))] == [3]


def test_lines_already_struck_are_not_shown() -> None:
    record = [entry(1, describing(NUTS)), entry(2, TookOff(at=(NUTS,))), entry(3, Struck(line=2, why="x"))]
    assert orphaned_by(record, 1) == ()


def test_striking_once_more_a_line_that_stands_corrected() -> None:
    record = [
        entry(1, describing(DRUM)),
        entry(2, Struck(line=1, why="x", instead=describing(NUTS))),
        entry(3, Tightened(at=(NUTS,))),
    ]
    assert [e.line for e in orphaned_by(record, 1)] == [3]
    assert orphaned_by(record, 2) == ()


def test_a_line_that_is_not_there_orphans_nothing() -> None:
    assert orphaned_by([entry(1, describing(NUTS)), entry(2, TookOff(at=(NUTS,)))], 9) == ()
