"""Sizes as found and measured, and plugs as counted: of a part, of a joint, of what is renewed in one."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.ground.threads_typed import find_thread
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Found, Measured, Welded
from witnessmark.state.lane import Step, copied

THICKNESS = frozenset({"thick", "thickness", "gauge", "sheet thickness", "metal thickness"})


class SizeFound(Struct, frozen=True):
    """A size as typed, and the line that says it."""

    text: str
    line: int


class ThickFound(Struct, frozen=True):
    """How thick, as typed and in mm, and the line that says it."""

    quantity: Quantity
    line: int


class Sizes(Struct, frozen=True, kw_only=True):
    """The last size told of each thing.

    of       whole name and item to a size; item "" is the thing itself
    threads  whole name to a thread that was found or measured on it
    thick    whole name to the thickness of its metal
    plugs    whole name to how many plugs were welded there
    """

    of: Mapping[tuple[str, str], SizeFound] = MappingProxyType({})
    threads: Mapping[str, SizeFound] = MappingProxyType({})
    thick: Mapping[str, ThickFound] = MappingProxyType({})
    plugs: Mapping[str, int] = MappingProxyType({})


class SizeLane:
    """Sizes, on their way through the journal."""

    def __init__(self) -> None:
        self.of: dict[tuple[str, str], SizeFound] = {}
        self.threads: dict[str, SizeFound] = {}
        self.thick: dict[str, ThickFound] = {}
        self.plugs: dict[str, int] = {}

    @property
    def steps(self) -> Mapping[type, Step]:
        return {Found: self.found, Measured: self.measured, Welded: self.welded}

    def found(self, entry: Entry, fact: Found) -> None:
        for name in fact.at:
            self._keep(entry.line, name, fact.item, fact.size or _shim(name, fact.figures))

    def measured(self, entry: Entry, fact: Measured) -> None:
        thick = fact.what in THICKNESS
        for name in fact.at:
            if thick and fact.figures and fact.figures[0].unit == "mm":
                self.thick[name] = ThickFound(fact.figures[0], entry.line)
            told = fact.size or (_shim(name, fact.figures) if thick or not fact.what else "")
            self._keep(entry.line, name, "", told)

    def welded(self, entry: Entry, fact: Welded) -> None:
        if fact.plugs:
            self.plugs.update(dict.fromkeys(fact.at, fact.plugs))

    def _keep(self, line: int, name: str, item: str, told: str) -> None:
        """A size may be a thread, dimensions, or both with a comma between."""
        for size in filter(None, told.split(", ")):
            if find_thread(size) is not None:
                self.threads[name] = SizeFound(size, line)
            else:
                self.of[name, item] = SizeFound(size, line)

    def copied(self) -> SizeLane:
        return copied(self)

    def sizes(self) -> Sizes:
        return Sizes(
            of=MappingProxyType(self.of),
            threads=MappingProxyType(self.threads),
            thick=MappingProxyType(self.thick),
            plugs=MappingProxyType(self.plugs),
        )


def _shim(name: str, figures: tuple[Quantity, ...]) -> str:
    """A shim has one dimension that tells its size: how thick it is."""
    is_shim = any(word in ("shim", "shims") for word in name.replace(",", " ").split())
    lengths = [figure.typed for figure in figures if figure.unit == "mm"]
    return lengths[0] if is_shim and lengths else ""
