"""A record kept at hand between questions: answers are worked out again only when it has moved."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from pathlib import Path
from threading import Lock

from witnessmark.journal.entry import Entry
from witnessmark.owed.debt import Debt
from witnessmark.plan.session import SessionPlan
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.thumbnails import Thumbnails
from witnessmark.store.opening import open_record
from witnessmark.store.record_store import RecordStore

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
        self._flow: Flow | None = None
        self._plans: _Plans = _Plans()

    @contextmanager
    def opened(self) -> Iterator[Restoration]:
        """The record, opened for one question or one line, and closed behind it."""
        with open_record(self.folder) as store:
            yield _Often(_Remembered(store, self), self)

    def entries_of(self, store: RecordStore) -> tuple[Entry, ...]:
        """The lines, read from the disk only where another hand has written since."""
        with self._lock:
            if store.last_line() != len(self._entries):
                self._entries = store.read()
            return self._entries

    def flow_of(self, entries: tuple[Entry, ...], now: datetime) -> Flow:
        """The answers at this minute; worked out once for as long as nothing moves."""
        minute = now.replace(second=0, microsecond=0)
        with self._lock:
            kept = self._flow
            if kept is None or kept.now != minute or kept.entries != entries:
                kept = self._flow = _Planning(entries, minute, self._plans)
            return kept


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
    """A flow that works out the same session once."""

    def __init__(self, entries: tuple[Entry, ...], now: datetime, plans: _Plans) -> None:
        super().__init__(entries, now)
        self._plans = plans

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
        return self._store.append(entries, expected_last)

    def last_line(self) -> int:
        return self._store.last_line()


class _Often(Restoration):
    """A restoration whose answers of this minute are kept."""

    def __init__(self, store: RecordStore, at_hand: AtHand) -> None:
        super().__init__(store, now=at_hand.clock())
        self._at_hand = at_hand

    def flow(self, on: date | None = None, by: date | None = None, *, seed: int = 1) -> Flow:
        if on is None and by is None and seed == 1:
            return self._at_hand.flow_of(self.entries, self.now)
        return super().flow(on, by, seed=seed)
