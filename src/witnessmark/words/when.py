"""Days and times as they are typed: "yesterday", "on Friday", "14 March", "at 10:40", "7pm till 9.15"."""

from __future__ import annotations

import re
from datetime import date, timedelta

from msgspec import Struct

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS = ("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december")  # fmt: skip
_DAY = "|".join(f"{d}|{d[:3]}" for d in _DAYS) + "|tues|weds|thur|thurs"
_MONTH = "|".join(f"{m}|{m[:3]}" for m in _MONTHS) + "|sept"
_PART = r"(?:\s+(?:morning|afternoon|evening|night|am|pm))?"
_NUMBERS = {
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "a": 1,
    "couple of": 2,
    "a couple of": 2,
}

_RULES = (
    ("iso", re.compile(r"\b(?:on )?([0-9]{4})-([0-9]{2})-([0-9]{2})\b")),
    ("slash", re.compile(r"(?<![\w/.])(?:on )?([0-9]{1,2})/([0-9]{1,2})/((?:[0-9]{2}){1,2})(?![\w/])", re.I)),
    ("slash", re.compile(r"\b(?:on|due|by) ([0-9]{1,2})/([0-9]{1,2})(?![\w/\"]|\s?(?:in|un|bs|ba))", re.I)),
    ("day_month", re.compile(rf"(?<![\w.:/])(?:on )?(?:the )?([0-9]{{1,2}})(?:st|nd|rd|th)?(?: of)? ({_MONTH})\b\.?(?:,? ([0-9]{{4}}))?", re.I)),
    ("month_day", re.compile(rf"\b(?:on )?({_MONTH})\.? ([0-9]{{1,2}})(?:st|nd|rd|th)?\b(?:,? ([0-9]{{4}}))?(?![:.]?[0-9])", re.I)),
    ("month", re.compile(rf"\b(?:till|until|til|by|due|end of|early|mid|late|back in|ready in) (?:early |mid |late )?({_MONTH})\b(?! ?[0-9])", re.I)),
    ("ago", re.compile(r"\b([0-9]{1,2}|one|two|three|four|five|six|a couple of|couple of|a) (day|week)s? (?:ago|back)\b", re.I)),
    ("said", re.compile(rf"\b(day before yesterday|yesterday|last night|today|tonight|tomorrow|this (?:morning|afternoon|evening)){_PART}\b", re.I)),
    ("weekday", re.compile(rf"\b(?:(on|last|this|next|since|until|till|til|by|due|for|from|come) )?({_DAY}){_PART}(?!\w)", re.I)),
)  # fmt: skip

_CLOCK = r"(?:[01]?[0-9]|2[0-4])"
_TIME = re.compile(
    rf"(?<![\w.,:/£€$])(?:(?:at|about|around|circa|by) )?(?:({_CLOCK})(?::([0-5][0-9])|\.([0-5][0-9])(?=\s?[ap]m\b))\s?([ap]m\b|hrs\b)?|({_CLOCK})\s?([ap]m)\b|(noon|midday|midnight)\b)(?![\w:/]|[.,][0-9])",
    re.I,
)
_AT_DOT = re.compile(
    rf"\b(?:at|spark|weld|arc|stopped|finished|since|by) ({_CLOCK})\.([0-5][0-9])(?![\w.,:/%])(?!\s?(?:mm|in|nm|n\.m|lbf|l|mins?|hours?|hrs|bar|psi|v|kg)\b)",
    re.I,
)
_HALF_PAST = re.compile(r"\b(half past|half|quarter past|quarter to) (one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[0-9]{1,2})\b(?! ?(?:an|hour|inch|in|mm|turn|pint|l|day))", re.I)  # fmt: skip
_ENDPOINT = rf"(?:({_CLOCK})(?:[:.]([0-5][0-9]))?\s?([ap]m)?|(noon|midday|midnight))"
_RANGE = re.compile(
    rf"(?<![\w.,:/£€$])(?:from |between )?{_ENDPOINT}\s?(?:to|till|until|til|thru|through|and|-|–|—)\s?(?:about |gone )?{_ENDPOINT}(?![\w:/]|[.,][0-9])(?!\s?(?:mm|nm|n·m|lbf|l|km|miles?|days?|weeks?|h|hours?|mins?|bar|psi|v|kg)\b|\s?[%°\"])",
    re.I,
)
_HOURS_SAID = {
    w: n
    for n, w in enumerate(
        [
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
        ]
    )
}


class FoundDay(Struct, frozen=True):
    """A day found in a line.

    past    the day meant when something was done; None for what has still to come
    coming  the day meant when something is due
    """

    start: int
    end: int
    past: date | None
    coming: date


class FoundTime(Struct, frozen=True):
    """A time of day, "HH:MM", or two of them with `until`."""

    start: int
    end: int
    time: str
    until: str = ""
    shaky: bool = False


def find_days(text: str, today: date) -> tuple[FoundDay, ...]:
    """Every day in a line, in order; what is no day of the calendar is left alone."""
    found: list[FoundDay] = []
    for rule, pattern in _RULES:
        for match in pattern.finditer(text):
            if any(f.start < match.end() and match.start() < f.end for f in found):
                continue
            days = _READ[rule](match, today)
            if days is not None:
                found.append(FoundDay(match.start(), match.end(), *days))
    return tuple(sorted(found, key=lambda f: f.start))


Days = tuple[date | None, date] | None


def _iso(match: re.Match[str], today: date) -> Days:
    return _dated(int(match[1]), int(match[2]), int(match[3]), today)


def _slash(match: re.Match[str], today: date) -> Days:
    year = match[3] if match.re.groups == 3 else None
    return _dated(_year(year), int(match[2]), int(match[1]), today)


def _day_month(match: re.Match[str], today: date) -> Days:
    return _dated(_year(match[3]), _month(match[2]), int(match[1]), today)


def _month_day(match: re.Match[str], today: date) -> Days:
    return _dated(_year(match[3]), _month(match[1]), int(match[2]), today)


def _month_only(match: re.Match[str], today: date) -> Days:
    """A month alone is its first day, and always still to come."""
    found = _dated(None, _month(match[1]), 1, today)
    return (None, found[1]) if found else None


def _ago(match: re.Match[str], today: date) -> Days:
    said = match[1].lower()
    count = _NUMBERS[said] if said in _NUMBERS else int(said)
    day = _moved(today, -count * (7 if match[2].lower() == "week" else 1))
    return (day, day) if day else None


def _said(match: re.Match[str], today: date) -> Days:
    said = match[1].lower()
    if said == "tomorrow":
        day = _moved(today, 1)
        return (None, day) if day else None
    back = 2 if said.startswith("day before") else 1 if said in ("yesterday", "last night") else 0
    day = _moved(today, -back)
    return (day, day) if day else None


def _weekday(match: re.Match[str], today: date) -> Days:
    lead, name = (match[1] or "").lower(), match[2].lower()
    if name in ("sat", "sun", "mon", "wed", "fri") and not lead and match[2][0].islower() and _is_word(match):
        return None
    ahead = ([d[:3] for d in _DAYS].index(name[:3]) - today.weekday()) % 7
    behind = (7 - ahead) % 7
    if lead == "last" and behind == 0:
        behind = 7
    past, coming = _moved(today, -behind), _moved(today, ahead or 7)
    if coming is None:
        return None
    return (None if lead in ("next", "until", "till", "til", "by", "due", "come") else past, coming)


def _is_word(match: re.Match[str]) -> bool:
    """ "Sat" and "sun" are words of their own: a day only at the end of a line."""
    return match[2].lower() in ("sat", "sun") and bool(match.string[match.end() :].strip(" .,;!"))


_READ = {"iso": _iso, "slash": _slash, "day_month": _day_month, "month_day": _month_day, "month": _month_only, "ago": _ago, "said": _said, "weekday": _weekday}  # fmt: skip


def _year(typed: str | None) -> int | None:
    return None if not typed else int(typed) + (2000 if len(typed) == 2 else 0)


def _month(name: str) -> int:
    return [m[:3] for m in _MONTHS].index(name.lower()[:3]) + 1


def _moved(day: date, by: int) -> date | None:
    try:
        return day + timedelta(days=by)
    except OverflowError:
        return None


def _dated(year: int | None, month: int, day: int, today: date) -> Days:
    """The day told; without a year the nearest one behind, and the nearest ahead."""
    if year is not None:
        told = _on(year, month, day)
        return None if told is None else ((told if told <= today else None), told)
    years = [d for y in range(today.year - 4, today.year + 5) if (d := _on(y, month, day))]
    past, coming = [d for d in years if d <= today], [d for d in years if d >= today]
    return (past[-1] if past else None, coming[0]) if coming else None


def _on(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def find_times(text: str) -> tuple[FoundTime, ...]:
    """Every time of day, and every "from … to …", in order."""
    found: list[FoundTime] = [r for m in _RANGE.finditer(text) if (r := _range(m, text))]
    for pattern, read in ((_TIME, _time), (_AT_DOT, _dotted), (_HALF_PAST, _half_past)):
        for match in pattern.finditer(text):
            one = read(match)
            if one and not any(f.start < one.end and one.start < f.end for f in found):
                found.append(one)
    return tuple(sorted(found, key=lambda f: f.start))


def _time(match: re.Match[str]) -> FoundTime:
    if match[7]:
        return FoundTime(match.start(), match.end(), "00:00" if match[7].lower() == "midnight" else "12:00")
    hour, minute = int(match[1] or match[5]), int(match[2] or match[3] or 0)
    half = (match[4] or match[6] or "").lower()
    return FoundTime(match.start(), match.end(), _clock(hour, minute, half))


def _dotted(match: re.Match[str]) -> FoundTime:
    return FoundTime(match.start(1), match.end(), _clock(int(match[1]), int(match[2]), ""))


def _half_past(match: re.Match[str]) -> FoundTime | None:
    said = match[2].lower()
    hour = _HOURS_SAID[said] if said in _HOURS_SAID else int(said)
    if not 1 <= hour <= 12:
        return None
    minute = {"quarter past": 15, "quarter to": 45}.get(match[1].lower(), 30)
    hour = hour - 1 if minute == 45 else hour
    return FoundTime(match.start(), match.end(), _clock(hour, minute, "pm" if hour < 8 else ""), shaky=True)


def _clock(hour: int, minute: int, half: str) -> str:
    if half == "pm" and hour < 12:
        hour += 12
    elif half == "am" and hour == 12:
        hour = 0
    return f"{hour % 24:02}:{minute:02}"


def _range(match: re.Match[str], text: str) -> FoundTime | None:
    """Two times; bare hours count only where a session is spoken of, and what is guessed is shaky."""
    bare = all(":" not in (match[0]) and not match[g] for g in (2, 3, 4, 6, 7, 8))
    spoken = re.search(
        r"\b(held|session|garage|workshop|shed|barn|lockup|worked|working|in from|out there)\b", text, re.I
    )
    if (bare and not spoken) or ("and" in match[0].lower() and not match[0].lower().startswith("between")):
        return None
    first, last = _end(match, 1), _end(match, 5)
    shaky = False
    if not match[3] and not match[7] and first < 7 * 60 and ":" not in match[0]:
        first, last, shaky = first + 720, last + (720 if last < 720 else 0), True
    if (
        match[7]
        and not match[3]
        and match[7].lower() == "pm"
        and first < 720
        and first + 720 < last
        and first < 7 * 60
    ):
        first, shaky = first + 720, True
    if last <= first and last + 720 > first and not match[7]:
        last += 720
    if not (0 <= first < 1440 and 0 <= last <= 1440 and first != last):
        return None
    return FoundTime(match.start(), match.end(), _hhmm(first), _hhmm(last), shaky)


def _end(match: re.Match[str], group: int) -> int:
    if match[group + 3]:
        return 1440 if match[group + 3].lower() == "midnight" else 720
    hour, minute = int(match[group]), int(match[group + 1] or 0)
    read = _clock(hour, minute, (match[group + 2] or "").lower())
    return int(read[:2]) * 60 + int(read[3:])


def _hhmm(minutes: int) -> str:
    return f"{minutes // 60:02}:{minutes % 60:02}"
