"""Sessions as a calendar file (iCalendar, RFC 5545), out to a phone and in from one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime, time, timedelta

from dateutil.rrule import rrulestr
from icalendar import Calendar as CalendarFile
from icalendar import Event, vRecur
from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.ground.version import VERSION
from witnessmark.journal.facts import Arranged, CalledOff, Freed
from witnessmark.state.calendar import Calendar
from witnessmark.state.supply import Line

# So far ahead days that are called off are looked for, one by one. Our choice.
AHEAD = timedelta(days=3 * 366)
MOST_EVENTS = 2_000
MOST_BYTES = 5_000_000


class CalendarIn(Struct, frozen=True, kw_only=True):
    """What a file brings: facts to write, each with its words, and what is no session, with the reason."""

    facts: tuple[tuple[Arranged | CalledOff | Freed, str], ...]
    left_out: tuple[str, ...]


# ---- out


def calendar_out(calendar: Calendar, vehicle: str, now: datetime) -> bytes:
    """Every rule, with the days called off taken out of it, and every session more."""
    file = CalendarFile()
    file.add("prodid", f"-//Witness Mark//{VERSION}//EN")
    file.add("version", "2.0")
    for line in calendar.arranged:
        event = _rule_out(line, calendar)
        if event is not None:
            file.add_component(_named(event, f"rule-{line.line}", vehicle, now))
    for line in calendar.freed:
        for number, event in enumerate(_freed_out(line.fact)):
            file.add_component(_named(event, f"free-{line.line}-{number}", vehicle, now))
    return bytes(file.to_ical())


def _named(event: Event, key: str, vehicle: str, now: datetime) -> Event:
    event.add("uid", f"{key}@witnessmark")
    event.add("dtstamp", now)
    event.add("summary", f"Session: {vehicle or 'the vehicle'}")
    return event


def _rule_out(line: Line, calendar: Calendar) -> Event | None:
    fact: Arranged = line.fact
    since = _day(fact.since) or line.day
    start, end = _time(fact.start), _time(fact.end)
    if start is None or end is None:
        return None
    first = rrulestr(fact.rule, dtstart=datetime.combine(since, start)).after(
        datetime.combine(since, time()), inc=True
    )
    if first is None:
        return None
    event = Event()
    event.add("dtstart", first)
    event.add("dtend", datetime.combine(first.date(), end))
    event.add("rrule", vRecur.from_ical(fact.rule))
    if fact.helper:
        event.add("description", "with helper")
    rule = rrulestr(fact.rule, dtstart=first)
    for off in (one.fact for one in calendar.called_off):
        since_off, until_off = _day(off.first), _day(off.last) or _day(off.first)
        if since_off is not None and until_off is not None:
            until_off = min(until_off, since_off + AHEAD)
            for moment in rule.between(
                datetime.combine(since_off, time()), datetime.combine(until_off, time(23, 59)), inc=True
            ):
                event.add("exdate", moment)
    return event


def _freed_out(fact: Freed) -> Iterator[Event]:
    first, last = _day(fact.first), _day(fact.last) or _day(fact.first)
    start, end = _time(fact.start) or time(9), _time(fact.end) or time(12)
    while first is not None and last is not None and first <= last:
        event = Event()
        event.add("dtstart", datetime.combine(first, start))
        event.add("dtend", datetime.combine(first, end))
        if fact.helper:
            event.add("description", "with helper")
        yield event
        first += timedelta(days=1)


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _time(text: str) -> time | None:
    try:
        return time.fromisoformat(text)
    except ValueError:
        return None


# ---- in


def calendar_in(data: bytes, name: str) -> CalendarIn:
    """Read a calendar file: rules, the days taken out of them, and single sessions.

    BadInput where it is no calendar, or holds no event.
    """
    events = _events(data, name)
    facts: list[tuple[Arranged | CalledOff | Freed, str]] = []
    left: list[str] = []
    rules = 0
    for event in events:
        said = str(event.get("summary", "an event without a name"))
        span = _hours(event)
        if isinstance(span, str):
            left.append(f"{said}: {span}")
            continue
        start, end = span
        helper = "helper" in str(event.get("description", "")).lower()
        if event.get("rrule") is None:
            day = start.date().isoformat()
            one = Freed(first=day, start=f"{start:%H:%M}", end=f"{end:%H:%M}", helper=helper)
            facts.append((one, f"{said}, {day}, from {name}"))
            continue
        rule = _text(event["rrule"].to_ical())
        facts.append(
            (
                Arranged(
                    rule=rule,
                    start=f"{start:%H:%M}",
                    end=f"{end:%H:%M}",
                    since=start.date().isoformat(),
                    helper=helper,
                    also=rules > 0,
                ),
                f"{said}, from {name}",
            )
        )
        rules += 1
        facts += [(CalledOff(first=d), f"{said}, not on {d}, from {name}") for d in _left_out_days(event)]
    return CalendarIn(facts=tuple(facts), left_out=tuple(left))


def _events(data: bytes, name: str) -> Sequence[Event]:
    def trouble(given: str) -> BadInput:
        return BadInput(
            given=given,
            holds="a calendar file (.ics) with the sessions in it as events",
            do="Save the calendar once more as .ics; or say it: sessions Saturdays 9-13.",
        )

    if len(data) > MOST_BYTES:
        raise trouble(f"{name} is larger than {MOST_BYTES // 1_000_000} MB")
    try:
        file = CalendarFile.from_ical(data)
        events = [event for event in file.walk("VEVENT") if isinstance(event, Event)]
    except (ValueError, KeyError, IndexError, TypeError, AttributeError):
        raise trouble(f"{name} is no calendar file that can be read") from None
    if not 0 < len(events) <= MOST_EVENTS:
        raise trouble(f"{name} has {len(events)} events")
    return events


def _hours(event: Event) -> tuple[datetime, datetime] | str:
    """When it begins and ends, or why it is no session."""
    try:
        start, end = event.decoded("dtstart", None), event.decoded("dtend", None)
        duration = event.decoded("duration", None)
    except (ValueError, TypeError):
        return "its days cannot be read"
    if not isinstance(start, datetime):
        return "it has no hours"
    if not isinstance(end, datetime):
        end = start + duration if isinstance(duration, timedelta) else None
    if end is None or end.date() != start.date() or end <= start:
        return "it does not end on the day it begins"
    return start.replace(tzinfo=None), end.replace(tzinfo=None)


def _text(data: bytes | str) -> str:
    return data if isinstance(data, str) else data.decode("utf-8")


def _left_out_days(event: Event) -> Iterator[str]:
    listed = event.get("exdate", [])
    for one in listed if isinstance(listed, list) else [listed]:
        for value in one.dts:
            moment = value.dt
            yield (moment.date() if isinstance(moment, datetime) else moment).isoformat()
