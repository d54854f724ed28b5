"""People and log-ins on the disk: readable by their owner alone, whole or not at all, never in an archive."""

from __future__ import annotations

import os
import stat
import threading
import zipfile
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from tests.cli.running import run
from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.store.doors import FILE, Doors, Person

NOW = datetime(2026, 3, 14, 11, 20)
ADA = Person(plain="ada", name="Ada", role="owner", phrase="hash of ada")
OTT = Person(plain="ott", name="Ott", role="helper", phrase="hash of ott")


@pytest.fixture
def doors(tmp_path: Path) -> Doors:
    kept = Doors(tmp_path)
    kept.keep(ADA)
    kept.keep(OTT)
    return kept


def test_people_are_kept_by_name_and_replaced_whole(doors: Doors) -> None:
    assert doors.people() == (ADA, OTT)
    doors.keep(Person(plain="ott", name="OTT", role="onlooker", phrase="other"))
    assert [(one.name, one.role) for one in doors.people()] == [("Ada", "owner"), ("OTT", "onlooker")]
    doors.remove("ada")
    assert [one.name for one in doors.people()] == ["OTT"]


def test_where_nothing_was_kept_nobody_is_there_and_no_file_is_made(tmp_path: Path) -> None:
    doors = Doors(tmp_path)
    assert doors.people() == ()
    assert doors.log_in(b"mark") is None
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name == "nt", reason="Windows keeps rights otherwise: the folder's own")
def test_the_file_is_readable_by_its_owner_alone_whatever_the_mask(tmp_path: Path) -> None:
    before = os.umask(0)
    try:
        Doors(tmp_path).keep(ADA)
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / FILE).stat().st_mode) == 0o600
    assert [path.name for path in tmp_path.iterdir()] == [FILE]


def test_a_log_in_is_known_by_its_mark_until_it_ends(doors: Doors) -> None:
    doors.begin(b"one", "ada", NOW)
    doors.begin(b"two", "ada", NOW)
    doors.used(b"one", NOW + timedelta(minutes=9))
    found = doors.log_in(b"one")
    assert found is not None
    assert (found.person, found.begun, found.used) == (ADA, NOW, NOW + timedelta(minutes=9))
    doors.end(b"one")
    assert doors.log_in(b"one") is None
    assert doors.log_in(b"two") is not None
    doors.end_all("ada")
    assert doors.log_in(b"two") is None


@pytest.mark.parametrize("how", ["removed", "changed"])
def test_log_ins_end_with_the_person_or_the_phrase(doors: Doors, how: str) -> None:
    doors.begin(b"one", "ada", NOW)
    doors.begin(b"other", "ott", NOW)
    if how == "removed":
        doors.remove("ada")
    else:
        doors.keep(ADA)
    assert doors.log_in(b"one") is None
    assert doors.log_in(b"other") is not None


def test_a_newer_hash_of_the_same_phrase_ends_no_log_in(doors: Doors) -> None:
    doors.begin(b"one", "ada", NOW)
    doors.rehash("ada", "newer")
    found = doors.log_in(b"one")
    assert found is not None
    assert found.person.phrase == "newer"


def test_old_log_ins_are_forgotten(doors: Doors) -> None:
    doors.begin(b"old", "ada", NOW - timedelta(days=9))
    doors.begin(b"new", "ada", NOW)
    doors.forget_before(NOW - timedelta(days=7))
    assert doors.log_in(b"old") is None
    assert doors.log_in(b"new") is not None


def test_tries_are_counted_by_key_until_they_are_old_or_right(doors: Doors) -> None:
    since = NOW - timedelta(minutes=15)
    assert doors.try_begins(("name ada", "from 1"), since, NOW)[0] == 1
    most, numbers = doors.try_begins(("name ada",), since, NOW)
    assert most == 2
    doors.try_was_right(numbers)
    assert doors.try_begins(("name ada", "from 2"), since, NOW)[0] == 2
    assert doors.try_begins(("name ada",), NOW + timedelta(seconds=1), NOW + timedelta(minutes=16))[0] == 1


def test_hands_at_once_lose_no_try(doors: Doors) -> None:
    since = NOW - timedelta(minutes=15)
    hands = [threading.Thread(target=doors.try_begins, args=(("from 1",), since, NOW)) for _ in range(8)]
    for hand in hands:
        hand.start()
    for hand in hands:
        hand.join()
    assert doors.try_begins(("from 1",), since, NOW)[0] == 9


def test_a_beginning_cut_short_is_begun_again(tmp_path: Path) -> None:
    (tmp_path / FILE).touch()
    doors = Doors(tmp_path)
    doors.keep(ADA)
    assert doors.people() == (ADA,)


def test_a_slip_in_the_middle_keeps_nothing_of_it(doors: Doors) -> None:
    with pytest.raises(RecordDamaged, match="NOT NULL"):
        doors.keep(Person(plain="ott", name="Ott", role="helper", phrase=None))  # type: ignore[arg-type]
    assert doors.people() == (ADA, OTT)


def test_a_spoilt_file_lets_nobody_in(doors: Doors) -> None:
    doors.file.write_bytes(b"no database " * 500)
    with pytest.raises(RecordDamaged):
        doors.log_in(b"one")


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be made"):
        Doors(tmp_path / "nowhere").keep(ADA)


def test_no_archive_carries_people(tmp_path: Path) -> None:
    folder = tmp_path / "van"
    assert run(folder, "begin", "the van").code == 0
    Doors(folder).keep(ADA)
    assert run(folder, "export", str(tmp_path / "out.zip")).code == 0
    with zipfile.ZipFile(tmp_path / "out.zip") as packed:
        assert FILE not in packed.namelist()
        assert not any(b"hash of ada" in packed.read(name) for name in packed.namelist())
    assert run(folder, "check").code == 0
