"""Calendar files: read back by another library (vobject), brought in, and refused where they are none."""

from __future__ import annotations

from datetime import date, datetime

import pytest
import vobject

from tests.building import record
from witnessmark.exchange.calendar_file import calendar_in, calendar_out
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Arranged, CalledOff, DescribedVehicle, Freed
from witnessmark.plan.coming import coming
from witnessmark.state.calendar import Calendar
from witnessmark.state.standing import state_from

NOW = datetime(2026, 3, 7, 22, 0)
RULE = Arranged(rule="FREQ=WEEKLY;BYDAY=SA;BYMONTH=1,2,3,4,5,6,7,9,10,11,12", start="09:00", end="13:00")
FACTS = (
    RULE,
    Arranged(rule="FREQ=WEEKLY;INTERVAL=2;BYDAY=WE", start="19:00", end="21:00", helper=True, also=True),
    CalledOff(first="2026-04-04"),
    CalledOff(first="2026-05-01", last="2026-05-20", why="away"),
    Freed(first="2026-06-22", last="2026-06-23", start="10:00", end="16:00", helper=True),
)


def calendar_of(*facts: object) -> Calendar:
    return state_from(record(DescribedVehicle(name="x"), *facts)).calendar  # type: ignore[arg-type]


def days_of(calendar: Calendar, number: int = 60) -> list[tuple[date, int, int]]:
    return [(s.day, s.start, s.minutes) for s in coming(calendar, (), NOW, number).coming]


def read_elsewhere(data: bytes) -> list[tuple[date, int, int]]:
    """The sessions as the other library unfolds them, from the day after NOW."""
    found = []
    for event in vobject.readOne(data.decode("utf-8")).vevent_list:
        minutes = int((event.dtend.value - event.dtstart.value).total_seconds() // 60)
        moments = event.getrruleset(True) or [event.dtstart.value]
        for moment in moments:
            if moment > datetime(2028, 1, 1):
                break
            found.append((moment.date(), moment.hour * 60 + moment.minute, minutes))
    return sorted(one for one in found if one[0] > NOW.date())


def test_another_library_unfolds_it_to_the_same_sessions() -> None:
    calendar = calendar_of(*FACTS)
    ours = days_of(calendar)
    theirs = read_elsewhere(calendar_out(calendar, "the pickup", NOW))
    assert theirs[: len(ours)] == ours
    assert not any(date(2026, 8, 1) <= day <= date(2026, 8, 31) and start == 540 for day, start, _ in theirs)


def test_what_went_out_comes_in_as_the_same_sessions() -> None:
    before = calendar_of(*FACTS)
    brought = calendar_in(calendar_out(before, "the pickup", NOW), "x.ics")
    assert brought.left_out == ()
    after = calendar_of(*(fact for fact, _ in brought.facts))
    assert days_of(after) == days_of(before)
    promised = [s for s in coming(after, (), NOW, 60).coming if s.helper]
    assert promised == [s for s in coming(before, (), NOW, 60).coming if s.helper] != []


def test_a_file_of_a_phone_with_zone_and_days_without_hours_is_taken_as_far_as_it_goes() -> None:
    text = """BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//x//y//EN
BEGIN:VEVENT
UID:1
DTSTAMP:20260301T000000Z
SUMMARY:In the garage
DTSTART;TZID=Europe/London:20260314T093000
DURATION:PT3H
RRULE:FREQ=WEEKLY;COUNT=4
EXDATE;TZID=Europe/London:20260321T093000
END:VEVENT
BEGIN:VEVENT
UID:2
DTSTAMP:20260301T000000Z
SUMMARY:Birthday
DTSTART;VALUE=DATE:20260401
END:VEVENT
END:VCALENDAR
"""
    brought = calendar_in(text.replace("\n", "\r\n").encode(), "phone.ics")
    assert brought.left_out == ("Birthday: it has no hours",)
    days = [day for day, _, _ in days_of(calendar_of(*(fact for fact, _ in brought.facts)))]
    assert days == [date(2026, 3, 14), date(2026, 3, 28), date(2026, 4, 4)]


@pytest.mark.parametrize(
    "data",
    [b"", b"not a calendar", b"\xff\xfe\x00", b"BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n", b"BEGIN:VEVENT\r\n"],
)
def test_what_is_no_calendar_is_refused_with_what_would_hold(data: bytes) -> None:
    with pytest.raises(BadInput) as told:
        calendar_in(data, "x.ics")
    assert "calendar file" in told.value.holds
