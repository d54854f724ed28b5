"""Photos on the disk: named by what they hold, whole or not there, and missed when gone or changed."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from tests.building import entry
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Photographed, Remarked, Struck
from witnessmark.store.checking import read_back
from witnessmark.store.photo_folder import FOLDER, keep_photo, photo_file, photos_named
from witnessmark.store.sqlite_record import create

ONE, TWO = b"\xff\xd8 one \xff\xd9", b"\xff\xd8 two \xff\xd9"


def test_a_photo_lies_under_its_check_sum_and_is_kept_once(tmp_path: Path) -> None:
    names = {keep_photo(tmp_path, ONE), keep_photo(tmp_path, ONE), keep_photo(tmp_path, TWO)}
    assert names == {f"{hashlib.sha256(content).hexdigest()}.jpg" for content in (ONE, TWO)}
    assert {file.name for file in (tmp_path / FOLDER).iterdir()} == names
    assert {photo_file(tmp_path, name).read_bytes() for name in names} == {ONE, TWO}


def test_a_damaged_photo_is_made_good_when_it_is_sent_again(tmp_path: Path) -> None:
    file = tmp_path / FOLDER / keep_photo(tmp_path, ONE)
    file.write_bytes(b"half")
    keep_photo(tmp_path, ONE)
    assert file.read_bytes() == ONE


def test_it_is_flushed_before_it_gets_its_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    done: list[str] = []
    sync, move = os.fsync, Path.replace

    def flushed(handle: int) -> None:
        done.append("flushed")
        sync(handle)

    def named(beside: Path, place: Path) -> Path:
        done.append("named")
        return move(beside, place)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "replace", named)
    (tmp_path / FOLDER).mkdir()
    keep_photo(tmp_path, ONE)
    assert done[:2] == ["flushed", "named"]


def test_a_disk_that_will_not_take_it_is_told_and_nothing_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(BadInput, match="No space left"):
        keep_photo(tmp_path, ONE)
    assert list((tmp_path / FOLDER).iterdir()) == []


@pytest.mark.parametrize("name", ["", "..", "../journal.db", "a.jpg", f"{'0' * 64}.jpg", f"{'0' * 64}.JPG"])
def test_no_other_name_reaches_the_disk(tmp_path: Path, name: str) -> None:
    create(tmp_path).close()
    keep_photo(tmp_path, ONE)
    with pytest.raises(BadInput, match="no such photo"):
        photo_file(tmp_path, name)


def test_every_photo_a_line_names_counts_once_also_in_a_correction() -> None:
    lines = [
        entry(Photographed(photos=("a", "b")), 1),
        entry(Photographed(photos=("a",), of=1), 2),
        entry(Struck(line=1, why="wrong side", instead=Photographed(photos=("c",))), 3),
    ]
    assert photos_named(lines) == {"a": 1, "b": 1, "c": 3}


def test_a_missing_and_a_changed_photo_are_faults_of_the_record(tmp_path: Path) -> None:
    with create(tmp_path) as record:
        there, changed, gone = (keep_photo(tmp_path, bytes([n]) * 9) for n in range(3))
        first = entry(Remarked(remark="x"), 1)
        second = entry(Photographed(photos=(there, changed)), 2)
        record.append([first, second, entry(Photographed(photos=(gone,), of=1), 3)], 0)
    assert read_back(tmp_path) == ()
    (tmp_path / FOLDER / changed).write_bytes(b"another")
    (tmp_path / FOLDER / gone).unlink()
    assert [(fault.line, fault.what.rpartition(" line ")[2]) for fault in read_back(tmp_path)] == [
        (2, "2 is no longer what it was."),
        (3, "3 is missing."),
    ]
