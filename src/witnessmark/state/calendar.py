"""When there is time: what was arranged, called off and freed, and what can stay set up."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Arranged, CalledOff, Freed, LeftSetUp
from witnessmark.state.lane import Step, copied
from witnessmark.state.supply import Line


class Calendar(Struct, frozen=True, kw_only=True):
    """Rules that count now, exceptions in the order they were told, and which places stay set up."""

    arranged: tuple[Line, ...] = ()
    called_off: tuple[Line, ...] = ()
    freed: tuple[Line, ...] = ()
    stays: Mapping[str, bool] = MappingProxyType({})


class CalendarLane:
    """The calendar's way through the journal: a new rule takes the place of the old, unless it says also."""

    def __init__(self) -> None:
        self.arranged: list[Line] = []
        self.called_off: list[Line] = []
        self.freed: list[Line] = []
        self.stays: dict[str, bool] = {}

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            Arranged: self.arrange,
            CalledOff: lambda entry, fact: self.called_off.append(_line(entry, fact)),
            Freed: lambda entry, fact: self.freed.append(_line(entry, fact)),
            LeftSetUp: self.set_up,
        }

    def arrange(self, entry: Entry, fact: Arranged) -> None:
        if not fact.also:
            self.arranged.clear()
        self.arranged.append(_line(entry, fact))

    def set_up(self, entry: Entry, fact: LeftSetUp) -> None:
        self.stays[fact.place] = fact.stays

    def copied(self) -> CalendarLane:
        return copied(self)

    def calendar(self) -> Calendar:
        return Calendar(
            arranged=tuple(self.arranged),
            called_off=tuple(self.called_off),
            freed=tuple(self.freed),
            stays=MappingProxyType(dict(self.stays)),
        )


def _line(entry: Entry, fact: Arranged | CalledOff | Freed) -> Line:
    return Line(entry.line, entry.day, fact)
