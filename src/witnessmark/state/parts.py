"""Where each part is: on the vehicle, the workbench, the shelf, away, on the donor, in the post, scrapped."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    WHOLE_PARCEL,
    AtFact,
    Came,
    CameBack,
    Closed,
    CutOut,
    DryFitted,
    Fitted,
    Found,
    Left,
    Ordered,
    Scrapped,
    SentAway,
    Stored,
    TookOff,
    Turned,
)
from witnessmark.state.lane import Step, copied
from witnessmark.state.supply import same_supplier
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.things import Vehicle

ON, BENCH, SHELF, AWAY, DONOR, POST, SCRAPPED = (
    "on the vehicle", "on the workbench", "on the shelf", "away", "on the donor", "in the post", "scrapped",
)  # fmt: skip


class PartState(Struct, frozen=True, kw_only=True):
    """One part as it stands; `off_line` is the line that took it off and is not yet answered by a refit."""

    name: str
    where: str = ON
    place: str = ""
    since: date | None = None
    line: int | None = None
    off_line: int | None = None
    off_day: date | None = None
    with_whom: str = ""
    due_back: str = ""
    stored_day: date | None = None
    turned_day: date | None = None
    bad: str = ""
    bad_line: int | None = None


class PartLane:
    """The parts' way through the journal."""

    def __init__(self, vehicle: Vehicle) -> None:
        self.vehicle = vehicle
        self.now = {
            name: PartState(name=name, where=f"on the {part.where}" if part.where else ON)
            for name, part in vehicle.parts.items()
        }

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            TookOff: self.took_off,
            CutOut: self.took_off,
            Fitted: self.fitted,
            DryFitted: self.fitted,
            Closed: self.fitted,
            Stored: self.stored,
            SentAway: self.sent_away,
            CameBack: self.came,
            Came: self.came,
            Ordered: self.ordered,
            Turned: self.turned,
            Scrapped: self.scrapped,
            Found: self.found,
            Left: self.left,
        }

    def copied(self) -> PartLane:
        return copied(self)

    def states(self) -> Mapping[str, PartState]:
        return MappingProxyType(dict(self.now))

    def _move(self, entry: Entry, name: str, where: str, **changes: Any) -> None:
        part = self.now.get(name)
        if part is not None:
            self.now[name] = replace(part, where=where, since=entry.day, line=entry.line, **changes)

    def took_off(self, entry: Entry, fact: AtFact) -> None:
        for name in fact.at:
            self._move(entry, name, BENCH, off_line=entry.line, off_day=entry.day, place="")

    def fitted(self, entry: Entry, fact: AtFact) -> None:
        for name in fact.at:
            kept: dict[str, Any] = {"bad": "", "bad_line": None} if getattr(fact, "new", False) else {}
            self._move(entry, name, ON, off_line=None, off_day=None, stored_day=None, place="", **kept)

    def stored(self, entry: Entry, fact: Stored) -> None:
        for name in self._parts(fact):
            self._move(entry, name, SHELF, place=fact.where, stored_day=entry.day)

    def sent_away(self, entry: Entry, fact: SentAway) -> None:
        for name in self._parts(fact):
            self._move(entry, name, AWAY, with_whom=fact.with_whom, due_back=fact.due_back)

    def came(self, entry: Entry, fact: AtFact) -> None:
        arrived = self._parts(fact)
        if isinstance(fact, Came) and fact.item == WHOLE_PARCEL:
            posted = [p for p in self.now.values() if p.where == POST]
            arrived += [p.name for p in posted if same_supplier(p.with_whom, fact.supplier)]
        for name in arrived:
            if self.now[name].where != ON:
                self._move(entry, name, BENCH, with_whom="", due_back="")

    def ordered(self, entry: Entry, fact: Ordered) -> None:
        for name in fact.at:
            part = self.now.get(name)
            if part is not None and part.where != ON:
                self._move(entry, name, POST, with_whom=fact.supplier)

    def turned(self, entry: Entry, fact: Turned) -> None:
        for name in self._parts(fact):
            self.now[name] = replace(self.now[name], turned_day=entry.day)

    def scrapped(self, entry: Entry, fact: Scrapped) -> None:
        for name in fact.at:
            self._move(entry, name, SCRAPPED)

    def found(self, entry: Entry, fact: Found) -> None:
        seen = condition(fact.condition)
        for name in fact.at:
            part = self.now.get(name)
            if part is not None and (seen.bad or seen.good):
                bad, line = (fact.condition, entry.line) if seen.bad else ("", None)
                self.now[name] = replace(part, bad=bad, bad_line=line)

    def left(self, entry: Entry, fact: Left) -> None:
        """A kept no: what was found bad is left so, and why stands on the line."""
        for name in fact.at:
            if name in self.now:
                self.now[name] = replace(self.now[name], bad="", bad_line=None)

    def _parts(self, fact: AtFact) -> list[str]:
        """The parts a fact names, and those of an assembly it names."""
        wanted = set(fact.at)
        return [n for n in self.now if n in wanted or self.vehicle.parts[n].assembly in wanted]
