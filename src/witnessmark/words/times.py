"""Times of day as they are typed: "at 10:40", "7pm", "9:00-12:30", "7pm till 9.15"."""

from __future__ import annotations

import re

from msgspec import Struct

_CLOCK = r"(?:[01]?[0-9]|2[0-4])"
_MINUTE = r"([0-5][0-9])"
_SPOKEN = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_HOURS_SAID = {word: hour for hour, word in enumerate(_SPOKEN.split("|"), 1)}
_FREE_BEFORE = r"(?<![\w.,:/£€$])"
_FREE_AFTER = r"(?![\w:/]|[.,][0-9])"
# A unit behind it makes it a figure.
_NO_UNIT = r"(?!\s?(?:mm|nm|n·m|lbf|l|km|miles?|days?|weeks?|h|hours?|mins?|bar|psi|v|kg)\b|\s?[%°\"])"
_NO_SMALL_UNIT = r"(?!\s?(?:mm|in|nm|n\.m|lbf|l|mins?|hours?|hrs|bar|psi|v|kg)\b)"

_TIME = re.compile(
    rf"{_FREE_BEFORE}(?:(?:at|about|around|circa|by) )?"
    rf"(?:({_CLOCK})(?::{_MINUTE}|\.{_MINUTE}(?=\s?[ap]m\b))\s?([ap]m\b|hrs\b)?"
    rf"|({_CLOCK})\s?([ap]m)\b|(noon|midday|midnight)\b){_FREE_AFTER}",
    re.I,
)
_AT_DOT = re.compile(
    rf"\b(?:at|spark|weld|arc|stopped|finished|since|by) ({_CLOCK})\.{_MINUTE}(?![\w.,:/%]){_NO_SMALL_UNIT}",
    re.I,
)
_HALF_PAST = re.compile(
    rf"\b(half past|half|quarter past|quarter to) ({_SPOKEN}|[0-9]{{1,2}})\b"
    r"(?! ?(?:an|hour|inch|in|mm|turn|pint|l|day))",
    re.I,
)
_ENDPOINT = rf"(?:({_CLOCK})(?:[:.]{_MINUTE})?\s?([ap]m)?|(noon|midday|midnight))"
_RANGE = re.compile(
    rf"{_FREE_BEFORE}(?:from |between )?{_ENDPOINT}\s?(?:to|till|until|til|thru|through|and|-|–|—)\s?"
    rf"(?:about |gone )?{_ENDPOINT}{_FREE_AFTER}{_NO_UNIT}",
    re.I,
)
_SESSION = re.compile(
    r"\b(held|session|garage|workshop|shed|barn|lockup|worked|working|in from|out there)\b", re.I
)
_EARLY = 7 * 60
_NOON = 720


class FoundTime(Struct, frozen=True):
    """A time of day, "HH:MM", or two of them with `until`."""

    start: int
    end: int
    time: str
    until: str = ""
    shaky: bool = False


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
    said = match[0].lower()
    bare = ":" not in said and not any(match[g] for g in (2, 3, 4, 6, 7, 8))
    if (bare and not _SESSION.search(text)) or ("and" in said and not said.startswith("between")):
        return None
    first, last, shaky = _afternoon(match, _end(match, 1), _end(match, 5))
    if last <= first < last + _NOON and not match[7]:
        last += _NOON
    if not (0 <= first < 2 * _NOON and 0 <= last <= 2 * _NOON and first != last):
        return None
    return FoundTime(match.start(), match.end(), _hhmm(first), _hhmm(last), shaky)


def _afternoon(match: re.Match[str], first: int, last: int) -> tuple[int, int, bool]:
    """Early hours with neither am nor pm are taken for the afternoon, which is a guess."""
    if match[3] or first >= _EARLY:
        return first, last, False
    if not match[7] and ":" not in match[0]:
        return first + _NOON, last + (_NOON if last < _NOON else 0), True
    if (match[7] or "").lower() == "pm" and first + _NOON < last:
        return first + _NOON, last, True
    return first, last, False


def _end(match: re.Match[str], group: int) -> int:
    if match[group + 3]:
        return 1440 if match[group + 3].lower() == "midnight" else 720
    hour, minute = int(match[group]), int(match[group + 1] or 0)
    read = _clock(hour, minute, (match[group + 2] or "").lower())
    return int(read[:2]) * 60 + int(read[3:])


def _hhmm(minutes: int) -> str:
    return f"{minutes // 60:02}:{minutes % 60:02}"
