"""What may happen to a file on a disk, and is told."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from witnessmark.ground.errors import RecordDamaged
from witnessmark.journal.facts import Remarked
from witnessmark.store.checking import read_back
from witnessmark.store.schema import FILE, GUARDS
from witnessmark.store.sqlite_record import create, open_record


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with create(tmp_path) as record:
        record.append([unwritten(n, Remarked(remark=f"number {n}")) for n in range(1, 6)], 0)
    return tmp_path


def told(folder: Path) -> list[tuple[int | None, str]]:
    return [(fault.line, fault.rule) for fault in read_back(folder)]


def test_reading_back_changes_no_byte(folder: Path) -> None:
    before = (folder / FILE).read_bytes()
    assert read_back(folder) == ()
    assert (folder / FILE).read_bytes() == before


@pytest.mark.parametrize("guard", sorted(GUARDS))
def test_a_guard_that_is_gone_or_is_not_what_it_was(folder: Path, guard: str) -> None:
    raw = sqlite3.connect(folder / FILE)
    raw.execute(f"DROP TRIGGER {guard}")
    assert told(folder) == [(None, "file")]
    raw.execute(f"CREATE TRIGGER {guard} BEFORE UPDATE ON entries BEGIN SELECT 1; END")
    raw.commit()
    raw.close()
    assert told(folder) == [(None, "file")]


@pytest.mark.parametrize("stain", [b"\xff", b"\x00", b"\x07", b"3"])
def test_a_stain_on_the_disk_is_told_wherever_it_falls(folder: Path, stain: bytes) -> None:
    """Each 64 bytes of the file in turn: what a stain changes is told, and nothing else is raised."""
    file = folder / FILE
    whole = file.read_bytes()
    lines = [(n, f"line {n}", f"number {n}") for n in range(1, 6)]
    for start in range(0, len(whole), 64):
        file.write_bytes(whole[:start] + stain * 64 + whole[start + 64 :])
        faults = read_back(folder)
        try:
            with open_record(folder) as record:
                read = [(e.line, e.words, e.fact.remark) for e in record.read()]
        except RecordDamaged:
            assert faults
        else:
            assert faults or read == lines


def test_a_file_that_is_no_database(tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"no database " * 1000)
    assert told(tmp_path) == [(None, "file")]


def test_another_programs_mark(folder: Path) -> None:
    raw = sqlite3.connect(folder / FILE)
    raw.execute("PRAGMA application_id = 7")
    raw.close()
    assert told(folder) == [(None, "file")]
