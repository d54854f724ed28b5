"""A record that was tampered with, past its guards, is found out."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.facts import Remarked, TookOff
from witnessmark.store.checking import read_back
from witnessmark.store.schema import FILE, GUARDS
from witnessmark.store.sqlite_record import create, open_record


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with create(tmp_path) as record:
        record.append([unwritten(n, Remarked(remark=f"number {n}")) for n in range(1, 6)], 0)
    return tmp_path


def past_the_guards(folder: Path, *statements: str) -> None:
    """Do what a slip cannot: take the guards away, change the file, put them back."""
    raw = sqlite3.connect(folder / FILE, isolation_level=None)
    for name in GUARDS:
        raw.execute(f"DROP TRIGGER {name}")
    for statement in statements:
        raw.execute(statement)
    for guard in GUARDS.values():
        raw.execute(guard)
    raw.close()


def told(folder: Path) -> list[tuple[int | None, str]]:
    return [(fault.line, fault.rule) for fault in read_back(folder)]


def test_a_sound_record_reads_back_clean_and_unchanged(folder: Path) -> None:
    before = (folder / FILE).read_bytes()
    assert read_back(folder) == ()
    assert (folder / FILE).read_bytes() == before


def test_a_line_taken_out(folder: Path) -> None:
    past_the_guards(folder, "DELETE FROM entries WHERE line = 3")
    assert told(folder) == [(4, "numbering")]


def test_every_unreadable_line_is_named_at_once(folder: Path) -> None:
    past_the_guards(
        folder,
        "UPDATE entries SET fact = '{}' WHERE line = 2",
        "UPDATE entries SET day = 'Friday' WHERE line = 4",
        "UPDATE entries SET version = 99 WHERE line = 5",
    )
    assert told(folder) == [(2, "reads back"), (4, "reads back"), (5, "reads back")]


def test_an_id_that_stands_twice(folder: Path) -> None:
    past_the_guards(
        folder,
        "CREATE TABLE copy AS SELECT * FROM entries",
        "UPDATE copy SET id = 'id-1' WHERE line = 5",
        "DROP TABLE entries",
        "ALTER TABLE copy RENAME TO entries",
    )
    assert told(folder) == [(5, "id")]


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


def test_what_the_rules_find_is_told_as_well(folder: Path) -> None:
    past_the_guards(folder, "UPDATE entries SET time = 'noon' WHERE line = 1")
    assert told(folder) == [(1, "clock")]


def test_a_line_about_nothing_known(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        record.append([unwritten(1, TookOff(at=("gearbox",)))], 0)
    assert told(tmp_path) == [(1, "undescribed")]


def test_a_folder_without_a_record_is_bad_input(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="there is no record"):
        read_back(tmp_path)
