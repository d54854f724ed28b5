"""The record in one SQLite file: `journal.db` in the vehicle's folder.

Begin one with `create`, come back to it with `open_record`. Each line is on the disk before
`append` answers. The file is the only truth: everything else is computed from it.
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from types import TracebackType

from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.entry import Entry
from witnessmark.store.appending import appended
from witnessmark.store.disk_trouble import BUSY, DISK_TROUBLE, code_of, told
from witnessmark.store.folders import refuse_shared_folder
from witnessmark.store.record_store import NotWritten
from witnessmark.store.rows import entries_from, keepable, row_of
from witnessmark.store.schema import APPLICATION, COLUMNS, FILE, OLDEST_SQLITE, SCHEMA, lay, number, settle

WAIT_SECONDS = 10.0  # for another program to finish its line


def create(folder: Path, *, accept_folder: bool = False) -> SqliteRecord:
    """Begin an empty record in a folder, which is made where it is missing.

    accept_folder  take a network or cloud folder all the same

    Raises BadInput where a record already stands, where something else does, or for such a folder.
    """
    refuse_shared_folder(folder, accept=accept_folder)
    file = folder / FILE
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise BadInput(
            given=f"the folder {folder} cannot be made: {trouble.strerror}",
            holds="a folder this user may write",
            do="Name another folder, or make this one by hand.",
        ) from trouble
    connection = _connected(file)
    try:
        connection.execute("BEGIN IMMEDIATE")
        if connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
            raise BadInput(
                given=f"{file} already exists",
                holds="a folder without a record",
                do="Open that record, or begin this one in another folder.",
            )
        lay(connection)
        connection.execute("COMMIT")
        settle(connection)
    except DISK_TROUBLE as trouble:
        connection.close()
        raise told(trouble, file) from trouble
    except BaseException:
        connection.close()
        raise
    return SqliteRecord(file, connection)


def open_record(folder: Path, *, accept_folder: bool = False) -> SqliteRecord:
    """Open the record in a folder.

    Raises BadInput where there is none or the folder is no place for one, RecordDamaged where
    the file is not a record this program can read.
    """
    refuse_shared_folder(folder, accept=accept_folder)
    file = folder / FILE
    if not file.is_file():
        raise BadInput(
            given=f"there is no record in {folder}",
            holds=f"a folder with {FILE} in it",
            do="Name the vehicle's folder, or begin a record there.",
        )
    connection = _connected(file)
    try:
        _demand_ours(connection, file)
        settle(connection)
    except DISK_TROUBLE as trouble:
        connection.close()
        raise told(trouble, file) from trouble
    except BaseException:
        connection.close()
        raise
    return SqliteRecord(file, connection)


class SqliteRecord:
    """An open record. Close it, or use it in a `with`."""

    def __init__(self, file: Path, connection: sqlite3.Connection) -> None:
        self.file = file
        self._connection = connection

    def read(self) -> tuple[Entry, ...]:
        """Every entry, by line."""
        try:
            return entries_from(self._connection.execute(f"SELECT {COLUMNS} FROM entries ORDER BY line"))
        except DISK_TROUBLE as trouble:
            raise told(trouble, self.file) from trouble

    def last_line(self) -> int:
        """The number of the last line, 0 in an empty record."""
        try:
            return _Table(self._connection).last()
        except DISK_TROUBLE as trouble:
            raise told(trouble, self.file) from trouble

    def append(self, entries: Sequence[Entry], expected_last: int) -> tuple[Entry, ...]:
        """Write all of the entries or none; see `RecordStore.append`."""
        kept = [keepable(entry) for entry in entries]
        try:
            with self._transaction():
                return appended(_Table(self._connection), entries, kept, expected_last)
        except DISK_TROUBLE as trouble:
            if code_of(trouble) in BUSY:
                why = f"another program held the record for {WAIT_SECONDS:.0f} seconds; nothing was written"
                raise NotWritten(why, unwritten=entries, last=expected_last) from trouble
            raise told(trouble, self.file) from trouble

    def close(self) -> None:
        """Let go of the file."""
        self._connection.close()

    def __enter__(self) -> SqliteRecord:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @contextmanager
    def _transaction(self) -> Iterator[None]:
        self._connection.execute("BEGIN IMMEDIATE")
        try:
            yield
            self._connection.execute("COMMIT")
        except BaseException:
            if self._connection.in_transaction:
                self._connection.execute("ROLLBACK")
            raise


class _Table:
    """The table of entries, inside a transaction."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection

    def last(self) -> int:
        return int(self._connection.execute("SELECT coalesce(max(line), 0) FROM entries").fetchone()[0])

    def with_ids(self, ids: Sequence[str]) -> dict[str, Entry]:
        asked = f"SELECT {COLUMNS} FROM entries WHERE id IN (SELECT value FROM json_each(?))"
        rows = self._connection.execute(asked, (json.dumps(ids),))
        return {entry.id: entry for entry in entries_from(rows)}

    def insert(self, entries: Sequence[Entry]) -> None:
        rows = [row_of(entry, entry.line) for entry in entries]
        self._connection.executemany(f"INSERT INTO entries ({COLUMNS}) VALUES (?,?,?,?,?,?,?,?,?)", rows)


def _connected(file: Path) -> sqlite3.Connection:
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise BadInput(
            given=f"this Python carries SQLite {sqlite3.sqlite_version}",
            holds=f"SQLite {'.'.join(map(str, OLDEST_SQLITE))} or later",
            do="Install a newer Python.",
        )
    try:
        return sqlite3.connect(file, timeout=WAIT_SECONDS, isolation_level=None)
    except DISK_TROUBLE as trouble:
        raise told(trouble, file) from trouble


def _demand_ours(connection: sqlite3.Connection, file: Path) -> None:
    tables = connection.execute("SELECT count(*) FROM sqlite_master WHERE name = 'entries'").fetchone()[0]
    if number(connection, "application_id") != APPLICATION or not tables:
        raise RecordDamaged(
            f"{file} is no record of this program, or was never finished. Nothing was changed."
        )
    schema = number(connection, "user_version")
    if schema != SCHEMA:
        raise RecordDamaged(f"{file} has layout {schema}, this program knows {SCHEMA}: renew the program.")
