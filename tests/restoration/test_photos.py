"""Photos in the record: with a line in one breath, beside an old one, of a thing; out and in again, equal."""

from __future__ import annotations

import zipfile
from datetime import datetime
from pathlib import Path

import pytest

from tests.pictures import shot
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Photographed
from witnessmark.restoration.begin import begin, reopen
from witnessmark.restoration.carrying import export_file, import_file
from witnessmark.restoration.checking import faults_in
from witnessmark.restoration.many import write_many
from witnessmark.restoration.photos import (
    MOST_AT_ONCE,
    Sent,
    add_of_thing,
    add_to_line,
    kept_names,
    take_in,
    write_with_photos,
)
from witnessmark.restoration.restoration import Restoration

NOW = datetime(2026, 3, 14, 10, 40)
NUT = "hub nut, left rear"
ID = "0123456789abcdef0123"
KNOWN = """
@ 2026-03-07 09:00
new joint: hub nut left rear, tapered drive hub
new joint: exhaust clamp, exhaust joint
"""


@pytest.fixture
def record(tmp_path: Path) -> Restoration:
    restoration = begin(tmp_path, "the van", now=NOW, body="van", country="GB")
    write_many(restoration, KNOWN, write=True)
    return restoration


def sent(*numbers: int) -> list[Sent]:
    return [Sent(shot(number), f"{number}.jpg") for number in numbers]


def photo_of(restoration: Restoration) -> Photographed:
    fact = restoration.entries[-1].fact
    assert isinstance(fact, Photographed)
    return fact


def test_a_line_and_its_photos_are_written_in_one_go(record: Restoration, tmp_path: Path) -> None:
    names = take_in(tmp_path, sent(1, 2))
    (line,) = write_with_photos(record, record.hear("took off hub nut left rear"), ID, names)
    assert photo_of(record) == Photographed(at=(NUT,), photos=names, of=line.line)
    assert record.entries[-1].words == f"2 photos with line {line.line}"
    again = write_with_photos(record, record.hear("took off hub nut left rear"), ID, names)
    assert again == (line,)
    assert faults_in(tmp_path) == ()


def test_a_line_that_is_about_a_photo_takes_it_in(record: Restoration, tmp_path: Path) -> None:
    names = take_in(tmp_path, sent(1))
    before = record.last_line
    (line,) = write_with_photos(record, record.hear("photo of hub nut left rear"), ID, names)
    assert (line.line, record.last_line) == (before + 1, before + 1)
    assert photo_of(record) == Photographed(at=(NUT,), photos=names)


def test_a_photo_added_later_stands_at_the_day_of_its_line(record: Restoration, tmp_path: Path) -> None:
    record.write(record.hear("took off hub nut left rear on 8 March"))
    number = record.last_line
    names = take_in(tmp_path, sent(1))
    for _ in range(2):  # sent twice over a bad connection
        (written,) = add_to_line(record, number, names, ID)
    assert (written.day.isoformat(), written.line) == ("2026-03-08", number + 1)
    assert photo_of(record) == Photographed(at=(NUT,), photos=names, of=number)
    with pytest.raises(BadInput, match="no line 99"):
        add_to_line(record, 99, names, ID)


def test_a_photo_of_a_corrected_line_is_about_what_the_correction_says(
    record: Restoration, tmp_path: Path
) -> None:
    record.write(record.hear("took off exhaust clamp"))
    struck = record.last_line
    record.write(record.hear(f"strike {struck}, wrong one; took off hub nut left rear"))
    add_to_line(record, struck, take_in(tmp_path, sent(1)), ID)
    assert photo_of(record).at == (NUT,)


def test_a_part_or_joint_may_be_photographed_by_itself(record: Restoration, tmp_path: Path) -> None:
    names = take_in(tmp_path, sent(1))
    (written,) = add_of_thing(record, NUT, names, ID)
    assert (written.words, photo_of(record).at) == ("photo of hub nut left rear", (NUT,))
    with pytest.raises(BadInput, match="no part and no joint"):
        add_of_thing(record, "moonbeam", names, ID)


def owes_a_photo(restoration: Restoration) -> bool:
    return any(d.sort == "record" and d.item == "photo" for d in restoration.flow().owed)


def test_a_photo_of_an_opened_joint_does_not_pay_the_one_owed_at_closing(
    record: Restoration, tmp_path: Path
) -> None:
    heard = record.hear("took off exhaust clamp")
    write_with_photos(record, heard, ID, take_in(tmp_path, sent(1)))
    assert owes_a_photo(record)
    record.write(record.hear("fitted exhaust clamp"))
    heard = record.hear("tightened exhaust clamp")
    write_with_photos(record, heard, ID[::-1], take_in(tmp_path, sent(2)))
    assert not owes_a_photo(record)


def test_one_bad_picture_among_good_ones_keeps_none(record: Restoration, tmp_path: Path) -> None:
    with pytest.raises(BadInput, match=r"^bad\.jpg"):
        take_in(tmp_path, [*sent(1), Sent(b"not a picture", "bad.jpg")])
    assert not (tmp_path / "photos").exists()
    with pytest.raises(BadInput, match="more than 60 photos"):
        take_in(tmp_path, sent(1) * (MOST_AT_ONCE + 1))


def test_only_names_of_kept_photos_are_taken_back(record: Restoration, tmp_path: Path) -> None:
    names = take_in(tmp_path, sent(1))
    assert kept_names(tmp_path, [*names, *names, "../journal.db", ""]) == names


def test_out_and_in_again_the_photos_are_equal_and_one_that_no_line_names_stays_behind(
    record: Restoration, tmp_path: Path
) -> None:
    named = take_in(tmp_path, sent(1, 2))
    take_in(tmp_path, sent(3))
    add_of_thing(record, NUT, named, ID)
    archive = tmp_path / "out.zip"
    export_file(record, tmp_path, archive)
    copy = tmp_path / "copy"
    import_file(copy, archive, take_good=False, now=NOW)
    assert reopen(copy, now=NOW).entries == record.entries
    assert {f.name for f in (copy / "photos").iterdir()} == set(named)
    assert all((copy / "photos" / n).read_bytes() == (tmp_path / "photos" / n).read_bytes() for n in named)
    assert faults_in(copy) == ()
    with zipfile.ZipFile(archive) as packed:
        assert all(b"GPS" not in packed.read(n) and b"Exif" not in packed.read(n) for n in packed.namelist())
