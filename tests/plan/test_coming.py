"""Sessions that come: by rule and exception, as held, or guessed; and calendars that never open."""

from __future__ import annotations

from datetime import date, datetime

import pytest

from tests.building import record
from witnessmark.journal.facts import AnyFact, Arranged, CalledOff, DescribedVehicle, Freed, Held
from witnessmark.plan.attendance import attendance
from witnessmark.plan.coming import A_GUESS, AS_HELD, BY_CALENDAR, Sessions, coming, unreadable
from witnessmark.state.standing import State, state_from

FRIDAY = datetime(2026, 7, 24, 20, 0)
SATURDAYS = Arranged(rule="FREQ=WEEKLY;BYDAY=SA;BYMONTH=1,2,3,4,5,6,7,9,10,11,12", start="09:00", end="13:00")


def state_after(*facts: AnyFact, days_apart: int = 0) -> State:
    return state_from(record(DescribedVehicle(name="x"), *facts, days_apart=days_apart))


def next_days(*facts: AnyFact, number: int = 4, now: datetime = FRIDAY) -> Sessions:
    state = state_after(*facts)
    return coming(state.calendar, state.supply.held, now, number)


def test_saturdays_but_not_in_august() -> None:
    found = next_days(SATURDAYS)
    assert found.known == BY_CALENDAR
    assert [s.day for s in found.coming] == [
        date(2026, 7, 25), date(2026, 9, 5), date(2026, 9, 12), date(2026, 9, 19)
    ]  # fmt: skip
    assert {s.minutes for s in found.coming} == {240}


def test_called_off_is_left_out_and_freed_comes_in() -> None:
    off = CalledOff(first="2026-07-25")
    free = Freed(first="2026-08-10", last="2026-08-11", start="10:00", end="12:00", helper=True)
    days = next_days(SATURDAYS, off, free).coming
    assert [(s.day.isoformat(), s.helper) for s in days[:3]] == [
        ("2026-08-10", True), ("2026-08-11", True), ("2026-09-05", False)
    ]  # fmt: skip


def test_a_freed_day_called_off_later_is_off_and_one_freed_after_that_is_on() -> None:
    free, off = (
        Freed(first="2026-08-10", start="10:00", end="12:00"),
        CalledOff(first="2026-08-01", last="2026-08-31"),
    )
    assert date(2026, 8, 10) not in {s.day for s in next_days(SATURDAYS, free, off).coming}
    assert date(2026, 8, 10) in {s.day for s in next_days(SATURDAYS, off, free).coming}


def test_a_new_rule_takes_the_place_of_the_old_and_one_more_stands_beside_it() -> None:
    sundays = Arranged(rule="FREQ=WEEKLY;BYDAY=SU", start="10:00", end="12:00")
    evenings = Arranged(rule="FREQ=WEEKLY;BYDAY=TU", start="19:00", end="21:00", also=True)
    weekdays = {s.day.weekday() for s in next_days(SATURDAYS, sundays, evenings, number=8).coming}
    assert weekdays == {6, 1}


def test_the_session_that_is_running_still_counts_and_one_that_is_over_does_not() -> None:
    running = next_days(SATURDAYS, now=datetime(2026, 7, 25, 12, 0)).coming[0].day
    over = next_days(SATURDAYS, now=datetime(2026, 7, 25, 13, 0)).coming[0].day
    assert (running, over) == (date(2026, 7, 25), date(2026, 9, 5))


def test_without_a_calendar_it_follows_how_they_were_held() -> None:
    held = [Held(start="10:00", end="12:30") for _ in range(6)]
    state = state_after(*held, days_apart=7)
    found = coming(state.calendar, state.supply.held, datetime(2026, 4, 20, 20), 2)
    assert found.known == AS_HELD
    assert [(s.day.weekday(), s.start, s.minutes) for s in found.coming] == [(5, 600, 150)] * 2


def test_with_nothing_to_go_by_it_is_a_guess_and_says_so() -> None:
    assert next_days().known == A_GUESS


@pytest.mark.parametrize(
    "rule",
    ["", "FREQ=SECONDLY", "FREQ=NEVER", "BYDAY=SA", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30",
     "FREQ=WEEKLY;BYDAY=XX", "FREQ=WEEKLY;UNTIL=20200101"],
)  # fmt: skip
def test_a_rule_that_never_opens_gives_no_session_and_never_runs_on(rule: str) -> None:
    fact = Arranged(rule=rule, start="09:00", end="12:00")
    assert next_days(fact).coming == ()
    assert unreadable(fact) or "UNTIL" in rule


@pytest.mark.parametrize(
    ("start", "end"), [("12:00", "09:00"), ("", "12:00"), ("25:00", "26:00"), ("9", "10")]
)
def test_hours_that_are_none_give_no_session(start: str, end: str) -> None:
    assert next_days(Arranged(rule="FREQ=DAILY", start=start, end=end)).coming == ()


def test_attendance_counts_what_was_held_of_what_was_arranged() -> None:
    """Six of ten Saturdays, two of them with a helper; the starts are worth four sessions each."""
    rule = Arranged(rule="FREQ=WEEKLY;BYDAY=SA", start="09:00", end="12:00", since="2026-03-07")
    held = [Held(start="09:00", end="12:00", helper=n < 2) for n in range(6)]
    state = state_after(rule, *held, days_apart=7)
    met = attendance(state.calendar, state.supply.held, date(2026, 5, 25))
    assert met.counted == 6
    assert met.held == pytest.approx((3.6 + 6, 0.4 + 4))
    assert met.helped == pytest.approx((1 + 2, 3 + 4))
