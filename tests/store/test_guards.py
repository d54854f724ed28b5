"""The guards, attacked over a second connection that knows nothing of this program."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from typing import Any

import psycopg
import pytest

from tests.journal.lines import unwritten
from tests.store.place import Place, rows
from witnessmark.journal.facts import Remarked

HEADING = "'2026-03-14', '10:00', '2026-03-14T10:00:00', 'you', 'forged', 1, '{\"did\":\"remarked\"}'"

# Ways that any SQL knows.
ATTACKS = [
    "UPDATE entries SET words = 'forged'",
    "UPDATE entries SET words = 'forged' WHERE line = 1",
    "UPDATE entries SET words = words",
    "UPDATE entries SET line = line + 10",
    "UPDATE entries SET words = other.words FROM entries AS other WHERE other.line = 2",
    "DELETE FROM entries",
    "DELETE FROM entries WHERE line = 3",
    "WITH doomed AS (SELECT 2 AS line) DELETE FROM entries WHERE line IN (SELECT line FROM doomed)",
    f"INSERT INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (4, 'id-1', {HEADING})",
    f"INSERT INTO entries VALUES (5, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (0, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (-1, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (NULL, 'new-id', {HEADING})",
    f"INSERT INTO entries VALUES (1, 'new-id', {HEADING}) ON CONFLICT (line) DO UPDATE SET words = 'forged'",
    f"INSERT INTO entries VALUES (4, 'id-1', {HEADING}) ON CONFLICT (id) DO UPDATE SET words = 'forged'",
    f"INSERT INTO entries VALUES (1, 'id-1', {HEADING}) ON CONFLICT DO NOTHING",
    "INSERT INTO entries SELECT line, id, day, time, written, who, 'forged', version, fact FROM entries",
]
# Ways that only one of the two knows.
ON_A_FILE = [
    "UPDATE OR REPLACE entries SET line = 2 WHERE line = 1",
    "UPDATE OR REPLACE entries SET id = 'id-2' WHERE line = 1",
    "UPDATE OR IGNORE entries SET line = 9 WHERE line = 1",
    f"REPLACE INTO entries VALUES (1, 'new-id', {HEADING})",
    f"REPLACE INTO entries VALUES (3, 'id-3', {HEADING})",
    f"INSERT OR REPLACE INTO entries VALUES (4, 'id-1', {HEADING})",
    f"INSERT OR REPLACE INTO entries VALUES (2, 'id-1', {HEADING})",
    f"INSERT OR IGNORE INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT OR ROLLBACK INTO entries VALUES (1, 'new-id', {HEADING})",
    f"INSERT OR FAIL INTO entries VALUES (4, 'id-3', {HEADING})",
    f"INSERT INTO entries VALUES (1, 'id-1', {HEADING}) ON CONFLICT DO UPDATE SET words = excluded.words",
    "INSERT OR REPLACE INTO entries SELECT * FROM entries",
]
ON_A_SERVER = [
    "TRUNCATE entries",
    "TRUNCATE entries RESTART IDENTITY CASCADE",
    "DELETE FROM entries USING entries AS other WHERE entries.line = other.line",
    "UPDATE ONLY entries SET line = 9 WHERE line = 3 RETURNING *",
    "MERGE INTO entries USING (SELECT 2 AS line) AS x ON entries.line = x.line WHEN MATCHED THEN DELETE",
    "MERGE INTO entries USING (SELECT 2 AS line) AS x ON entries.line = x.line"
    " WHEN MATCHED THEN UPDATE SET words = 'forged'",
    f"INSERT INTO entries VALUES (4, 'id-4', {HEADING}), (4, 'id-5', {HEADING})",
    f"INSERT INTO entries OVERRIDING SYSTEM VALUE VALUES (2, 'id-2', {HEADING})",
    f"WITH forged AS (INSERT INTO entries VALUES (9, 'id-9', {HEADING}) RETURNING line) SELECT * FROM forged",
]

REFUSED = (sqlite3.IntegrityError, psycopg.IntegrityError)


@pytest.fixture(autouse=True)
def _three_lines(place: Place) -> None:
    with place.create() as record:
        record.append([unwritten(n, Remarked(remark=f"number {n}")) for n in (1, 2, 3)], 0)


@pytest.fixture(params=["as it comes", "guards asked to look away"])
def raw(place: Place, request: pytest.FixtureRequest) -> Iterator[Any]:
    """A second connection; in the second form it asks for what would let a weaker guard sleep."""
    connection = place.raw()
    away = request.param != "as it comes"
    if place.kept_at:
        connection.execute(f"SET session_replication_role = {'replica' if away else 'origin'}")
    else:
        connection.execute(f"PRAGMA recursive_triggers = {'OFF' if away else 'ON'}")
    yield connection
    connection.close()


def attacks(place: Place) -> list[str]:
    return ATTACKS + (ON_A_SERVER if place.kept_at else ON_A_FILE)


def test_a_line_once_written_cannot_be_touched(place: Place, raw: Any) -> None:
    before = rows(raw)
    for attack in attacks(place):
        with pytest.raises(REFUSED, match="of the record"):
            raw.execute(attack)
        assert rows(raw) == before, attack
    with place.reopen() as record:
        assert [e.words for e in record.read()] == ["line 1", "line 2", "line 3"]


def test_an_attack_inside_a_transaction_leaves_no_line_touched(place: Place, raw: Any) -> None:
    before = rows(raw)
    raw.execute("BEGIN")
    raw.execute(f"INSERT INTO entries VALUES (4, 'id-4', {HEADING})")
    with pytest.raises(REFUSED):
        raw.execute("DELETE FROM entries")
    raw.execute("COMMIT")
    # A file leaves the rest of the transaction to its writer; a server takes all of it back.
    assert rows(raw)[:3] == before
    assert [row[0] for row in rows(raw)[3:]] == ([] if place.kept_at else [4])


def test_the_next_line_is_let_in(place: Place, raw: Any) -> None:
    raw.execute(f"INSERT INTO entries VALUES (4, 'id-4', {HEADING})")
    with place.reopen() as record:
        assert record.last_line() == 4


@pytest.mark.parametrize("column", ["id", "day", "time", "written", "who", "words", "version", "fact"])
def test_a_line_with_something_missing_is_refused(raw: Any, column: str) -> None:
    values = {
        "line": "4", "id": "'id-4'", "day": "'2026-03-14'", "time": "'10:00'",
        "written": "'2026-03-14T10:00:00'", "who": "'you'", "words": "''", "version": "1", "fact": "'{}'",
    } | {column: "NULL"}  # fmt: skip
    with pytest.raises(REFUSED, match=column):
        raw.execute(f"INSERT INTO entries VALUES ({', '.join(values.values())})")


def test_a_line_number_that_is_no_number_is_refused(raw: Any) -> None:
    with pytest.raises((sqlite3.IntegrityError, psycopg.DataError)):
        raw.execute(f"INSERT INTO entries VALUES ('4th', 'id-4', {HEADING})")


def test_lines_copied_in_meet_the_same_guard(place: Place, raw: Any) -> None:
    """A bulk load, which a server has beside INSERT."""
    if not place.kept_at:
        raw.execute("CREATE TABLE load AS SELECT * FROM entries")
        with pytest.raises(REFUSED, match="of the record"):
            raw.execute("INSERT INTO entries SELECT * FROM load")
        return
    with pytest.raises(REFUSED, match="of the record"), raw.cursor() as cursor:  # noqa: SIM117
        with cursor.copy("COPY entries FROM STDIN") as copy:
            copy.write_row((2, "x", "2026-03-14", "10:00", "", "", "", 1, "{}"))
