"""A snag or a change of plan in one line: "seal will not come out", "liner late", "two free days"."""

from __future__ import annotations

import re

from msgspec import Struct

STUCK, LATE, DOWN, FREE, DROP = "stuck", "late", "down", "free", "drop"

DEFAULT_DAYS = 14

_NUMBERS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "a couple of": 2, "couple of": 2,
}  # fmt: skip
_NUMBER = rf"(?P<number>{'|'.join(sorted(_NUMBERS, key=len, reverse=True))}|\d{{1,3}})"
_NOT = r"(?:will not|won['’]?t|does not|doesn['’]?t|wouldn['’]?t|refuses to|cannot|can['’]?t(?: get)?)"
_OUT = r"(?:come|move|shift|undo|budge|turn|slide|pull|lift|go|out|off)"

_FOR_SO_LONG = rf"{_NUMBER} (?P<unit>day|week)s?"
_IS = r"(?: (?:is|are|comes|will be|not here))?"
_BROKEN = "down|broken|broke|jams|jammed|dead|broken down|out of order|gives up|gave up"
_CANNOT = r"(?:i )?(?:cannot|can['’]?t|could not|couldn['’]?t)"
_SEIZED = "stuck|seized|rusted solid|rusted in|stuck fast|frozen in"

_WAYS = (
    (LATE, rf"(?P<thing>.+?){_IS}(?: for)? {_FOR_SO_LONG}(?: late)"),
    (LATE, rf"(?P<thing>.+?){_IS} late"),
    (
        DOWN,
        r"(?P<thing>(?:the |my )?(?:welder|mig|mig welder|welding set))"
        rf"(?: (?:is|has|was))? (?:{_BROKEN})(?:(?: for)? {_FOR_SO_LONG})?(?: .*)?",
    ),
    (FREE, rf"{_NUMBER} (?:more )?free (?P<unit>day)s?|{_NUMBER.replace('number', 'count')} days? free"),
    (DROP, r"(?:drop|leave out|skip|without|give up|forget)(?: the job(?: of)?)? (?P<thing>.+)"),
    (STUCK, rf"{_CANNOT} (?:get|shift|move|undo) (?:the )?(?P<thing>.+?)(?: off| out| undone| to move)?"),
    (STUCK, rf"(?P<thing>.+?) {_NOT} (?:{_OUT})(?: .*)?"),
    (STUCK, rf"(?P<thing>.+?)(?: is| are)? (?:{_SEIZED})(?: .*)?"),
)
_READ = tuple((sort, re.compile(rf"(?:what if )?(?:the )?{pattern}[.!?]?", re.I)) for sort, pattern in _WAYS)


class Snag(Struct, frozen=True):
    """What a line says went wrong or changed.

    thing  as typed, "" where none is meant; days: how long, or how many days are free
    told   whether the days were told
    """

    sort: str
    thing: str = ""
    days: int = 0
    told: bool = True


def read_snag(text: str) -> Snag | None:
    """The snag a line tells; None where it tells none.

    >>> read_snag("pinion seal won't come out")
    Snag(sort='stuck', thing='pinion seal', days=0, told=True)
    >>> read_snag("the u-bolt nuts are three weeks late").days, read_snag("two free days").sort
    (21, 'free')
    >>> read_snag("took off the hub nut") is None
    True
    """
    plain = " ".join(text.split())
    for sort, pattern in _READ:
        match = pattern.fullmatch(plain)
        if match:
            return _snag(sort, match.groupdict())
    return None


def _snag(sort: str, found: dict[str, str | None]) -> Snag:
    thing = re.sub(r"^(?:the|my|a) ", "", (found.get("thing") or "").strip(), flags=re.I)
    typed = (found.get("number") or found.get("count") or "").lower()
    if not typed:
        return Snag(sort, thing, DEFAULT_DAYS if sort in (LATE, DOWN) else 0, sort not in (LATE, DOWN))
    number = int(typed) if typed.isdigit() else _NUMBERS[typed]
    return Snag(sort, thing, number * (7 if (found.get("unit") or "").lower() == "week" else 1))
