"""How often opening a joint turned something up, counted by how the joint stood before."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AtFact,
    Closed,
    CutOut,
    Fitted,
    Found,
    Opened,
    Scrapped,
    Slackened,
    Tightened,
    TookOff,
)
from witnessmark.state.lane import Step, copied
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.things import Vehicle

NEVER_APART, APART_BEFORE, FIGHTS = "never apart", "apart before", "fights"


class Tally(Struct, frozen=True):
    """Of so many openings, so many turned something up."""

    opened: int = 0
    found: int = 0


TurnedUp = Mapping[str, Tally]


class TurnedUpLane:
    """Openings on their way through the journal, each with whether anything bad was found while open."""

    def __init__(self, vehicle: Vehicle) -> None:
        self.holders: dict[str, list[str]] = {}
        self.joints = vehicle.joints
        for joint in vehicle.joints.values():
            for part in joint.holds:
                self.holders.setdefault(part, []).append(joint.name)
        self.opened: dict[str, int] = {}
        self.found: dict[str, int] = {}
        self.open_now: dict[str, str] = {}
        self.before: set[str] = set()
        self.fight: set[str] = set()

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            **dict.fromkeys((TookOff, Opened, CutOut, Slackened), self.open),
            **dict.fromkeys((Found, Scrapped), self.find),
            **dict.fromkeys((Tightened, Closed, Fitted), self.close),
        }

    def open(self, entry: Entry, fact: AtFact) -> None:
        for name in self._joints(fact):
            if name in self.open_now:
                continue
            sort = FIGHTS if name in self.fight else APART_BEFORE if name in self.before else NEVER_APART
            self.open_now[name] = sort
            self.opened[sort] = self.opened.get(sort, 0) + 1
            self.before.add(name)

    def find(self, entry: Entry, fact: Found | Scrapped) -> None:
        """What is renewed at every opening is expected to be bad: that is no finding."""
        seen = condition(fact.condition) if isinstance(fact, Found) else None
        if seen is not None and (not seen.bad or (isinstance(fact, Found) and fact.item)):
            return
        for name in self._joints(fact):
            if seen is not None and seen.fights:
                self.fight.add(name)
            sort = self.open_now.get(name, "")
            if sort:
                self.open_now[name] = ""
                self.found[sort] = self.found.get(sort, 0) + 1

    def close(self, entry: Entry, fact: AtFact) -> None:
        for name in self._joints(fact):
            self.open_now.pop(name, None)

    def copied(self) -> TurnedUpLane:
        return copied(self)

    def turned_up(self) -> TurnedUp:
        return MappingProxyType(
            {sort: Tally(opened, self.found.get(sort, 0)) for sort, opened in self.opened.items()}
        )

    def _joints(self, fact: AtFact) -> list[str]:
        names = [n for n in fact.at if n in self.joints]
        return names + [joint for n in fact.at for joint in self.holders.get(n, ())]
