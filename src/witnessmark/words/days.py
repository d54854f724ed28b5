"""Days as they are typed: "yesterday", "on Friday", "14 March", "till june"."""

from __future__ import annotations

import re
from datetime import date, timedelta

from msgspec import Struct

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_DAY = "|".join(f"{d}|{d[:3]}" for d in _DAYS) + "|tues|weds|thur|thurs"
_MONTH = (
    "january|february|march|april|may|june|july|august|september|october|november|december|sept|"
    + "|".join(_MONTHS)
)
_PART = r"(?:\s+(?:morning|afternoon|evening|night|am|pm))?"
_ORDINAL = r"([0-9]{1,2})(?:st|nd|rd|th)?"
_YEAR = r"(?:,? ([0-9]{4}))?"
_SAID = "day before yesterday|yesterday|last night|today|tonight|tomorrow|2day|2nite|2moro"
_SAID += "|this (?:morning|afternoon|evening)"
_COUNT = "one|two|three|four|five|six|a couple of|couple of|a"
_NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "a": 1}
_LEADS = "on|last|this|next|since|until|till|til|by|due|for|from|come"
_MONTH_LEADS = "till|until|til|by|due|end of|early|mid|late|back in|ready in"

_RULES = (
    ("iso", r"\b(?:on )?([0-9]{4})-([0-9]{2})-([0-9]{2})\b"),
    ("slash", r"(?<![\w/.])(?:on )?([0-9]{1,2})/([0-9]{1,2})/((?:[0-9]{2}){1,2})(?![\w/])"),
    ("slash", r"\b(?:on|due|by) ([0-9]{1,2})/([0-9]{1,2})(?![\w/\"]|\s?(?:in|un|bs|ba))"),
    ("day_month", rf"(?<![\w.:/])(?:on )?(?:the )?{_ORDINAL}(?: of)? ({_MONTH})\b\.?{_YEAR}"),
    ("month_day", rf"\b(?:on )?({_MONTH})\.? {_ORDINAL}\b{_YEAR}(?![:.]?[0-9])"),
    ("month", rf"\b(?:{_MONTH_LEADS}) (?:early |mid |late )?({_MONTH})\b(?! ?[0-9])"),
    (
        "date",
        r"\b(?:(?:on|by|for|till|til|until|due|since) the|till?|until|by|due|back)"
        r" ([0-9]{1,2})(?:st|nd|rd|th)"
        r"(?=\s*(?:$|[,.;)])|\s+(?:he|she|they|with|at|if|or|and|hopefully|says|said)\b)",
    ),
    ("ago", rf"\b([0-9]{{1,2}}|{_COUNT}) (day|week)s? (?:ago|back)\b"),
    ("said", rf"\b({_SAID}){_PART}\b"),
    ("week_on", rf"\b(?:a )?(?:(?:week|fortnight) on ({_DAY})|(?:on )?({_DAY}) (?:week|fortnight))\b"),
    ("weekday", rf"\b(?:({_LEADS}) )?({_DAY}){_PART}(?!\w)"),
)
_PATTERNS = tuple((rule, re.compile(pattern, re.I)) for rule, pattern in _RULES)


class FoundDay(Struct, frozen=True):
    """A day found in a line.

    past    the day meant when something was done; None for what has still to come
    coming  the day meant when something is due
    """

    start: int
    end: int
    past: date | None
    coming: date


def find_days(text: str, today: date) -> tuple[FoundDay, ...]:
    """Every day in a line, in order; what is no day of the calendar is left alone."""
    found: list[FoundDay] = []
    for rule, pattern in _PATTERNS:
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


def _date(match: re.Match[str], today: date) -> Days:
    """A day of this month or the nearest one that has it."""
    months = [
        (today.year + (today.month - 1 + step) // 12, (today.month - 1 + step) % 12 + 1)
        for step in range(-3, 4)
    ]
    days = [d for year, month in months if 0 < year < 10_000 and (d := _on(year, month, int(match[1])))]
    past, coming = [d for d in days if d <= today], [d for d in days if d >= today]
    return (past[-1] if past else None, coming[0]) if coming else None


def _week_on(match: re.Match[str], today: date) -> Days:
    """ "Friday week" is the Friday after the coming one."""
    ahead = ([d[:3] for d in _DAYS].index((match[1] or match[2]).lower()[:3]) - today.weekday()) % 7 or 7
    day = _moved(today, ahead + (14 if "fortnight" in match[0].lower() else 7))
    return (None, day) if day else None


def _ago(match: re.Match[str], today: date) -> Days:
    said = match[1].lower()
    count = 2 if "couple" in said else _NUMBERS[said] if said in _NUMBERS else int(said)
    day = _moved(today, -count * (7 if match[2].lower() == "week" else 1))
    return (day, day) if day else None


def _said(match: re.Match[str], today: date) -> Days:
    said = match[1].lower()
    if said in ("tomorrow", "2moro"):
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


_READ = {
    "iso": _iso,
    "slash": _slash,
    "day_month": _day_month,
    "month_day": _month_day,
    "month": _month_only,
    "date": _date,
    "week_on": _week_on,
    "ago": _ago,
    "said": _said,
    "weekday": _weekday,
}


def _year(typed: str | None) -> int | None:
    return None if not typed else int(typed) + (2000 if len(typed) == 2 else 0)


def _month(name: str) -> int:
    return _MONTHS.index(name.lower()[:3]) + 1


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
