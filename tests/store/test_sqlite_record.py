from __future__ import annotations

import math
import sqlite3
from pathlib import Path

import pytest
from msgspec.structs import replace

from tests.journal.lines import describing, entry, unwritten
from witnessmark.ground.errors import BadInput, LostRace, RecordDamaged
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact, Measured, Ordered, Remarked, Struck, TookOff
from witnessmark.store import sqlite_record
from witnessmark.store.record_store import NotWritten, RecordStore
from witnessmark.store.schema import APPLICATION, FILE, SCHEMA
from witnessmark.store.sqlite_record import SqliteRecord, create, open_record

ONE, TWO, THREE = (unwritten(n, Remarked(remark=f"number {n}")) for n in (1, 2, 3))


def remarks(record: RecordStore) -> list[str]:
    """The remark of every line. It takes any store: that SQLite's is one is held by the type check."""
    return [e.fact.remark for e in record.read()]


def test_what_was_written_reads_back_equal_by_another_hand(tmp_path: Path) -> None:
    facts: list[AnyFact] = [
        describing("wheel nuts"),
        TookOff(at=("wheel nuts",)),
        Struck(line=2, why="no", instead=Remarked()),
    ]
    with create(tmp_path) as record:
        written = record.append([unwritten(n, fact, time="10:40") for n, fact in enumerate(facts, 1)], 0)
    with open_record(tmp_path) as again:
        assert again.read() == written
        assert written == tuple(entry(n, fact, time="10:40") for n, fact in enumerate(facts, 1))
        assert again.last_line() == 3


def test_an_empty_record_reads_as_nothing(tmp_path: Path) -> None:
    with create(tmp_path / "new" / "folder") as record:
        assert (record.read(), record.last_line(), record.append([], 0)) == ((), 0, ())


def test_the_store_gives_the_numbers_whatever_was_handed_over(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        assert [e.line for e in record.append([entry(40, Remarked()), entry(7, Remarked())], 0)] == [1, 2]


@pytest.mark.parametrize("expected", [0, 1, 3])
def test_another_hand_first_means_nothing_written_and_nothing_lost(tmp_path: Path, expected: int) -> None:
    with create(tmp_path) as record, open_record(tmp_path) as other:
        other.append([ONE, TWO], 0)
        with pytest.raises(LostRace) as caught:
            record.append([THREE], expected)
        assert isinstance(caught.value, NotWritten)
        assert (caught.value.unwritten, caught.value.last) == ((THREE,), 2)
        assert remarks(record) == ["number 1", "number 2"]
        assert record.append(caught.value.unwritten, caught.value.last)[0].line == 3


def test_a_retry_is_handed_the_stored_line_and_writes_nothing(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        (first,) = record.append([ONE], 0)
        record.append([TWO], 1)
        assert record.append([ONE], 0) == (first,)
        assert record.last_line() == 2


def test_a_retry_some_minutes_later_is_still_a_retry(tmp_path: Path) -> None:
    fact = Remarked(remark="drum scored")
    with create(tmp_path) as record:
        record.append([unwritten(1, fact, time="10:40", written="2026-03-14T10:40:00")], 0)
        again = unwritten(1, fact, time="10:43", written="2026-03-14T10:43:00")
        assert [e.time for e in record.append([again], 0)] == ["10:40"]


def test_a_retry_with_something_new_behind_it_writes_only_the_new(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        record.append([ONE], 0)
        assert [e.line for e in record.append([ONE, TWO], 1)] == [1, 2]
        with pytest.raises(NotWritten):
            record.append([ONE, THREE], 1)


@pytest.mark.parametrize(
    "other",
    [
        unwritten(1, Remarked(remark="another"), words=ONE.words),
        unwritten(1, ONE.fact, words="other words"),
        unwritten(1, ONE.fact, words=ONE.words, day="2026-03-13"),
        unwritten(1, ONE.fact, words=ONE.words, who="helper"),
    ],
)
def test_the_same_id_with_something_else_to_say_is_refused(tmp_path: Path, other: object) -> None:
    with create(tmp_path) as record:
        record.append([ONE], 0)
        with pytest.raises(BadInput, match="carries the id of line 1"):
            record.append([TWO, other], 1)  # type: ignore[list-item]
        assert remarks(record) == ["number 1"]


def test_the_same_line_twice_in_one_go_is_written_once(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        assert [e.line for e in record.append([ONE, TWO, ONE], 0)] == [1, 2, 1]


@pytest.mark.parametrize(
    "bad",
    [
        unwritten(9, Measured(figures=(Quantity("?", math.nan, "mm"),))),
        unwritten(9, Measured(figures=(Quantity("?", math.inf, "mm"),))),
        unwritten(9, Measured(figures=(Quantity("?", 10**400, "mm"),))),
        unwritten(9, Ordered(item="pin", price=math.nan)),
        unwritten(9, Remarked(remark="half a character \ud83d")),
        unwritten(9, Remarked(at=(3,))),  # type: ignore[arg-type]
        unwritten(9, "took off the wheel"),  # type: ignore[arg-type]
    ],
)
def test_what_would_not_read_back_is_refused_with_all_that_came_with_it(tmp_path: Path, bad: object) -> None:
    with create(tmp_path) as record:
        with pytest.raises(BadInput, match="nothing was written"):
            record.append([ONE, bad], 0)  # type: ignore[list-item]
        assert record.read() == ()


def test_a_line_without_an_id_is_refused(tmp_path: Path) -> None:
    with create(tmp_path) as record, pytest.raises(BadInput, match="carries no id"):
        record.append([replace(ONE, id="")], 0)


@pytest.mark.parametrize(
    "words", ["", "  ", "line\nbreak", "nul\x00inside", "Größe ⌀ 12 · 🔧", "'; DROP TABLE entries; --"]
)
def test_words_come_back_as_typed(tmp_path: Path, words: str) -> None:
    with create(tmp_path) as record:
        record.append([replace(ONE, words=words, who=words)], 0)
        (back,) = record.read()
        assert (back.words, back.who) == (words, words)


def test_a_folder_with_a_space_and_an_umlaut_and_signs_will_do(tmp_path: Path) -> None:
    folder = tmp_path / "Mein Rädchen #1 100%?"
    with create(folder) as record:
        record.append([ONE], 0)
    with open_record(folder) as record:
        assert record.last_line() == 1
    assert (folder / FILE).is_file()


def test_a_record_is_begun_once(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        record.append([ONE], 0)
    with pytest.raises(BadInput, match="already exists"):
        create(tmp_path)
    with open_record(tmp_path) as record:
        assert record.last_line() == 1


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


def test_a_row_that_cannot_be_read_is_named(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        record.append([ONE], 0)
        raw = sqlite3.connect(tmp_path / FILE)
        raw.execute(
            "INSERT INTO entries VALUES (2, 'x', '2026-03-14', '10:00', '', '', '', 1, '{\"did\": \"flew\"}')"
        )
        raw.commit()
        raw.close()
        with pytest.raises(RecordDamaged, match="line 2 of the record"):
            record.read()


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
