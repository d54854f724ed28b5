"""Each rule is shown a record it must fault, and a like record it must leave alone."""

from __future__ import annotations

import math
from datetime import date

import pytest

from tests.journal.lines import describing, entry
from witnessmark.ground.fault import Fault
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    Bared,
    Blanked,
    Closed,
    DescribedVehicle,
    Held,
    Lifted,
    Measured,
    Remarked,
    Struck,
    Tightened,
    TookOff,
    Unblanked,
)
from witnessmark.journal.rules.every import all_faults

NUTS = "wheel nuts, left rear"
KNOWN = describing(NUTS)


def told(*entries: Entry) -> list[tuple[int | None, str]]:
    return [(fault.line, fault.rule) for fault in all_faults(entries)]


def test_a_sound_record_has_no_fault() -> None:
    record = [
        entry(1, DescribedVehicle(name="Marrowby Ten", body="pickup")),
        entry(2, KNOWN),
        entry(3, TookOff(at=(NUTS,)), time="10:40"),
        entry(4, Bared(at=("cab floor",))),
        entry(5, Lifted(at=("rear",))),
        entry(6, Blanked(at=("brake pipe",), number=2)),
        entry(7, Unblanked(at=("brake pipe",), number=2)),
        entry(8, Held(start="09:00", end="12:00")),
        entry(9, Struck(line=4, why="it was primed")),
        entry(10, DescribedVehicle(has=("screen",))),
    ]
    assert all_faults(record) == ()


def test_an_empty_record_has_no_fault() -> None:
    assert all_faults([]) == ()


def test_each_fault_says_what_is_wrong_and_what_would_mend_it() -> None:
    (fault,) = all_faults([entry(1, TookOff(at=("wheel nutz",)))])
    assert fault == Fault(
        line=1,
        rule="undescribed",
        what="Line 1 is about wheel nutz, which no line describes: it has no effect.",
        do="Describe it, or strike the line and give the name the record knows.",
    )


@pytest.mark.parametrize(
    ("strike", "why"),
    [
        (Struck(line=2, why="x"), "itself"),
        (Struck(line=3, why="x"), "written later"),
        (Struck(line=9, why="x"), "not in the record"),
        (Struck(line=0, why="x"), "not in the record"),
    ],
)
def test_a_strike_at_nothing(strike: Struck, why: str) -> None:
    (fault,) = all_faults([entry(1, Remarked()), entry(2, strike), entry(3, Remarked())])
    assert (fault.line, fault.rule) == (2, "strike")
    assert why in fault.what


def test_a_strike_at_a_strike() -> None:
    record = [entry(1, Remarked()), entry(2, Struck(line=1, why="x")), entry(3, Struck(line=2, why="y"))]
    assert told(*record) == [(3, "strike")]


def test_a_strike_that_orphans() -> None:
    record = [
        entry(1, KNOWN),
        entry(2, TookOff(at=(NUTS,))),
        entry(3, Tightened(at=(NUTS,))),
        entry(4, Struck(line=1, why="wrong axle")),
    ]
    (fault,) = all_faults(record)
    assert (fault.line, fault.rule) == (4, "orphan")
    assert NUTS in fault.what
    assert "2, 3" in fault.what


def test_a_strike_whose_correction_still_describes_the_thing_orphans_nothing() -> None:
    record = [
        entry(1, KNOWN),
        entry(2, TookOff(at=(NUTS,))),
        entry(3, Struck(line=1, why="place was wrong", instead=describing(NUTS, "hub nut"))),
    ]
    assert told(*record) == []


def test_a_name_only_an_overtaken_correction_described_is_an_orphan_too() -> None:
    record = [
        entry(1, Remarked()),
        entry(2, Struck(line=1, why="x", instead=KNOWN)),
        entry(3, TookOff(at=(NUTS,))),
        entry(4, Struck(line=1, why="after all not")),
    ]
    assert told(*record) == [(4, "orphan")]


def test_a_name_only_a_strike_at_nothing_described_was_never_described() -> None:
    record = [
        entry(1, Struck(line=2, why="too early", instead=KNOWN)),
        entry(2, Remarked()),
        entry(3, TookOff(at=(NUTS,))),
        entry(4, Struck(line=2, why="x")),
    ]
    assert told(*record) == [(1, "strike"), (3, "undescribed")]


def test_a_name_used_before_it_is_described_is_no_fault() -> None:
    assert told(entry(1, TookOff(at=(NUTS,))), entry(2, KNOWN)) == []


def test_an_assembly_counts_as_described_and_so_does_what_a_sweep_leaves_out() -> None:
    corner = describing(NUTS, parts=("wheel",), assembly="brake corner")
    assert told(entry(1, corner), entry(2, Closed(at=("brake corner",), but=("wheel",)))) == []
    assert told(entry(1, corner), entry(2, Closed(at=("brake corner",), but=("wheal",)))) == [
        (2, "undescribed")
    ]


def test_an_undescribed_name_is_told_once_on_its_first_line() -> None:
    record = [entry(1, Remarked()), entry(2, TookOff(at=("drum",))), entry(3, Tightened(at=("drum",)))]
    assert told(*record) == [(2, "undescribed")]


def test_a_day_after_the_day_of_writing() -> None:
    assert told(entry(1, Remarked(), day="2026-03-15", written="2026-03-14T23:59:59")) == [(1, "future day")]
    assert told(entry(1, Remarked(), day="2026-03-14", written="2026-03-14T00:00:00")) == []


@pytest.mark.parametrize("time", ["", "9:30", "09:60", "24:01", "25:00", "0930", "09:30:00", "noon"])
def test_a_malformed_time(time: str) -> None:
    line = Entry(
        id="a", day=date(2026, 3, 14), time=time, written="2026-03-14T18:00:00", line=1, who="", words="",
        fact=Remarked(),
    )  # fmt: skip
    assert told(line) == [(1, "clock")]


@pytest.mark.parametrize("written", ["yesterday", "2026-03-14", "2026-13-14T10:00:00", "2026-03-14 10:00:00"])
def test_a_malformed_moment_is_told_once(written: str) -> None:
    assert told(entry(1, Remarked(), written=written)) == [(1, "clock")]


def test_a_session_with_a_malformed_time() -> None:
    assert told(entry(1, Held(start="9 o'clock", end="12:00"))) == [(1, "clock")]


def test_more_plugs_out_than_in_at_that_place() -> None:
    record = [
        entry(1, Blanked(at=("brake pipe",), number=2)),
        entry(2, Blanked(at=("fuel pipe",), number=4)),
        entry(3, Unblanked(at=("brake pipe",), number=3)),
    ]
    assert told(*record) == [(3, "blanking")]


def test_plugs_are_counted_in_reading_order_not_by_line() -> None:
    record = [
        entry(1, Unblanked(at=("brake pipe",), number=1), day="2026-03-14"),
        entry(2, Blanked(at=("brake pipe",), number=1), day="2026-03-13"),
    ]
    assert told(*record) == []


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_figure_without_end(value: float) -> None:
    assert told(entry(1, Measured(figures=(Quantity("?", value, "mm"),)))) == [(1, "figure")]


def test_a_figure_without_end_inside_a_correction() -> None:
    wrong = Struck(line=1, why="x", instead=Measured(figures=(Quantity("?", math.inf, "mm"),)))
    assert told(entry(1, Remarked()), entry(2, wrong)) == [(2, "figure")]


def test_a_second_beginning() -> None:
    one, two = DescribedVehicle(name="Marrowby Ten"), DescribedVehicle(name="Marrowby Twelve")
    assert told(entry(1, one), entry(2, two)) == [(2, "begun twice")]
    assert told(entry(1, one), entry(2, two), entry(3, Struck(line=1, why="wrong name"))) == []


def test_a_missing_line_and_a_doubled_one() -> None:
    assert told(entry(1, Remarked()), entry(4, Remarked())) == [(4, "numbering")]
    assert told(entry(1, Remarked()), entry(1, Remarked(), id="other")) == [(1, "numbering")]
    assert told(entry(2, Remarked())) == [(2, "numbering")]


def test_a_doubled_id() -> None:
    assert told(entry(1, Remarked(), id="same"), entry(2, Remarked(), id="same")) == [(2, "id")]


def test_faults_are_handed_over_all_at_once_by_line() -> None:
    record = [
        entry(1, TookOff(at=("drum",))),
        entry(2, Struck(line=7, why="x")),
        entry(3, Remarked(), day="2027-01-01", written="2026-03-14T10:00:00"),
    ]
    assert told(*record) == [(1, "undescribed"), (2, "strike"), (3, "future day")]
