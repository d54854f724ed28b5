from __future__ import annotations

from datetime import date

from tests.journal.lines import entry
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Opened, Remarked, Slackened, Struck, Tightened, TookOff
from witnessmark.journal.order import done_by, in_force, reading_order, standing, written_by

NUTS = ("wheel nuts, left rear",)


def lines(entries: list[Entry]) -> list[int]:
    return [e.line for e in entries]


def test_fridays_fact_written_on_sunday_stands_before_saturdays() -> None:
    saturday = entry(1, Tightened(at=NUTS), day="2026-03-14")
    friday_late = entry(2, Slackened(at=NUTS), day="2026-03-13", written="2026-03-15T20:00:00")
    assert lines(reading_order([saturday, friday_late])) == [2, 1]


def test_within_a_day_the_time_decides_then_the_line() -> None:
    untimed = entry(1, Remarked())
    noon = entry(2, Remarked(), time="12:00")
    morning = entry(3, Remarked(), time="08:30")
    noon_again = entry(4, Remarked(), time="12:00")
    assert lines(reading_order([untimed, noon_again, noon, morning])) == [3, 2, 4, 1]


def test_a_struck_line_and_its_strike_are_gone() -> None:
    record = [entry(1, TookOff(at=NUTS)), entry(2, Remarked()), entry(3, Struck(line=1, why="other side"))]
    assert lines(standing(record)) == [2]


def test_a_correction_takes_the_struck_lines_place_and_carries_the_strikes_number() -> None:
    record = [
        entry(1, TookOff(at=NUTS), time="08:00"),
        entry(2, Opened(at=("axle cover",)), time="09:00"),
        entry(
            3,
            Struck(line=1, why="other side", instead=Slackened(at=NUTS), words="slackened nuts"),
            who="helper",
        ),
    ]
    first, second = standing(record)
    assert (first.line, first.time, first.fact, first.words, first.who) == (
        3,
        "08:00",
        Slackened(at=NUTS),
        "slackened nuts",
        "helper",
    )
    assert second.line == 2


def test_a_correction_keeps_its_place_even_when_the_strike_was_made_days_later() -> None:
    record = [
        entry(1, TookOff(at=NUTS), day="2026-03-01"),
        entry(2, Tightened(at=NUTS), day="2026-03-02"),
        entry(3, Struck(line=1, why="slip", instead=Slackened(at=NUTS)), day="2026-04-01"),
    ]
    assert [e.fact for e in standing(record)] == [Slackened(at=NUTS), Tightened(at=NUTS)]


def test_of_two_strikes_on_one_line_the_last_holds() -> None:
    record = [
        entry(1, TookOff(at=NUTS)),
        entry(2, Struck(line=1, why="slip", instead=Slackened(at=NUTS))),
        entry(3, Struck(line=1, why="it never happened")),
    ]
    assert standing(record) == []
    assert in_force(record) == {1: record[2]}


def test_a_strike_that_points_at_nothing_changes_nothing() -> None:
    kept = entry(1, TookOff(at=NUTS))
    at_itself = entry(2, Struck(line=2, why="x"))
    at_a_strike = entry(3, Struck(line=2, why="x"))
    at_no_line = entry(4, Struck(line=99, why="x"))
    forward = entry(5, Struck(line=6, why="x"))
    later = entry(6, Remarked())
    assert standing([kept, at_itself, at_a_strike, at_no_line, forward, later]) == [kept, later]


def test_written_by_takes_what_was_written_by_the_end_of_that_day() -> None:
    record = [
        entry(1, Remarked(), day="2026-03-01", written="2026-03-01T23:59:59"),
        entry(2, Remarked(), day="2026-03-01", written="2026-03-02T00:00:00"),
    ]
    assert lines(written_by(record, date(2026, 3, 1))) == [1]
    assert lines(written_by(record, date(2026, 3, 2))) == [1, 2]


def test_done_by_takes_what_was_done_by_then_and_every_strike() -> None:
    record = [
        entry(1, Remarked(), day="2026-03-01"),
        entry(2, Remarked(), day="2026-03-09"),
        entry(3, Struck(line=1, why="x"), day="2026-03-20"),
    ]
    assert lines(done_by(record, date(2026, 3, 5))) == [1, 3]
