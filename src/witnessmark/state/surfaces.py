"""Bare steel and coats: since when it is bare, what went on last, when the next coat may go on."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import AtFact, Bared, Closed, Coated, Scrapped, Welded
from witnessmark.state.lane import Step, copied


class SurfaceState(Struct, frozen=True, kw_only=True):
    """One surface. Exactly one of `bared_line` and `coated_line` is set."""

    name: str
    day: date
    time: str
    bared_line: int | None = None
    coated_line: int | None = None
    product: str = ""
    recoat_from_hours: float | None = None
    recoat_until_hours: float | None = None
    last_coat: bool = False


class SurfaceLane:
    """The surfaces' way through the journal. Any name may have one; it need not be described."""

    def __init__(self) -> None:
        self.now: dict[str, SurfaceState] = {}

    @property
    def steps(self) -> Mapping[type, Step]:
        return {
            Bared: self.bared,
            Welded: self.bared,
            Coated: self.coated,
            Closed: self.gone,
            Scrapped: self.gone,
        }

    def copied(self) -> SurfaceLane:
        return copied(self)

    def states(self) -> Mapping[str, SurfaceState]:
        return MappingProxyType(dict(self.now))

    def bared(self, entry: Entry, fact: AtFact) -> None:
        """Bared on purpose, or by a weld: a weld burns its coat away on both faces."""
        for name in fact.at:
            self.now[name] = SurfaceState(name=name, day=entry.day, time=entry.time, bared_line=entry.line)

    def coated(self, entry: Entry, fact: Coated) -> None:
        for name in fact.at:
            self.now[name] = SurfaceState(
                name=name, day=entry.day, time=entry.time, coated_line=entry.line, product=fact.product,
                recoat_from_hours=fact.recoat_from_hours, recoat_until_hours=fact.recoat_until_hours,
                last_coat=fact.last_coat,
            )  # fmt: skip

    def gone(self, entry: Entry, fact: AtFact) -> None:
        for name in fact.at:
            self.now.pop(name, None)
