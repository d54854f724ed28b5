"""A record that was tampered with, past its guards, is found out: in a file and on a server alike."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.journal.lines import unwritten
from tests.store.place import Place, rows
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Remarked, TookOff
from witnessmark.store.checking import read_back


@pytest.fixture
def five(place: Place) -> Place:
    with place.create() as record:
        record.append([unwritten(n, Remarked(remark=f"number {n}")) for n in range(1, 6)], 0)
    return place


def told(place: Place) -> list[tuple[int | None, str]]:
    return [(fault.line, fault.rule) for fault in read_back(place.folder)]


def test_a_sound_record_reads_back_clean_and_unchanged(five: Place) -> None:
    raw = five.raw()
    before = rows(raw)
    assert read_back(five.folder) == ()
    assert rows(raw) == before
    raw.close()


def test_a_line_taken_out(five: Place) -> None:
    five.past_the_guards("DELETE FROM entries WHERE line = 3")
    assert told(five) == [(4, "numbering")]


def test_every_unreadable_line_is_named_at_once(five: Place) -> None:
    five.past_the_guards(
        "UPDATE entries SET fact = '{}' WHERE line = 2",
        "UPDATE entries SET day = 'Friday' WHERE line = 4",
        "UPDATE entries SET version = 99 WHERE line = 5",
    )
    assert told(five) == [(2, "reads back"), (4, "reads back"), (5, "reads back")]


def test_an_id_that_stands_twice(five: Place) -> None:
    if five.kept_at:
        five.past_the_guards(
            "ALTER TABLE entries DROP CONSTRAINT entries_id_key",
            "UPDATE entries SET id = 'id-1' WHERE line = 5",
        )
    else:
        five.past_the_guards(
            "CREATE TABLE copy AS SELECT * FROM entries",
            "UPDATE copy SET id = 'id-1' WHERE line = 5",
            "DROP TABLE entries",
            "ALTER TABLE copy RENAME TO entries",
        )
    assert told(five) == [(5, "id")]


def test_every_guard_that_is_gone_is_told(five: Place) -> None:
    for guard in five.guards:
        raw = five.raw()
        raw.execute(f"DROP TRIGGER {guard}" + (" ON entries" if five.kept_at else ""))
        raw.close()
    told_of = [fault.what for fault in read_back(five.folder)]
    assert told_of == [f"The guard {guard} is gone: lines may have been changed." for guard in five.guards]


def test_what_the_rules_find_is_told_as_well(five: Place) -> None:
    five.past_the_guards("UPDATE entries SET time = 'noon' WHERE line = 1")
    assert told(five) == [(1, "clock")]


def test_a_line_about_nothing_known(place: Place) -> None:
    with place.create() as record:
        record.append([unwritten(1, TookOff(at=("gearbox",)))], 0)
    assert told(place) == [(1, "undescribed")]


def test_a_folder_without_a_record_is_bad_input(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="there is no record"):
        read_back(tmp_path)
