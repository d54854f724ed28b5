from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.facts import Remarked
from witnessmark.store.checking import read_back
from witnessmark.store.disk_trouble import BUSY, code_of, told
from witnessmark.store.sqlite_record import create

FILE = Path("ten") / "journal.db"


def trouble(code: int) -> sqlite3.Error:
    error = sqlite3.OperationalError("what the database says")
    error.sqlite_errorcode = code
    return error


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (sqlite3.SQLITE_FULL, "the disk is full"),
        (sqlite3.SQLITE_READONLY, "may not be written to"),
        (sqlite3.SQLITE_READONLY_DIRECTORY, "may not be written to"),
        (sqlite3.SQLITE_CANTOPEN_ISDIR, "cannot be opened"),
        (sqlite3.SQLITE_IOERR_WRITE, "the disk reported an error"),
        (sqlite3.SQLITE_IOERR_FSYNC, "the disk reported an error"),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, "held by another program"),
        (sqlite3.SQLITE_PERM, "may not be opened"),
    ],
)
def test_what_a_person_can_mend_is_told_in_three_parts(code: int, words: str) -> None:
    error = told(trouble(code), FILE)
    assert isinstance(error, BadInput)
    assert words in error.given
    assert str(FILE) in error.given
    assert error.holds
    assert error.do


@pytest.mark.parametrize(
    "code", [sqlite3.SQLITE_CORRUPT_VTAB, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_ERROR, 0]
)
def test_anything_else_is_damage(code: int) -> None:
    assert isinstance(told(trouble(code), FILE), RecordDamaged)


def test_a_message_that_cannot_be_decoded_is_damage() -> None:
    spoilt = UnicodeDecodeError("utf-8", b"\x84", 0, 1, "invalid start byte")
    assert code_of(spoilt) == 0
    assert isinstance(told(spoilt, FILE), RecordDamaged)


def test_busy_is_known_in_all_its_forms() -> None:
    assert code_of(trouble(sqlite3.SQLITE_BUSY_RECOVERY)) in BUSY


def test_a_disk_that_fills_up_half_way_leaves_every_line_that_was_acknowledged(tmp_path: Path) -> None:
    lines = [unwritten(n, Remarked(remark="x" * 900)) for n in range(200)]
    with create(tmp_path) as record:
        record.append(lines[:2], 0)
        record._connection.execute("PRAGMA max_page_count = 12")  # the database's own way of a full disk
        with pytest.raises(BadInput, match="the disk is full"):
            record.append(lines[2:], 2)
        assert record.last_line() == 2
        record._connection.execute("PRAGMA max_page_count = 1000000")
        assert record.append(lines[2:], 2)[-1].line == 200
    assert read_back(tmp_path) == ()
