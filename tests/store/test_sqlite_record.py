from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.facts import Remarked
from witnessmark.store import sqlite_record
from witnessmark.store.record_store import NotWritten
from witnessmark.store.schema import APPLICATION, FILE, SCHEMA
from witnessmark.store.sqlite_record import SqliteRecord, create, open_record

ONE, TWO, THREE = (unwritten(n, Remarked(remark=f"number {n}")) for n in (1, 2, 3))


def test_a_folder_with_a_space_and_an_umlaut_and_signs_will_do(tmp_path: Path) -> None:
    folder = tmp_path / "Mein Rädchen #1 100%?"
    with create(folder) as record:
        record.append([ONE], 0)
    with open_record(folder) as record:
        assert record.last_line() == 1
    assert (folder / FILE).is_file()


def test_no_record_is_told_and_none_is_made(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="there is no record"):
        open_record(tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_a_beginning_cut_short_can_be_begun_again(tmp_path: Path) -> None:
    (tmp_path / FILE).touch()
    with pytest.raises(RecordDamaged, match="never finished"):
        open_record(tmp_path)
    with create(tmp_path) as record:
        assert record.last_line() == 0


def test_another_programs_database_is_left_alone(tmp_path: Path) -> None:
    other = sqlite3.connect(tmp_path / FILE)
    other.execute("CREATE TABLE entries (a)")
    other.close()
    before = (tmp_path / FILE).read_bytes()
    with pytest.raises(RecordDamaged, match="no record of this program"):
        open_record(tmp_path)
    with pytest.raises(BadInput, match="already exists"):
        create(tmp_path)
    assert (tmp_path / FILE).read_bytes() == before


def test_a_file_that_is_no_database_is_damage(tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"not a database, but long enough to be looked at" * 100)
    with pytest.raises(RecordDamaged, match="cannot be read"):
        open_record(tmp_path)


def test_a_newer_layout_asks_for_a_newer_program(tmp_path: Path) -> None:
    create(tmp_path).close()
    raw = sqlite3.connect(tmp_path / FILE)
    raw.execute(f"PRAGMA user_version = {SCHEMA + 1}")
    raw.close()
    with pytest.raises(RecordDamaged, match="renew the program"):
        open_record(tmp_path)


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    with pytest.raises(BadInput, match="cannot be made"):
        create(tmp_path / "file" / "ten")


def test_too_old_a_database_library_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sqlite_record, "OLDEST_SQLITE", (99, 0, 0))
    with pytest.raises(BadInput, match=r"SQLite 99\.0\.0 or later"):
        create(tmp_path)


def test_a_record_held_by_another_program_loses_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sqlite_record, "WAIT_SECONDS", 0.0)
    with create(tmp_path) as record:
        holder = sqlite3.connect(tmp_path / FILE, isolation_level=None)
        holder.execute("BEGIN IMMEDIATE")
        with open_record(tmp_path) as waiting, pytest.raises(NotWritten) as caught:
            waiting.append([ONE], 0)
        holder.close()
        assert caught.value.unwritten == (ONE,)
        assert record.append([ONE], 0)[0].line == 1


def test_the_writers_place_is_taken_before_anything_is_looked_at(tmp_path: Path) -> None:
    """Another writer waits from the first look to the commit, and so never sees a last line that moves."""
    done: list[str] = []
    with create(tmp_path) as record:
        record._connection.set_trace_callback(done.append)
        record.append([ONE, TWO], 0)
    assert (done[0], done[-1], done.count("COMMIT")) == ("BEGIN IMMEDIATE", "COMMIT", 1)


def test_every_commit_is_flushed_and_every_guard_sees_a_replacement(tmp_path: Path) -> None:
    create(tmp_path).close()
    with open_record(tmp_path) as record:
        assert {name: pragma(record, name) for name in SETTLED} == SETTLED


SETTLED = {
    "journal_mode": "wal",
    "synchronous": 2,
    "fullfsync": 1,
    "checkpoint_fullfsync": 1,
    "recursive_triggers": 1,
    "application_id": APPLICATION,
    "user_version": SCHEMA,
}


def pragma(record: SqliteRecord, name: str) -> object:
    return record._connection.execute(f"PRAGMA {name}").fetchone()[0]
