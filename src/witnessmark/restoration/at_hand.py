"""A record kept at hand between questions: answers are worked out again only when it has moved."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from functools import cached_property
from pathlib import Path
from threading import Lock

from witnessmark.journal.entry import Entry
from witnessmark.owed.debt import Debt
from witnessmark.plan.session import SessionPlan
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.thumbnails import Thumbnails
from witnessmark.state.standing import Fold
from witnessmark.store.opening import open_record
from witnessmark.store.record_store import RecordStore
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.vocabulary import Vocabulary, vocabulary_of

# How many answers to "what fits a session" are kept for one state of the record.
MOST_PLANS = 12


class AtHand:
    """One vehicle's folder, asked again and again.

    folder  where the record lies
    clock   the device's clock, local time
    """

    def __init__(self, folder: Path, clock: Callable[[], datetime]) -> None:
        self.folder = folder
        self.clock = clock
        self.thumbnails = Thumbnails(folder)
        self._lock = Lock()
        self._entries: tuple[Entry, ...] = ()
        self._flow: _Planning | None = None
        self._vocabulary: Vocabulary | None = None
        self._plans: _Plans = _Plans()

    @contextmanager
    def opened(self, who: str = "you") -> Iterator[Restoration]:
        """The record, opened by a hand for one question or one line, and closed behind it."""
        with open_record(self.folder) as store:
            yield _Often(_Remembered(store, self), self, who)

    @contextmanager
    def held_open(self) -> Iterator[None]:
        """Keep the file open meanwhile: closing it for good takes a tidying that each line would wait for."""
        with open_record(self.folder):
            yield

    def entries_of(self, store: RecordStore) -> tuple[Entry, ...]:
        """The lines, read from the disk only where another program has written since."""
        with self._lock:
            if store.last_line() != len(self._entries):
                self._entries = store.read()
            return self._entries

    def grown(self, stored: Sequence[Entry]) -> None:
        """Keep what was just written through here, where it stands right behind what is kept."""
        with self._lock:
            known = len(self._entries)
            fresh = [e for e in stored if e.line > known]
            if all(entry.line == line for line, entry in enumerate(fresh, known + 1)):
                self._entries = (*self._entries, *fresh)

    def flow_of(self, entries: tuple[Entry, ...], now: datetime) -> Flow:
        """The answers at this minute; worked out once for as long as nothing moves."""
        minute = now.replace(second=0, microsecond=0)
        with self._lock:
            kept = self._flow
            grew = kept is not None and _begins_with(entries, kept.entries)
            if kept is not None and grew and kept.now == minute and len(kept.entries) == len(entries):
                return kept
            flow = _Planning(entries, minute, self._plans, kept if grew else None)
            _ = flow.owed  # every page asks it: worked out here, once, while others wait
            if kept is None or len(entries) >= len(kept.entries):
                self._flow = flow
            return flow

    def vocabulary_of(self, vehicle: Vehicle) -> Vocabulary:
        """The names of a vehicle; made anew only where it was described further."""
        kept = self._vocabulary
        if kept is None or kept.vehicle is not vehicle:
            kept = self._vocabulary = vocabulary_of(vehicle)
        return kept


def _begins_with(entries: Sequence[Entry], earlier: Sequence[Entry]) -> bool:
    """Whether a record is an earlier one grown: it holds the earlier one's last line where that stood."""
    return len(entries) >= len(earlier) and entries[len(earlier) - 1 : len(earlier)] == earlier[-1:]


class _Plans:
    """Plans kept by exactly what they were worked out from."""

    def __init__(self) -> None:
        self._kept: dict[tuple[object, ...], SessionPlan] = {}
        self._lock = Lock()

    def get(self, key: tuple[object, ...], work_out: Callable[[], SessionPlan]) -> SessionPlan:
        with self._lock:
            plan = self._kept.get(key)
            if plan is None:
                while len(self._kept) >= MOST_PLANS:
                    del self._kept[next(iter(self._kept))]
                plan = self._kept[key] = work_out()
            return plan


class _Planning(Flow):
    """A flow that works out the same session once, and folds only what stands behind an earlier one."""

    def __init__(
        self, entries: tuple[Entry, ...], now: datetime, plans: _Plans, earlier: Flow | None = None
    ) -> None:
        super().__init__(entries, now)
        self._plans = plans
        self._earlier = earlier

    @cached_property
    def fold(self) -> Fold:
        """The earlier flow's fold with the lines behind laid on; else a new one."""
        earlier, self._earlier = self._earlier, None
        if earlier is None:
            return Fold.of(self.entries)
        return earlier.fold.followed_by(self.entries[len(earlier.entries) :]) or Fold.of(self.entries)

    def session(self, hours: float = 3.0, *, helper: bool = False) -> SessionPlan:
        owed: tuple[Debt, ...] = self.owed
        key = (self.line, self.today, owed, hours, helper)
        return self._plans.get(key, lambda: super(_Planning, self).session(hours, helper=helper))


class _Remembered:
    """A store whose lines are remembered: a record only grows, so its last line tells all."""

    def __init__(self, store: RecordStore, at_hand: AtHand) -> None:
        self._store = store
        self._at_hand = at_hand

    def read(self) -> tuple[Entry, ...]:
        return self._at_hand.entries_of(self._store)

    def append(self, entries: Sequence[Entry], expected_last: int) -> tuple[Entry, ...]:
        stored = self._store.append(entries, expected_last)
        self._at_hand.grown(stored)
        return stored

    def last_line(self) -> int:
        return self._store.last_line()


class _Often(Restoration):
    """A restoration whose answers of this minute are kept."""

    def __init__(self, store: RecordStore, at_hand: AtHand, who: str) -> None:
        super().__init__(store, now=at_hand.clock(), who=who)
        self._at_hand = at_hand

    def flow(self, on: date | None = None, by: date | None = None, *, seed: int = 1) -> Flow:
        if on is None and by is None and seed == 1:
            return self._at_hand.flow_of(self.entries, self.now)
        return super().flow(on, by, seed=seed)

    def vocabulary(self, flow: Flow) -> Vocabulary:
        return self._at_hand.vocabulary_of(flow.vehicle)
