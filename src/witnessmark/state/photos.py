"""Photos as the record has them: what each one shows, and the pairs of before and after."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date

from msgspec import Struct

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AnyFact,
    AtFact,
    Bared,
    Closed,
    Coated,
    CutOut,
    Filled,
    Fitted,
    Opened,
    Photographed,
    Proved,
    Slackened,
    Tightened,
    TookOff,
    Welded,
)
from witnessmark.journal.order import in_force, standing

_OPENS = (TookOff, Opened, Slackened, CutOut, Bared)
_CLOSES = (Fitted, Tightened, Filled, Welded, Coated, Proved, Closed)
_TURNS = _OPENS + _CLOSES


class Taken(Struct, frozen=True, kw_only=True):
    """One photo.

    name       of its file; line: the line it goes with, or its own
    at         the parts and joints it shows: where the line was corrected, those of the correction
    words      of that line, as typed; fact: what that line says
    """

    name: str
    line: int
    day: date
    time: str
    at: tuple[str, ...]
    words: str
    fact: AnyFact


class Pair(Struct, frozen=True, kw_only=True):
    """One thing before and after."""

    thing: str
    before: Taken
    after: Taken


class Album(Struct, frozen=True, kw_only=True):
    """What stands in a record, in reading order, and its photos."""

    held: tuple[Entry, ...]
    photos: tuple[Taken, ...]
    pairs: tuple[Pair, ...]


def album_from(entries: Iterable[Entry]) -> Album:
    """Every photo that still stands, under its line, and the pairs of before and after.

    A photo put with a line that was struck goes with the line; of a corrected line it shows what the
    correction names. Pairs stand in the order of their photos after.
    """
    every = list(entries)
    held = standing(every)
    photos: list[Taken] = []
    things: dict[str, _Thing] = {}
    for entry, shown in _walked(every, held):
        photos += shown
        _walk(things, entry, shown)
    found = [pair for thing in things.values() if (pair := thing.pair())]
    found.sort(key=lambda p: (p.after.day, p.after.time, p.after.line))
    return Album(held=tuple(held), photos=tuple(photos), pairs=tuple(found))


def photos_by_line(photos: Iterable[Taken]) -> Mapping[int, tuple[Taken, ...]]:
    """The photos under each line they go with."""
    found: dict[int, tuple[Taken, ...]] = {}
    for taken in photos:
        found[taken.line] = (*found.get(taken.line, ()), taken)
    return found


def _walk(things: dict[str, _Thing], entry: Entry, photos: Sequence[Taken]) -> None:
    fact = entry.fact
    if isinstance(fact, _TURNS):
        for name in fact.at:
            thing = things.get(name) or things.setdefault(name, _Thing(name))
            if isinstance(fact, _OPENS):
                thing.opened()
            else:
                thing.closed = True
    for taken in photos:
        for name in taken.at:
            things.setdefault(name, _Thing(name)).photographed(taken)


class _Thing:
    """One thing on its way through the journal: the first photo of it open, the last of it closed.

    Of a thing that was apart more than once the last time counts.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        self.closed = False
        self.before: Taken | None = None
        self.after: Taken | None = None
        self.kept: Pair | None = None

    def opened(self) -> None:
        """Opened anew: what was shown closed is a pair, and another begins."""
        if self.closed:
            self.kept = self.pair()
            self.before = self.after = None
            self.closed = False

    def photographed(self, taken: Taken) -> None:
        if self.closed:
            self.after = taken
        else:
            self.before = self.before or taken

    def pair(self) -> Pair | None:
        if self.before is None or self.after is None:
            return self.kept
        return Pair(thing=self.name, before=self.before, after=self.after)


def _walked(every: list[Entry], held: list[Entry]) -> Iterable[tuple[Entry, Sequence[Taken]]]:
    """What stands, in reading order, each line with the photos that go with it."""
    stands_as = {line: strike.line for line, strike in in_force(every).items()}
    beside: dict[int, list[Photographed]] = {}
    for entry in held:
        if isinstance(entry.fact, Photographed) and entry.fact.of:
            line = stands_as.get(entry.fact.of, entry.fact.of)
            beside.setdefault(line, []).append(entry.fact)
    for entry in held:
        own = [entry.fact] if isinstance(entry.fact, Photographed) else []
        if own and own[0].of:
            continue
        facts = (*own, *beside.get(entry.line, ()))
        yield entry, [_taken(entry, fact, name) for fact in facts for name in fact.photos] if facts else ()


def _taken(entry: Entry, fact: Photographed, name: str) -> Taken:
    corrected = fact.of and fact.of != entry.line
    at = entry.fact.at if corrected and isinstance(entry.fact, AtFact) else fact.at
    return Taken(
        name=name,
        line=entry.line,
        day=entry.day,
        time=entry.time,
        at=at,
        words=entry.words,
        fact=entry.fact,
    )
