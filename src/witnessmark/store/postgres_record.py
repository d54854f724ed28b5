"""The record on a database server, for a workshop with several machines.

It keeps the same promises as the file: lines are only ever added, another hand that wrote first is
told, and `append` answers only once the commit is on the server's disk.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from types import TracebackType
from typing import Any

import psycopg
from psycopg import Connection, errors, sql

from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.entry import Entry
from witnessmark.store.appending import appended
from witnessmark.store.kept_at import KeptAt
from witnessmark.store.postgres_schema import (
    INSERT,
    LAYOUT,
    TAKE_PLACE,
    lay,
    layout_of,
    missing_guards,
    schema_name,
)
from witnessmark.store.postgres_trouble import first_line, told
from witnessmark.store.record_store import NotWritten
from witnessmark.store.rows import Row, entries_from, keepable, row_of
from witnessmark.store.schema import COLUMNS

WAIT_SECONDS = 10  # for another hand to finish its line, and for the server to answer at all

_ASK_SETTINGS = """
SELECT current_setting('fsync'), current_setting('synchronous_commit'), current_setting('server_encoding')
"""


def create(where: KeptAt) -> PostgresRecord:
    """Begin an empty record on a server. Raises BadInput where one of that name stands there already."""
    connection = connected(where)
    try:
        with connection.transaction():
            lay(connection, schema_name(where.name))
        _settle(connection, where)
    except errors.DuplicateSchema as trouble:
        connection.close()
        raise BadInput(
            given=f"{where} already exists",
            holds="a name under which nothing is kept yet",
            do="Open that record, or begin this one under another name.",
        ) from trouble
    except psycopg.Error as trouble:
        connection.close()
        raise told(trouble, where) from trouble
    return PostgresRecord(where, connection)


def open_record(where: KeptAt) -> PostgresRecord:
    """Open a record on a server. Raises BadInput where none of that name is there."""
    connection = connected(where)
    try:
        _demand_ours(connection, where)
        _settle(connection, where)
    except psycopg.Error as trouble:
        connection.close()
        raise told(trouble, where) from trouble
    except BaseException:
        connection.close()
        raise
    return PostgresRecord(where, connection)


class PostgresRecord:
    """An open record. Close it, or use it in a `with`."""

    def __init__(self, where: KeptAt, connection: Connection[Any]) -> None:
        self.where = where
        self._connection = connection

    def read(self) -> tuple[Entry, ...]:
        """Every entry, by line."""
        try:
            return entries_from(rows_of(self._connection))
        except psycopg.Error as trouble:
            raise told(trouble, self.where) from trouble

    def last_line(self) -> int:
        """The number of the last line, 0 in an empty record."""
        try:
            return _Table(self._connection).last()
        except psycopg.Error as trouble:
            raise told(trouble, self.where) from trouble

    def append(self, entries: Sequence[Entry], expected_last: int) -> tuple[Entry, ...]:
        """Write all of the entries or none; see `RecordStore.append`."""
        kept = [keepable(entry) for entry in entries]
        try:
            with self._connection.transaction():
                self._connection.execute(TAKE_PLACE)
                return appended(_Table(self._connection), entries, kept, expected_last)
        except errors.LockNotAvailable as trouble:
            why = f"another hand held the record for {WAIT_SECONDS} seconds; nothing was written"
            raise NotWritten(why, unwritten=entries, last=expected_last) from trouble
        except psycopg.Error as trouble:
            raise told(trouble, self.where) from trouble

    def close(self) -> None:
        """Let go of the server."""
        self._connection.close()

    def __del__(self) -> None:
        self.close()  # a command that ends lets go, as it does of a file

    def __enter__(self) -> PostgresRecord:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


class _Table:
    """The table of entries, inside a transaction."""

    def __init__(self, connection: Connection[Any]) -> None:
        self._connection = connection

    def last(self) -> int:
        row = self._connection.execute("SELECT coalesce(max(line), 0) FROM entries").fetchone()
        assert row is not None
        return int(row[0])

    def with_ids(self, ids: Sequence[str]) -> dict[str, Entry]:
        rows = self._connection.execute(
            f"SELECT {COLUMNS} FROM entries WHERE id = ANY(%s)", (list(map(_kept, ids)),)
        )
        return {entry.id: entry for entry in entries_from(map(_typed_row, rows))}

    def insert(self, entries: Sequence[Entry]) -> None:
        rows = [_kept_row(row_of(entry, entry.line)) for entry in entries]
        if rows:
            with self._connection.cursor() as cursor:
                cursor.executemany(INSERT, rows)


def connected(where: KeptAt) -> Connection[Any]:
    """A connection to the server, in transactions of our own.

    Raises BadInput where the server does not answer or lets nobody in.
    """
    try:
        return psycopg.connect(
            where.address,
            autocommit=True,
            connect_timeout=WAIT_SECONDS,
            application_name="witnessmark",
            client_encoding="UTF8",
        )
    except (psycopg.Error, UnicodeError) as trouble:
        said = first_line(trouble) if isinstance(trouble, psycopg.Error) else trouble
        raise BadInput(
            given=f"the database {where.address} does not let us in: {said}",
            holds="a database server that answers, and a user who may log in",
            do="See that it runs; keep its pass word in your own .pgpass file.",
        ) from trouble


def rows_of(connection: Connection[Any]) -> Iterable[Row]:
    """Every row by line, its words as they were typed."""
    return map(_typed_row, connection.execute(f"SELECT {COLUMNS} FROM entries ORDER BY line"))


def read_for_checking(where: KeptAt) -> tuple[list[str], list[Row]]:
    """What is wrong with the table itself, in sentences; and every row, readable or not. Changes nothing."""
    with open_record(where) as record, record._connection.transaction():
        connection = record._connection
        try:
            gone = [
                f"The guard {guard} is gone: lines may have been changed."
                for guard in missing_guards(connection)
            ]
            return gone, list(rows_of(connection))
        except psycopg.Error as trouble:
            return [f"The table does not read as a record: {first_line(trouble)}."], []


def _demand_ours(connection: Connection[Any], where: KeptAt) -> None:
    layout = layout_of(connection, schema_name(where.name))
    if layout is None:
        raise BadInput(
            given=f"there is no record {where}",
            holds="the name of a record that was begun there",
            do="Begin it, or mend the name in the setting.",
        )
    if layout != LAYOUT:
        raise RecordDamaged(f"{where} is {layout or 'no record of this program'!r}, not {LAYOUT!r}.")


def _settle(connection: Connection[Any], where: KeptAt) -> None:
    """What every connection needs: its schema, a bound to waiting, a commit that is on the disk."""
    named = sql.Identifier(schema_name(where.name))
    connection.execute(sql.SQL("SET search_path = {}").format(named))
    connection.execute(f"SET lock_timeout = '{WAIT_SECONDS}s'")
    row = connection.execute(_ASK_SETTINGS).fetchone()
    assert row is not None
    if row[0] != "on" or row[2] != "UTF8":
        connection.close()
        raise BadInput(
            given=f"the database {where.address} has fsync {row[0]} and letters in {row[2]}",
            holds="a server that writes through to its disk (fsync on), and a database in UTF8",
            do="Have its keeper settle that; nothing was written.",
        )
    if row[1] == "off":
        connection.execute("SET synchronous_commit = on")


def _kept_row(row: Row) -> Row:
    """A row as the server keeps it; a fact is JSON and holds no NUL."""
    line, id_, day, time, written, who, words, version, fact = row
    return (line, _kept(id_), day, _kept(time), _kept(written), _kept(who), _kept(words), version, fact)


def _typed_row(row: Sequence[Any]) -> Row:
    """A row with its texts as they were typed."""
    line, id_, day, time, written, who, words, version, fact = row
    return (line, _typed(id_), day, _typed(time), _typed(written), _typed(who), _typed(words), version, fact)


def _kept(text: str) -> str:
    r"""A text as the server keeps it, which takes no NUL.

    >>> _kept("a\x00b"), _kept("a\\b")
    ('a\\0b', 'a\\\\b')
    """
    return text.replace("\\", "\\\\").replace("\x00", "\\0")


def _typed(text: str) -> str:
    r"""A text as it was typed.

    >>> [_typed(_kept(text)) == text for text in ("a\x00b", "a\\0b", "\\", "\\\x00")]
    [True, True, True, True]
    """
    return "\\".join(piece.replace("\\0", "\x00") for piece in text.split("\\\\"))
