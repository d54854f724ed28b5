"""Times of day as they are typed: "at 10:40", "7.15pm", "ten to four", "9:00-12:30", "nine until half 1"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

_SPOKEN = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_HOURS_SAID = {word: hour for hour, word in enumerate(_SPOKEN.split("|"), 1)}
_MINUTES_SAID = {"quarter": 15, "half": 30, "five": 5, "ten": 10, "twenty": 20, "twentyfive": 25}
_HOUR = rf"(?:{_SPOKEN}|1[0-2]|[1-9])"
_CLOCK = r"(?:[01]?[0-9]|2[0-4])"
_MINUTE = r"[0-5][0-9]"

# The ways one time is typed, each with its own groups: hour, minute, half of the day.
_WAYS = (
    ("named", r"(noon|midday|midnight)"),
    (
        "said",
        rf"(half past|half|(?:(?:a )?quarter|five|ten|twenty(?:[ -]five)?|[0-9]{{1,2}})(?: minutes| mins)?"
        rf" (?:past|to)) ({_HOUR})(?:\s?([ap]m)\b)?",
    ),
    ("clock", rf"({_CLOCK})[:.]({_MINUTE})(?:\s?([ap]m\b|hrs\b|hours\b))?"),
    ("run", rf"([01][0-9]|2[0-3])({_MINUTE})(?:\s?(hrs|hours|h)\b)?"),
    ("half", rf"({_CLOCK})\s?([ap]m)\b"),
    ("oclock", rf"({_HOUR}) ?o['’]?clock\b"),
    ("bare", rf"({_SPOKEN}|{_CLOCK})"),
)
_READ = tuple((way, re.compile(pattern, re.I)) for way, pattern in _WAYS)
_ANY = "|".join(re.sub(r"\((?!\?)", "(?:", pattern) for _, pattern in _WAYS)
_FREE_BEFORE = r"(?<![\w.,:/£€$-])"
_FREE_AFTER = r"(?![\w:/%]|[.,][0-9])"
_PART = (
    r"(?:\s+(?:in the (?P<{0}>morning|afternoon|evening)|at (?P<{0}n>night))"
    r"|(?=\s+(?P<{0}t>this morning|this afternoon|this evening|tonight)\b))?"
)
_LEAD = r"(?:(?P<lead>at|about|around|circa|by|since|spark|weld|arc|till|until|from|stopped|finished|off) )?"
_FILL = r"(?:(?:about|gone|just on|just after|just gone|nearly|around) )?"
_UNIT = re.compile(
    r"\s?(?:mm|in(?=\s*(?:$|[,;.)]))|inch|inches|thou|nm|n·m|n\.m|lbf|lb|ft|l|litres?|pints?|km|k|miles?|days?|weeks?|h|hrs?|hours?|mins?"
    r"|minutes|bar|psi|v|volts?|kg|turns?|flats?|threads?|degrees|quid|pounds?)\b|\s?[%°\"]"
)
_ONE = re.compile(rf"{_FREE_BEFORE}{_LEAD}(?P<time>{_ANY}){_FREE_AFTER}{_PART.format('part')}", re.I)
_RANGE = re.compile(
    rf"{_FREE_BEFORE}(?P<lead>from |between )?(?P<first>{_ANY}){_PART.format('a')}"
    rf"\s?(?P<link>to|till|until|til|thru|through|and|-|–|—)\s?"
    rf"{_FILL}(?P<last>{_ANY}){_FREE_AFTER}{_PART.format('b')}",
    re.I,
)
_SESSION = re.compile(
    r"\b(held|session|garage|workshop|shed|barn|lockup|worked|working|in from|out there|did|came|was in"
    r"|at it)\b",
    re.I,
)
_HOT = re.compile(
    r"\b(sparks?|weld\w*|grind\w*|arc|torch|hot work|cutting|burning|stopped|finished|knocked|pack\w*|smoke"
    r"|embers|fire|watch\w*|held|session)\b",
    re.I,
)
_STOPPING = re.compile(
    r"\b(tools down|down(?:ed)? tools|start\w*|finish\w*|walk round|smoulder|glow\w*)\b", re.I
)
_COATED = re.compile(
    r"\b(zinc'?d|seal broken|\w*prim(?:ed|er)|coat\w*|paint\w*|spray\w*|brush\w*|opened|mixed)\b", re.I
)
_BOUGHT = re.compile(r"\b(order\w*|paid|bought|quot\w*|offer\w*|came|arrived|price|want|each)\b|[£€$]", re.I)
_ENDS = re.compile(
    r"\s*(?:$|[.,;!?()—–-])|\s+(?:on|with|this|in|today|tonight|and|then|so|after|when|off|last|o)\b", re.I
)
_EARLY = 7 * 60
_NOON = 720
_DAY = 1440


class FoundTime(Struct, frozen=True):
    """A time of day, "HH:MM", or two of them with `until`."""

    start: int
    end: int
    time: str
    until: str = ""
    shaky: bool = False


class _Clock(Struct, frozen=True):
    """One time: how it was typed, minutes since midnight, and whether morning or afternoon is told."""

    way: str
    minutes: int
    told: bool


def find_times(text: str) -> tuple[FoundTime, ...]:
    """Every time of day, and every "from … to …", in order."""
    found = list(_ranges(text))
    for match in _ONE.finditer(text):
        one = _single(match, text)
        if one and not any(f.start < one.end and one.start < f.end for f in found):
            found.append(one)
    return tuple(sorted(found, key=lambda f: f.start))


def _single(match: re.Match[str], text: str) -> FoundTime | None:
    part = _part(match, "part")
    clock = _read(match["time"], part)
    if clock is None or not _may_stand(match, clock, part, text):
        return None
    minutes, shaky = clock.minutes, False
    if not clock.told and clock.way in ("said", "oclock", "bare") and minutes < 8 * 60:
        minutes, shaky = minutes + _NOON, True
    consumed = (
        match["lead"]
        and clock.way != "bare"
        and match["lead"].lower() in ("at", "about", "around", "circa", "by")
    )
    return FoundTime(
        match.start() if consumed else match.start("time"), match.end(), _hhmm(minutes), shaky=shaky
    )


def _may_stand(match: re.Match[str], clock: _Clock, part: str, text: str) -> bool:
    """Whether what looks like a time is one here: figures of other kinds look the same."""
    lead, after = (match["lead"] or "").lower(), text[match.end("time") :]
    if _UNIT.match(after):
        return False
    hot = bool(_HOT.search(text))
    match clock.way:
        case "named" | "half" | "oclock":
            return True
        case "said":
            to = bool(re.search(r" to ", match["time"])) and not (hot or part or lead)
            return bool(part) or clock.told or (bool(_ENDS.match(after)) and not to)
        case "clock":
            dotted = "." in match["time"]
            said = re.search(r"(?i)[ap]m$", match["time"])
            if re.search(r"(?i)hours$", match["time"]) and not (hot and clock.minutes >= 600):
                return False
            led = bool(lead) and lead != "off"
            return (
                not dotted
                or bool(said)
                or led
                or (hot and clock.minutes >= 360)
                or _is_of_a_coat(clock, text)
            )
        case "run":
            marked = re.search(r"(?i)h|hrs|hours", match["time"])
            round_minutes = clock.minutes % 5 == 0 and bool(_STOPPING.search(text))
            return bool(
                marked or (lead and lead != "about") or hot or round_minutes or _is_of_a_coat(clock, text)
            )
        case _:
            return bool(part)


def _is_of_a_coat(clock: _Clock, text: str) -> bool:
    """Whether "14.20" beside a coat is when it was put on: from ten o'clock on, where nothing is bought."""
    return clock.minutes >= 600 and bool(_COATED.search(text)) and not _BOUGHT.search(text)


def _part(match: re.Match[str], group: str) -> str:
    said = match[group] or match[f"{group}n"] or match[f"{group}t"] or ""
    return said.lower().removeprefix("this ").replace("tonight", "evening")


def _read(typed: str, part: str = "") -> _Clock | None:
    for way, pattern in _READ:
        match = pattern.fullmatch(typed)
        if match is not None:
            return _of(way, match, part)
    return None


def _of(way: str, match: re.Match[str], part: str) -> _Clock | None:
    if way == "named":
        return _Clock(way, 0 if match[1].lower() == "midnight" else _NOON, True)
    if way == "said":
        minutes = _said(match)
        part = {"am": "morning", "pm": "evening"}.get((match[3] or "").lower(), part)
        return None if minutes is None else _Clock(way, _shifted(minutes, part), bool(part))
    hour = _hour(match[1])
    minute = int(match[2]) if way in ("clock", "run") else 0
    half = {"clock": 3, "half": 2}.get(way)
    said = ((match[half] if half else "") or "").lower()
    if said.endswith("m"):
        part = "morning" if said == "am" else "evening"
        hour = hour % 12 if said == "am" else hour
    minutes = _shifted(hour * 60 + minute, part)
    return _Clock(way, minutes % _DAY, bool(part) or hour > 12)


def _said(match: re.Match[str]) -> int | None:
    """ "Half four" is half past it; "ten to four" lies before it."""
    words = match[1].lower().replace("-", " ").removeprefix("a ").split()
    hour = _hour(match[2])
    name = "".join(w for w in words if w not in ("past", "to", "minutes", "mins"))
    minute = int(name) if name.isdigit() else _MINUTES_SAID[name]
    if minute >= 60 or (minute % 5 and "minutes" not in words):
        return None
    return (hour * 60 - minute if words[-1] == "to" else hour * 60 + minute) % _DAY


def _shifted(minutes: int, part: str) -> int:
    if part in ("afternoon", "evening", "night") and minutes < _NOON:
        return minutes + _NOON
    return minutes % _NOON if part == "morning" and minutes >= _NOON else minutes


def _hour(typed: str) -> int:
    return _HOURS_SAID.get(typed.lower()) or int(typed)


def _hhmm(minutes: int) -> str:
    return f"{minutes // 60 % 25:02}:{minutes % 60:02}"


def _ranges(text: str) -> Iterator[FoundTime]:
    at = 0
    while (match := _RANGE.search(text, at)) is not None:
        found = _range(match, text)
        if found is not None:
            yield found
        at = match.end() if found is not None else match.end("first")


def _range(match: re.Match[str], text: str) -> FoundTime | None:
    """Two times; bare hours count only where a session is spoken of, and what is guessed is shaky."""
    link, lead = match["link"].lower(), (match["lead"] or "").lower().strip()
    parts = _part(match, "a"), _part(match, "b")
    first, last = _read(match["first"], parts[0]), _read(match["last"], parts[1])
    if (
        first is None
        or last is None
        or (link == "and") != (lead == "between")
        or _UNIT.match(text[match.end() :])
    ):
        return None
    if not _are_times(first, last, link, bool(lead), text):
        return None
    begin, end, shaky = _afternoon(first, last, match["last"])
    if end <= begin < end + _NOON and not last.told:
        end += _NOON
    if not (0 <= begin < _DAY and 0 <= end <= _DAY and begin != end):
        return None
    return FoundTime(match.start(), match.end(), _hhmm(begin), _hhmm(end), shaky)


def _are_times(first: _Clock, last: _Clock, link: str, led: bool, text: str) -> bool:
    """Bare hours need a session to be spoken of; "4.5 to 5.0" and "10-40" are no times."""
    ways = {first.way, last.way}
    if ways == {"run"}:
        return True
    if ways <= {"bare", "run"} or (
        ways <= {"bare", "clock"} and "." in text and ":" not in text and not (first.told or last.told)
    ):
        return bool(_SESSION.search(text)) or link in ("till", "until", "til")
    return (
        first.way != "bare"
        or led
        or link not in ("-", "–", "—", "to")
        or bool(_SESSION.search(text))
        or last.told
    )


def _afternoon(first: _Clock, last: _Clock, typed: str) -> tuple[int, int, bool]:
    """Early hours with neither am nor pm are taken for the afternoon, which is a guess."""
    begin, end = first.minutes, last.minutes
    if typed.lower() == "midnight":
        end = _DAY
    if first.told or begin >= _EARLY:
        return begin, end, False
    if first.way == "clock" and not last.told:
        return begin, end, False
    if not last.told:
        return begin + _NOON, end + (_NOON if end < _NOON else 0), True
    if begin + _NOON < end:
        return begin + _NOON, end, True
    return begin, end, False
