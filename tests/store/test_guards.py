"""The guards, attacked over a second connection that knows nothing of this program."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from witnessmark.journal.facts import Remarked
from witnessmark.store.schema import FILE
from witnessmark.store.sqlite_record import create, open_record

HEADING = "'2026-03-14', '10:00', '2026-03-14T10:00:00', 'you', 'forged', 1, '{\"did\":\"remarked\"}'"

ATTACKS = [
    "UPDATE entries SET words = 'forged'",
    "UPDATE entries SET words = 'forged' WHERE line = 1",
    "UPDATE entries SET words = words",
    "UPDATE OR REPLACE entries SET line = 2 WHERE line = 1",
    "UPDATE OR REPLACE entries SET id = 'id-2' WHERE line = 1",
    "UPDATE OR IGNORE entries SET line = 9 WHERE line = 1",
    "UPDATE entries SET line = line + 10",
    "UPDATE entries SET words = other.words FROM entries AS other WHERE other.line = 2",
    "DELETE FROM entries",
    "DELETE FROM entries WHERE line = 3",
    "WITH doomed AS (SELECT 2 AS line) DELETE FROM entries WHERE line IN (SELECT line FROM doomed)",
    f"REPLACE INTO entries VALUES (1, 'new-id', {HEADING})",
    f"REPLACE INTO entries VALUES (3, 'id-3', {HEADING})",
    f"INSERT OR REPLACE INTO entries VALUES (4, 'id-1', {HEADING})",
    f"INSERT OR REPLACE INTO entries VALUES (2, 'id-1', {HEADING})",
    f"INSERT OR IGNORE INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT OR ROLLBACK INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT OR FAIL INTO entries VALUES (4, 'id-3', {HEADING})",
    f"INSERT INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (4, 'id-1', {HEADING})",
    f"INSERT INTO entries VALUES (5, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (0, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (-1, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (NULL, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (1, 'new-id', {HEADING}) ON CONFLICT (line) DO UPDATE SET words = 'forged'",
    f"INSERT INTO entries VALUES (4, 'id-1', {HEADING}) ON CONFLICT (id) DO UPDATE SET words = 'forged'",
    f"INSERT INTO entries VALUES (1, 'id-1', {HEADING}) ON CONFLICT DO UPDATE SET words = excluded.words",
    f"INSERT INTO entries VALUES (1, 'id-1', {HEADING}) ON CONFLICT DO NOTHING",
    "INSERT OR REPLACE INTO entries SELECT * FROM entries",
    "INSERT INTO entries SELECT line, id, day, time, written, who, 'forged', version, fact FROM entries",
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with create(tmp_path) as record:
        record.append([unwritten(n, Remarked(remark=f"number {n}")) for n in (1, 2, 3)], 0)
    return tmp_path


@pytest.fixture(params=["OFF", "ON"])
def raw(folder: Path, request: pytest.FixtureRequest) -> Iterator[sqlite3.Connection]:
    connection = sqlite3.connect(folder / FILE, isolation_level=None)
    connection.execute(f"PRAGMA recursive_triggers = {request.param}")
    yield connection
    connection.close()


def rows(connection: sqlite3.Connection) -> list[tuple[object, ...]]:
    return connection.execute("SELECT * FROM entries ORDER BY line").fetchall()


@pytest.mark.parametrize("attack", ATTACKS)
def test_a_line_once_written_cannot_be_touched(folder: Path, raw: sqlite3.Connection, attack: str) -> None:
    before = rows(raw)
    with pytest.raises(sqlite3.IntegrityError, match="of the record"):
        raw.execute(attack)
    assert rows(raw) == before
    with open_record(folder) as record:
        assert [e.words for e in record.read()] == ["line 1", "line 2", "line 3"]


def test_an_attack_inside_a_transaction_leaves_the_rest_of_it_to_its_writer(raw: sqlite3.Connection) -> None:
    raw.execute("BEGIN")
    raw.execute(f"INSERT INTO entries VALUES (4, 'id-4', {HEADING})")
    with pytest.raises(sqlite3.IntegrityError):
        raw.execute("DELETE FROM entries")
    raw.execute("COMMIT")
    assert [row[0] for row in rows(raw)] == [1, 2, 3, 4]


def test_the_next_line_is_let_in(folder: Path, raw: sqlite3.Connection) -> None:
    raw.execute(f"INSERT INTO entries VALUES (4, 'id-4', {HEADING})")
    with open_record(folder) as record:
        assert record.last_line() == 4


@pytest.mark.parametrize("column", ["id", "day", "time", "written", "who", "words", "version", "fact"])
def test_a_line_with_something_missing_is_refused(raw: sqlite3.Connection, column: str) -> None:
    values = {
        "line": "4", "id": "'id-4'", "day": "'2026-03-14'", "time": "'10:00'",
        "written": "'2026-03-14T10:00:00'", "who": "'you'", "words": "''", "version": "1", "fact": "'{}'",
    } | {column: "NULL"}  # fmt: skip
    with pytest.raises(sqlite3.IntegrityError, match=f"entries.{column}"):
        raw.execute(f"INSERT INTO entries VALUES ({', '.join(values.values())})")


def test_a_line_number_that_is_no_number_is_refused(raw: sqlite3.Connection) -> None:
    with pytest.raises(sqlite3.IntegrityError):
        raw.execute(f"INSERT INTO entries VALUES ('4th', 'id-4', {HEADING})")
