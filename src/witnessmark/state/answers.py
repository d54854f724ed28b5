"""Answers that belong to the whole vehicle: asks of a gate, things put right elsewhere, distance run."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Filled, LookedAt, Proved, PutRight, Ran
from witnessmark.state.lane import Step, copied


class Answer(Struct, frozen=True, kw_only=True):
    """Something answered, by which line and when."""

    line: int
    day: date
    place: tuple[date, str, int]
    km: float
    figures: tuple[Quantity, ...] = ()


class Answers(Struct, frozen=True, kw_only=True):
    """asks: check or ask name -> latest answer; put_right: name of the thing upset -> latest."""

    asks: Mapping[str, Answer]
    put_right: Mapping[str, Answer]
    km: float
    heat_cycles: int
    first_run: Answer | None = None


class AnswerLane:
    """The vehicle's own answers, on their way through the journal."""

    def __init__(self) -> None:
        self.asks: dict[str, Answer] = {}
        self.right: dict[str, Answer] = {}
        self.km = 0.0
        self.heat_cycles = 0
        self.first_run: Answer | None = None

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            Proved: self.asked,
            LookedAt: self.asked,
            PutRight: self.put_right,
            Filled: self.filled,
            Ran: self.ran,
        }

    def copied(self) -> AnswerLane:
        return copied(self)

    def answers(self) -> Answers:
        return Answers(
            asks=MappingProxyType(dict(self.asks)),
            put_right=MappingProxyType(dict(self.right)),
            km=self.km,
            heat_cycles=self.heat_cycles,
            first_run=self.first_run,
        )

    def _answer(self, entry: Entry) -> Answer:
        return Answer(
            line=entry.line, day=entry.day, place=entry.place, km=self.km, figures=entry.fact.figures
        )

    def asked(self, entry: Entry, fact: Proved | LookedAt) -> None:
        if fact.check:
            self.asks[fact.check] = self.right[fact.check] = self._answer(entry)

    def put_right(self, entry: Entry, fact: PutRight) -> None:
        self.right[fact.what] = self._answer(entry)

    def filled(self, entry: Entry, fact: Filled) -> None:
        for fluid, name in (("oil", "oil level"), ("coolant", "coolant level")):
            if fluid in fact.fluid or any(fluid in at for at in fact.at):
                self.right[name] = self._answer(entry)

    def ran(self, entry: Entry, fact: Ran) -> None:
        self.km += fact.km
        self.heat_cycles += fact.heat_cycles
        if fact.km and self.first_run is None:
            self.first_run = self._answer(entry)
