"""A line about when there is time: "sessions Saturdays 9-13, not in August", "no session 14 March"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from witnessmark.journal.facts import Arranged, CalledOff, Freed, LeftSetUp
from witnessmark.words.days import find_days
from witnessmark.words.understood import Reading, Understood

CalendarFact = Arranged | CalledOff | Freed | LeftSetUp

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_CODES = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
_MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
           "November", "December")  # fmt: skip
_DAY = "|".join(d.lower() for d in _DAYS) + "|" + "|".join(d[:3].lower() for d in _DAYS)
_MONTH = "|".join(m.lower() for m in _MONTHS) + "|" + "|".join(m[:3].lower() for m in _MONTHS) + "|sept"
_ONE_HOUR = r"([01]?\d|2[0-4])(?:[:.]([0-5]\d))?\s*(am|pm)?"
_HOURS = rf"(?:from )?{_ONE_HOUR}\s*(?:-|–|to|until|till)\s*{_ONE_HOUR}"
_HELPER = r"with (?:the |a |my )?(?:helper|two of us)"

_RULE = re.compile(
    rf"(?P<also>also )?sessions?(?: arranged)?:? (?P<every>every other |every second |every |on |each )?"
    rf"(?P<days>(?:{_DAY})s?(?:(?:,| and|, and)? (?:{_DAY})s?)*)(?: mornings?| afternoons?| evenings?)?,?"
    rf" {_HOURS}(?P<helper>,? {_HELPER})?"
    rf"(?:,? (?:but )?not in (?P<months>(?:{_MONTH})(?:(?:,| and| or|, and) (?:{_MONTH}))*))?\.?",
    re.I,
)
_OFF = re.compile(
    r"(?:no sessions?(?: on| from)?|called off)"
    r"(?: sessions?(?: on| from)?)?:? (?P<when>.+?)(?:(?:,|:| because| as) (?P<why>[^,]+?))?\.?",
    re.I,
)
_FREE = re.compile(
    rf"(?:free|one more session|sessions? more)(?: on)?:? (?P<when>.+?)"
    rf"(?:,? {_HOURS})?(?P<helper>,? {_HELPER})?\.?",
    re.I,
)
_PLACES = {
    "workbench": "workbench", "bench": "workbench", "welder corner": "welder corner",
    "welding corner": "welder corner", "spray corner": "spray corner", "paint corner": "spray corner",
}  # fmt: skip
_STAYS = re.compile(
    rf"(?:the )?(?P<place>{'|'.join(_PLACES)}) (?P<not>does not |cannot |can not )?"
    rf"(?:can )?stays? set up(?: over the week| from session to session)?\.?",
    re.I,
)


def read_sessions_line(text: str, today: date) -> Understood | None:
    """A line about the calendar, or None where it is none; every word of it must have its place.

    >>> read_sessions_line("sessions Saturdays 9-13, not in August", date(2026, 3, 4)).best.fact.rule
    'FREQ=WEEKLY;BYDAY=SA;BYMONTH=1,2,3,4,5,6,7,9,10,11,12'
    >>> read_sessions_line("took off the hub nut", date(2026, 3, 4)) is None
    True
    """
    plain = " ".join(text.split())
    for pattern, read in ((_RULE, _rule), (_STAYS, _stays), (_OFF, _off), (_FREE, _free)):
        match = pattern.fullmatch(plain)
        read_as = read(match, today) if match else None
        if read_as is not None:
            fact, sentence = read_as
            verb = str(type(fact).__struct_config__.tag)
            return Understood(Reading(facts=(fact,), sentence=sentence, verb=verb, sure=True))
    return None


Read = tuple[CalendarFact, str] | None


def _rule(match: re.Match[str], today: date) -> Read:
    hours = _hours(match)
    if hours is None:
        return None
    days = sorted({_number(w, _DAYS) for w in re.findall(rf"\b(?:{_DAY})", match["days"].lower())})
    other = (match["every"] or "").lower() in ("every other ", "every second ")
    months = {_number(w, _MONTHS) + 1 for w in re.findall(_MONTH, (match["months"] or "").lower())}
    rule = ["FREQ=WEEKLY", *(["INTERVAL=2"] if other else []), f"BYDAY={','.join(_CODES[d] for d in days)}"]
    if months:
        rule.append(f"BYMONTH={','.join(str(m) for m in range(1, 13) if m not in months)}")
    fact = Arranged(
        rule=";".join(rule), start=hours[0], end=hours[1], helper=bool(match["helper"]),
        also=bool(match["also"]),
    )  # fmt: skip
    return fact, said_rule(fact)


def said_rule(fact: Arranged) -> str:
    """A rule of this module's own making as a sentence that reads back as the same; others as they stand.

    >>> said_rule(Arranged(rule="FREQ=WEEKLY;BYDAY=SA", start="09:00", end="13:00", helper=True))
    'Sessions arranged: Saturdays 09:00-13:00, with helper.'
    """
    parts = dict(p.partition("=")[::2] for p in fact.rule.split(";"))
    lead = "Also sessions arranged" if fact.also else "Sessions arranged"
    codes = parts.pop("BYDAY", "").split(",")
    plain = parts.pop("FREQ", "") == "WEEKLY" and set(codes) <= set(_CODES)
    other = parts.pop("INTERVAL", "1")
    months = parts.pop("BYMONTH", "")
    if not plain or parts or other not in ("1", "2"):
        return f"{lead}: {fact.rule}, {fact.start}-{fact.end}."
    days = " and ".join(_DAYS[_CODES.index(c)] + ("" if other == "2" else "s") for c in codes)
    left = [m for n, m in enumerate(_MONTHS, 1) if months and str(n) not in months.split(",")]
    tail = (", with helper" if fact.helper else "") + (f", not in {' and '.join(left)}" if left else "")
    return f"{lead}: {'every other ' if other == '2' else ''}{days} {fact.start}-{fact.end}{tail}."


def _off(match: re.Match[str], today: date) -> Read:
    span = _span(match["when"], today)
    if span is None:
        return None
    why = (match["why"] or "").strip()
    first, last = span
    sentence = f"No sessions from {first} to {last}" if last else f"No session on {first}"
    return CalledOff(first=first, last=last, why=why), f"{sentence}{f', {why}' if why else ''}."


def _free(match: re.Match[str], today: date) -> Read:
    span = _span(match["when"], today)
    hours = _hours(match) or ("", "")
    if span is None:
        return None
    first, last = span
    fact = Freed(first=first, last=last, start=hours[0], end=hours[1], helper=bool(match["helper"]))
    said = f"from {first} to {last}" if last else f"on {first}"
    tail = (f", {hours[0]}-{hours[1]}" if hours[0] else "") + (", with helper" if fact.helper else "")
    return fact, f"Free {said}{tail}."


def _stays(match: re.Match[str], today: date) -> Read:
    place, stays = _PLACES[match["place"].lower()], not match["not"]
    said = "stays" if stays else "does not stay"
    return LeftSetUp(place=place, stays=stays), f"The {place} {said} set up over the week."


def _span(text: str, today: date) -> tuple[str, str] | None:
    """One day, or the first and last of several; None where anything else is said."""
    plain = re.sub(r"\b(\d{1,2}) and (\d{1,2}) ", r"\1 x and \2 ", text)
    month = re.search(rf"\b\d{{1,2}}(?:st|nd|rd|th)? (?P<m>{_MONTH})\b", plain, re.I)
    if month:
        plain = re.sub(r"(\d{1,2}) x and ", rf"\1 {month['m']} and ", plain)
    found = find_days(plain, today)
    rest = plain
    for day in reversed(found):
        rest = rest[: day.start] + rest[day.end :]
    if not 1 <= len(found) <= 2 or rest.strip(" ,").lower() not in (
        "",
        "and",
        "to",
        "until",
        "till",
        "from  to",
    ):
        return None
    days = [day.coming for day in found]
    if days != sorted(days):
        return None
    return days[0].isoformat(), days[-1].isoformat() if len(days) > 1 else ""


def _hours(match: re.Match[str]) -> tuple[str, str] | None:
    """The two times of day, the second the later; they are the only groups without a name."""
    hour, minute, half, last_hour, last_minute, last_half = (match.group(n) for n in _unnamed(match))
    if hour is None or last_hour is None:
        return None
    first = _clock(hour, minute, half)
    last = _clock(last_hour, last_minute, last_half)
    if last <= first and not last_half:
        last += 12 * 60
    if not first < last <= 24 * 60:
        return None
    return f"{first // 60:02}:{first % 60:02}", f"{last // 60:02}:{last % 60:02}"


def _unnamed(match: re.Match[str]) -> Iterator[int]:
    named = set(match.re.groupindex.values())
    return (n for n in range(1, match.re.groups + 1) if n not in named)


def _clock(hour: str, minute: str | None, half: str | None) -> int:
    late = 12 if (half or "").lower() == "pm" and int(hour) < 12 else 0
    return (int(hour) + late) * 60 + int(minute or 0)


def _number(word: str, names: tuple[str, ...]) -> int:
    return next(n for n, name in enumerate(names) if name.lower().startswith(word[:3]))
