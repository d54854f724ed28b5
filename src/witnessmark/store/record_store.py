"""What a store of facts must do, whatever it is built on."""

from __future__ import annotations

from collections.abc import Sequence
from types import TracebackType
from typing import Protocol, Self

from witnessmark.ground.errors import LostRace
from witnessmark.journal.entry import Entry


class RecordStore(Protocol):
    """An append-only row of entries. Nothing in it is ever changed or deleted."""

    def read(self) -> tuple[Entry, ...]:
        """Every entry, by line. Raises RecordDamaged when one cannot be read."""
        ...

    def append(self, entries: Sequence[Entry], expected_last: int) -> tuple[Entry, ...]:
        """Write all of the entries or none, and hand them back with their line numbers.

        expected_last  the last line the writer had read, 0 in an empty record

        An entry whose id the store already holds is not written again: the stored line is handed
        back, so that a retry is harmless. Answers only once the lines are on the disk.

        Raises NotWritten when another line came first, BadInput for what cannot be kept.
        """
        ...

    def last_line(self) -> int:
        """The number of the last line, 0 in an empty record."""
        ...


class OpenRecord(RecordStore, Protocol):
    """A store that holds something open. Close it, or use it in a `with`."""

    def close(self) -> None:
        """Let go of what is held."""
        ...

    def __enter__(self) -> Self: ...

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None: ...


class NotWritten(LostRace):
    """Another hand wrote first. What was to be written is kept here, whole.

    unwritten  the entries as they were handed over
    last       the store's last line at that moment
    """

    def __init__(self, why: str, *, unwritten: Sequence[Entry], last: int) -> None:
        self.unwritten = tuple(unwritten)
        self.last = last
        super().__init__(why)
