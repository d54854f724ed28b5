"""An entry as a row of the table, and back."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from msgspec import DecodeError, ValidationError
from msgspec.structs import replace

from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.entry import VERSION, Entry
from witnessmark.journal.wire import entry_from_json, entry_to_json, fact_from_json, fact_to_json

Row = tuple[int, str, str, str, str, str, str, int, str]


def entries_from(rows: Iterable[Row]) -> tuple[Entry, ...]:
    """The entries of many rows; facts of an older shape are lifted.

    Raises RecordDamaged naming the first line that cannot be read.
    """
    days: dict[str, date] = {}
    entries: list[Entry] = []
    for line, id_, day, time, written, who, words, version, fact in rows:
        try:
            done = days.get(day)
            if done is None:
                done = days[day] = date.fromisoformat(day)
            read = fact_from_json(fact, version)
        except (TypeError, ValueError, RecordDamaged) as trouble:
            raise RecordDamaged(f"line {line} of the record cannot be read: {trouble}") from trouble
        entries.append(
            Entry(id=id_, day=done, time=time, written=written, line=line, who=who, words=words, fact=read)
        )
    return tuple(entries)


def keepable(entry: Entry) -> Entry:
    """The entry as it will read back from the disk.

    Raises BadInput for what would not come back as it went in: a number without end, half a
    character, a fact of another shape.
    """
    try:
        raw = entry_to_json(entry)
        kept = entry_from_json(raw)
        if entry_to_json(kept) != raw:
            raise ValueError("it would not read back as it was written")
    except (RecordDamaged, DecodeError, ValidationError, TypeError, ValueError, OverflowError) as trouble:
        raise BadInput(
            given=f"the line {entry.words!r} cannot be kept: {trouble}",
            holds="plain words and finite numbers",
            do="Mend the line and write it again; nothing was written.",
        ) from trouble
    if not kept.id or "\x00" in kept.id:
        raise BadInput(
            given=f"the line {entry.words!r} carries no id",
            holds="an id made where the line was typed",
            do="Give the line an id of its own, so that it can be sent again without harm.",
        )
    return kept


def row_of(entry: Entry, line: int) -> Row:
    """The row to insert, for an entry that is known to be keepable."""
    fact = fact_to_json(entry.fact).decode()
    day = entry.day.isoformat()
    return (line, entry.id, day, entry.time, entry.written, entry.who, entry.words, VERSION, fact)


def says_the_same(stored: Entry, again: Entry) -> bool:
    """Whether a line sent again is the stored one: its moment may differ, what it says may not."""
    return replace(stored, line=0, time="", written="") == replace(again, line=0, time="", written="")
