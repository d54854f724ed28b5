"""Facts about when there is time: sessions arranged, called off and freed, and what stays set up."""

from __future__ import annotations

from witnessmark.journal.fact import Fact


class Arranged(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="arranged"):
    """Sessions that come again: by a rule, between two times of day.

    rule    a recurrence rule of RFC 5545: "FREQ=WEEKLY;BYDAY=SA"
    since   the first day it counts from, "" for the day of the line
    helper  the second pair of hands is promised
    also    beside the rules before it; else in their place
    """

    rule: str
    start: str = ""
    end: str = ""
    since: str = ""
    helper: bool = False
    also: bool = False


class CalledOff(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="called_off"):
    """No session from one day to another, both counted."""

    first: str
    last: str = ""
    why: str = ""


class Freed(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="freed"):
    """A session more, on each day from one to another."""

    first: str
    last: str = ""
    start: str = ""
    end: str = ""
    helper: bool = False


class LeftSetUp(Fact, frozen=True, kw_only=True, omit_defaults=True, tag="left_set_up"):
    """Whether a place (workbench, welder corner, spray corner) can stay set up from session to session."""

    place: str
    stays: bool = True
