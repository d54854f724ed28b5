"""The sessions that come: by the calendar in the record, else as they were held, else a guess."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date, datetime, time, timedelta
from itertools import islice
from statistics import median_low

from dateutil.rrule import rrulestr
from msgspec import Struct

from witnessmark.journal.facts import Arranged, CalledOff, Freed, Held
from witnessmark.state.calendar import Calendar
from witnessmark.state.supply import Line

# Where no record tells otherwise. Our choice.
GUESSED = Arranged(rule="FREQ=WEEKLY;BYDAY=SA", start="09:00", end="12:00")
BY_CALENDAR, AS_HELD, A_GUESS = "by your calendar", "as you have held them", "a guess until you say when"

# Sessions held in so many days back tell when the next will be; so many there must be. Our choices.
LOOK_BACK, LEAST_HELD = 182, 4

# A rule that gives no session in so many days gives none.
FURTHEST = 366 * 4

_TOO_OFTEN = ("SECONDLY", "MINUTELY", "HOURLY")
_CODES = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")


class Coming(Struct, frozen=True, order=True):
    """One session that comes: its day, when it begins in minutes after midnight, its length in minutes.

    helper  promised, where the calendar says so
    """

    day: date
    start: int
    minutes: int
    helper: bool = False

    @property
    def moment(self) -> datetime:
        return datetime.combine(self.day, time(self.start // 60, self.start % 60))

    @property
    def week(self) -> str:
        """The week of the calendar (ISO 8601).

        >>> Coming(date(2026, 6, 6), 540, 180).week
        'week 23'
        """
        return f"week {self.day.isocalendar().week}"


class Sessions(Struct, frozen=True, kw_only=True):
    """What comes, soonest first, and where that is known from."""

    coming: tuple[Coming, ...]
    known: str


def coming(calendar: Calendar, held: Sequence[Line], now: datetime, number: int) -> Sessions:
    """The next sessions that are not over: at most so many, fewer where the calendar ends or never opens."""
    today = now.date()
    rules, known = _rules(calendar, held, today)
    found = sorted(
        set(islice(_open(calendar, rules, today), number + 1)) | set(_freed(calendar, rules, today))
    )
    left = [one for one in found if one.moment + timedelta(minutes=one.minutes) > now]
    return Sessions(coming=tuple(left[:number]), known=known)


def expected(calendar: Calendar, held: Sequence[Line], today: date, days: int) -> tuple[Coming, ...]:
    """The sessions that by the same rules should have been, in so many days before today."""
    rules, _ = _rules(calendar, held, today)
    since = today - timedelta(days=days)
    found = [one for line in rules for one in _of_rule(line.fact, since, since, today)]
    return tuple(one for one in found if one.day < today and not _is_off(calendar, one.day))


def _rules(calendar: Calendar, held: Sequence[Line], today: date) -> tuple[Sequence[Line], str]:
    if calendar.arranged:
        return calendar.arranged, BY_CALENDAR
    learned = as_held(held, today)
    return [Line(0, today, learned or GUESSED)], AS_HELD if learned else A_GUESS


def as_held(held: Sequence[Line], today: date) -> Arranged | None:
    """The rule that sessions held of late follow: their usual weekday, start and length; None of too few."""
    late = [line for line in held if 0 <= (today - line.day).days <= LOOK_BACK and _minutes(line.fact) > 0]
    if len(late) < LEAST_HELD:
        return None
    weekday = Counter(line.day.weekday() for line in late).most_common(1)[0][0]
    start = median_low(_clock(line.fact.start) for line in late)
    length = median_low(_minutes(line.fact) for line in late)
    end = min(start + length, 24 * 60 - 1)
    return Arranged(rule=f"FREQ=WEEKLY;BYDAY={_CODES[weekday]}", start=_said(start), end=_said(end))


def length_held(fact: Held) -> int:
    """Minutes a session was held, 0 where its hours are not told."""
    return max(0, _minutes(fact))


def _minutes(fact: Held) -> int:
    start, end = _clock(fact.start), _clock(fact.end)
    return end - start if 0 <= start < end else 0


def _clock(text: str) -> int:
    """Minutes after midnight, -1 where it is no time."""
    hour, colon, minute = text.partition(":")
    if not (colon and hour.isdigit() and minute.isdigit()):
        return -1
    return int(hour) * 60 + int(minute) if int(hour) <= 24 and int(minute) < 60 else -1


def _said(minutes: int) -> str:
    return f"{minutes // 60:02}:{minutes % 60:02}"


def _open(calendar: Calendar, rules: Sequence[Line], today: date) -> Iterator[Coming]:
    """Sessions by rule that are not called off, soonest first."""
    last = today + timedelta(days=FURTHEST)
    every = sorted(
        one for line in rules for one in _of_rule(line.fact, _since(line), today, last) if one.minutes > 0
    )
    yield from (one for one in every if not _is_off(calendar, one.day))


def _since(line: Line) -> date:
    return _day(line.fact.since) or line.day


def _of_rule(fact: Arranged, since: date, first: date, last: date) -> Iterator[Coming]:
    """The sessions of one rule between two days; none where the rule cannot be read."""
    start, end = _clock(fact.start), _clock(fact.end)
    if not 0 <= start < end or any(often in fact.rule.upper() for often in _TOO_OFTEN):
        return
    try:
        rule = rrulestr(fact.rule, dtstart=datetime.combine(since, time()))
        days = rule.between(datetime.combine(first, time()), datetime.combine(last, time()), inc=True)
    except (ValueError, TypeError, KeyError, IndexError, AttributeError, OverflowError):
        return
    for moment in days[:FURTHEST]:
        yield Coming(moment.date(), start, end - start, fact.helper)


def unreadable(fact: Arranged) -> bool:
    """Whether a rule says nothing that can be followed."""
    monday = date(2024, 1, 1)
    return not any(True for _ in islice(_of_rule(fact, monday, monday, monday + timedelta(days=FURTHEST)), 1))


def _is_off(calendar: Calendar, day: date, after: int = -1) -> bool:
    """Whether a day is called off; a day that was freed, only by a line after that."""
    off = (line.fact for line in calendar.called_off if line.line > after)
    return any(_first(fact) <= day <= _last(fact) for fact in off)


def _freed(calendar: Calendar, rules: Sequence[Line], today: date) -> Iterator[Coming]:
    """Sessions more; told without hours they are as long as the usual one."""
    usual = rules[0].fact
    for line in calendar.freed:
        fact: Freed = line.fact
        first, last = _first(fact), _last(fact)
        start, end = _clock(fact.start), _clock(fact.end)
        if not 0 <= start < end:
            start, end = _clock(usual.start), _clock(usual.end)
        for number in range(min(FURTHEST, (last - first).days + 1) if last >= first else 0):
            day = first + timedelta(days=number)
            if day >= today and 0 <= start < end and not _is_off(calendar, day, after=line.line):
                yield Coming(day, start, end - start, fact.helper)


def _first(fact: CalledOff | Freed) -> date:
    return _day(fact.first) or date.max


def _last(fact: CalledOff | Freed) -> date:
    return _day(fact.last) or _day(fact.first) or date.min


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
