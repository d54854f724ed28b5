"""Reading a record back whole: the file, each row, the rules of the journal, then the photos it names."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import closing
from pathlib import Path

import msgspec

from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.rules.every import all_faults
from witnessmark.store.disk_trouble import DISK_TROUBLE
from witnessmark.store.kept_at import KeptAt, setting_in
from witnessmark.store.opening import server_store
from witnessmark.store.photo_folder import photo_faults
from witnessmark.store.rows import Row, entries_from
from witnessmark.store.schema import APPLICATION, COLUMNS, FILE, SCHEMA, missing_guards, number

_RESTORE = "Copy the folder as it is, then take the record back from the last archive."


def read_back(folder: Path) -> tuple[Fault, ...]:
    """Every fault found in the record of a folder; a sound one has none. Changes nothing.

    Raises BadInput where the folder holds no record.
    """
    where = setting_in(folder)
    return _file_read_back(folder) if where is None else _server_read_back(folder, where)


def _server_read_back(folder: Path, where: KeptAt) -> tuple[Fault, ...]:
    told, rows = server_store().read_for_checking(where)
    return _sorted(folder, list(map(_of_file, told)), *_read_each(rows))


def _file_read_back(folder: Path) -> tuple[Fault, ...]:
    file = folder / FILE
    if not file.is_file():
        raise BadInput(
            given=f"there is no record in {folder}",
            holds=f"a folder with {FILE} in it",
            do="Name the vehicle's folder.",
        )
    try:
        with closing(sqlite3.connect(file)) as connection:
            connection.text_factory = _text
            faults = list(_faults_of_file(connection))
            rows = connection.execute(f"SELECT {COLUMNS} FROM entries ORDER BY line")
            entries, unreadable = _read_each(rows)
    except DISK_TROUBLE as trouble:
        return (_of_file(f"The file does not read as a record: {trouble}."),)
    return _sorted(folder, faults, entries, unreadable)


def _sorted(
    folder: Path, faults: list[Fault], entries: list[Entry], unreadable: list[Fault]
) -> tuple[Fault, ...]:
    """All that was found, by line: the file, lines that do not read, broken rules, lost photos."""
    ruled = _ruled(entries, {fault.line for fault in unreadable})
    found = (*faults, *unreadable, *ruled, *photo_faults(folder, entries))
    return tuple(sorted(found, key=lambda fault: fault.line or 0))


def _faults_of_file(connection: sqlite3.Connection) -> Iterator[Fault]:
    for (said,) in connection.execute("PRAGMA integrity_check"):
        if said != "ok":
            yield _of_file(f"The database reports: {said!s}.")
    if number(connection, "application_id") != APPLICATION or number(connection, "user_version") != SCHEMA:
        yield _of_file("The file does not carry the mark of a record of this program.")
    for guard in missing_guards(connection):
        yield _of_file(f"The guard {guard} is gone: lines may have been changed.")


def _read_each(rows: Iterable[Row]) -> tuple[list[Entry], list[Fault]]:
    entries: list[Entry] = []
    faults: list[Fault] = []
    for row in rows:
        try:
            entries += entries_from([msgspec.convert(row, Row)])
        except (RecordDamaged, msgspec.ValidationError) as trouble:
            faults.append(Fault(line=row[0], rule="reads back", what=f"{trouble}.", do=_RESTORE))
    return entries, faults


def _ruled(entries: list[Entry], unreadable: set[int | None]) -> Iterator[Fault]:
    """What the journal's rules find; an unreadable line is not a missing one."""
    lines = {entry.line for entry in entries} | unreadable
    whole = lines == set(range(1, len(lines) + 1))
    for fault in all_faults(entries):
        if not (whole and fault.rule == "numbering"):
            yield fault


def _text(raw: bytes) -> str | bytes:
    """The text of a cell; left as bytes, which no cell may be, where a stain has made it unreadable."""
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        return raw


def _of_file(what: str) -> Fault:
    return Fault(line=None, rule="file", what=what, do=_RESTORE)
