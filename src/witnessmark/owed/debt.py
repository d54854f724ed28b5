"""A debt: one thing owed, with the line behind it and the line that would pay it."""

from __future__ import annotations

from datetime import date

from msgspec import Struct

# The sorts of debt, in the order a closing goes.
SORTS = (
    "finding",
    "renew",
    "close",
    "check",
    "record",
    "put_right",
    "look_again",
    "refit",
    "fluid",
    "blank",
    "bag",
    "brace",
    "fire_watch",
    "bare",
    "recoat",
    "turn",
    "back",
)


class Debt(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One thing owed.

    sort      one of SORTS
    what      what is owed, in a few words: "new split pin"
    where     where on the vehicle; joint, part, assembly, item: whole names, "" where none
    if_missed key of what happens if it is missed
    because   why, in plain words
    line      the journal line behind it
    pays      a line which, typed, would pay it
    since     the day it came to be owed; due: in words, "after 50 km"; due_day where a day is meant
    overdue   its time has come; only follow-ups and things of time can be owed and not overdue
    stage     where a check can be given
    helper    whether it takes a second pair of hands
    id        four characters for paper
    """

    sort: str
    what: str
    if_missed: str
    because: str
    line: int
    pays: str
    since: date
    where: str = ""
    joint: str = ""
    part: str = ""
    assembly: str = ""
    item: str = ""
    due: str = ""
    due_day: date | None = None
    overdue: bool = True
    stage: str = ""
    system: str = ""
    helper: str = "no"
    id: str = ""

    @property
    def key(self) -> str:
        """What makes it this debt and no other; the same debt keeps its code."""
        return f"{self.sort}/{self.joint or self.part or self.where}/{self.item}"


def spoken(name: str) -> str:
    """A whole name as it is typed in a line.

    >>> spoken("hub nut, left rear")
    'hub nut left rear'
    """
    return name.replace(",", "")


def listed(names: list[str]) -> str:
    """Names in a sentence, at most three of them.

    >>> listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c", "d", "e"])
    ('a', 'a and b', 'a, b, c and 2 more')
    """
    if len(names) > 3:
        return f"{', '.join(names[:3])} and {len(names) - 3} more"
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
