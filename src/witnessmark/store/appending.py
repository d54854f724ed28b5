"""How lines are appended, whatever the table lies in: the same order of looking, refusing and writing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from msgspec.structs import replace

from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import VERSION, Entry
from witnessmark.store.record_store import NotWritten
from witnessmark.store.rows import says_the_same


class Table(Protocol):
    """The table of a record, held by one writer from the first look to the commit."""

    def last(self) -> int:
        """The number of the last line, 0 in an empty table."""
        ...

    def with_ids(self, ids: Sequence[str]) -> dict[str, Entry]:
        """The lines that carry one of these ids."""
        ...

    def insert(self, entries: Sequence[Entry]) -> None:
        """Put these lines behind the last one; each carries its number."""
        ...


def appended(
    table: Table, handed: Sequence[Entry], kept: Sequence[Entry], expected_last: int
) -> tuple[Entry, ...]:
    """Append what is new, inside the transaction the caller has begun; see `RecordStore.append`.

    handed  the entries as they came
    kept    the same entries as they will read back
    """
    known, last = table.with_ids([entry.id for entry in kept]), table.last()
    fresh: list[Entry] = []
    for entry in kept:
        stood = known.get(entry.id)
        if stood is None:
            known[entry.id] = replace(entry, line=last + len(fresh) + 1, version=VERSION)
            fresh.append(known[entry.id])
        elif not says_the_same(stood, entry):
            raise _id_taken(entry, stood)
    if fresh and last != expected_last:
        why = f"the record stands at line {last}, not at line {expected_last}; nothing was written"
        raise NotWritten(f"{why}. Read it again, then write once more.", unwritten=handed, last=last)
    table.insert(fresh)
    return tuple(known[entry.id] for entry in kept)


def _id_taken(entry: Entry, stood: Entry) -> BadInput:
    return BadInput(
        given=f"the line {entry.words!r} carries the id of line {stood.line}, {stood.words!r}",
        holds="an id of its own for each line",
        do="Write it again as a new line; nothing was written.",
    )
