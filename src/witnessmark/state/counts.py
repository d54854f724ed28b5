"""What is counted in and out: bags, blanking plugs, braces, stands, tins, sparks."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    Bagged,
    Blanked,
    Braced,
    Drained,
    Filled,
    LastSpark,
    LetDown,
    Lifted,
    OpenedTin,
    Unbagged,
    Unblanked,
    Unbraced,
    WatchedFire,
    Welded,
)
from witnessmark.state.lane import Step, copied
from witnessmark.vehicle.things import Vehicle


class Bag(Struct, frozen=True, kw_only=True):
    """A bag of what came off `at`."""

    at: tuple[str, ...]
    what: str
    number: int
    where: str
    day: date
    line: int


class Tally(Struct, frozen=True, kw_only=True):
    """Something counted at one name: how many still stand, since which line."""

    at: str
    number: int
    day: date
    line: int


class Spark(Struct, frozen=True, kw_only=True):
    """The last hot work at a place, and whether anybody looked afterwards."""

    at: str
    day: date
    time: str
    line: int
    looks: tuple[tuple[date, str], ...] = ()


class Counts(Struct, frozen=True, kw_only=True):
    bags: tuple[Bag, ...]
    blanks: tuple[Tally, ...]
    braces: tuple[Tally, ...]
    lifted: tuple[Tally, ...]
    drained: tuple[Tally, ...]
    tins: Mapping[str, Tally]
    sparks: tuple[Spark, ...]


ANYWHERE = "the vehicle"


class CountLane:
    """Everything counted, on its way through the journal."""

    def __init__(self, vehicle: Vehicle) -> None:
        self.vehicle = vehicle
        self.bags: list[Bag] = []
        self.blanks: dict[str, Tally] = {}
        self.braces: dict[str, Tally] = {}
        self.lifts: dict[str, Tally] = {}
        self.drains: dict[str, Tally] = {}
        self.tins: dict[str, Tally] = {}
        self.sparks: dict[str, Spark] = {}

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            Bagged: self.bagged,
            Unbagged: self.unbagged,
            Blanked: lambda entry, fact: self._count(self.blanks, entry, fact.at, fact.number),
            Unblanked: lambda entry, fact: self._count(self.blanks, entry, fact.at, -fact.number),
            Braced: lambda entry, fact: self._stand(self.braces, entry, fact.at),
            Unbraced: lambda entry, fact: self._away(self.braces, fact.at),
            Lifted: lambda entry, fact: self._stand(self.lifts, entry, fact.at),
            LetDown: lambda entry, fact: self._away(self.lifts, fact.at),
            Drained: lambda entry, fact: self._stand(self.drains, entry, fact.at),
            Filled: self.filled,
            OpenedTin: self.opened_tin,
            LastSpark: self.sparked,
            Welded: self.sparked,
            WatchedFire: self.watched,
        }

    def copied(self) -> CountLane:
        return copied(self)

    def counts(self) -> Counts:
        return Counts(
            bags=tuple(self.bags),
            blanks=tuple(t for t in self.blanks.values() if t.number > 0),
            braces=tuple(self.braces.values()),
            lifted=tuple(self.lifts.values()),
            drained=tuple(self.drains.values()),
            tins=MappingProxyType(dict(self.tins)),
            sparks=tuple(self.sparks.values()),
        )

    def bagged(self, entry: Entry, fact: Bagged) -> None:
        what = fact.what or ", ".join(fact.at) or fact.remark
        bag = Bag(at=fact.at, what=what, number=fact.number, where=fact.where, day=entry.day, line=entry.line)
        self.bags.append(bag)

    def unbagged(self, entry: Entry, fact: Unbagged) -> None:
        gone = set(fact.at)
        self.bags = [b for b in self.bags if not (gone & set(b.at)) and b.what not in gone]

    def _count(self, tallies: dict[str, Tally], entry: Entry, at: tuple[str, ...], number: int) -> None:
        for name in at or (ANYWHERE,):
            before = tallies.get(name)
            tallies[name] = Tally(
                at=name,
                number=max(0, (before.number if before else 0) + number),
                day=before.day if before and before.number else entry.day,
                line=before.line if before and before.number else entry.line,
            )

    def _stand(self, tallies: dict[str, Tally], entry: Entry, at: tuple[str, ...]) -> None:
        for name in at or (ANYWHERE,):
            tallies[name] = Tally(at=name, number=1, day=entry.day, line=entry.line)

    def _away(self, tallies: dict[str, Tally], at: tuple[str, ...]) -> None:
        if not at:
            tallies.clear()
        for name in at:
            tallies.pop(name, None)

    def filled(self, entry: Entry, fact: Filled) -> None:
        """Filling answers what was drained there or anywhere else of the same assembly, at its drain plug."""
        filled = {self.vehicle.assembly_of(name) or name for name in fact.at}
        kept = [
            n for n in self.drains if n not in fact.at and (self.vehicle.assembly_of(n) or n) not in filled
        ]
        self.drains = {name: self.drains[name] for name in kept}

    def opened_tin(self, entry: Entry, fact: OpenedTin) -> None:
        self.tins[fact.what] = Tally(at=fact.what, number=1, day=entry.day, line=entry.line)

    def sparked(self, entry: Entry, fact: LastSpark | Welded) -> None:
        for name in fact.at or (ANYWHERE,):
            self.sparks[name] = Spark(at=name, day=entry.day, time=entry.time, line=entry.line)

    def watched(self, entry: Entry, fact: WatchedFire) -> None:
        for name in fact.at or tuple(self.sparks):
            spark = self.sparks.get(name)
            if spark is not None:
                looks = (*spark.looks, (entry.day, entry.time))
                self.sparks[name] = Spark(
                    at=name, day=spark.day, time=spark.time, line=spark.line, looks=looks
                )
