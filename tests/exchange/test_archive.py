from __future__ import annotations

import hashlib
import io
import json
import struct
import zipfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.journal.lines import describing, entry
from tests.laws.records_made import records
from witnessmark.exchange import zip_reading
from witnessmark.exchange.archive import read_archive, unpack_photos, write_archive
from witnessmark.ground.errors import BadInput
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Photographed, Struck, TookOff

RECORD = (
    entry(1, describing("wheel nuts, left rear", parts=("wheel, left rear",))),
    entry(2, TookOff(at=("wheel nuts, left rear",)), time="10:40", words="took off wheel nuts lr · müde"),
    entry(3, Photographed(at=("wheel, left rear",), photos=("3fa9.jpg",))),
    entry(
        4, Struck(line=2, why="other side", instead=TookOff(at=("wheel, left rear",)), words="wheel lr off")
    ),
)
PHOTO = b"\xff\xd8 not really a picture \xff\xd9" * 50


@pytest.fixture
def photos(tmp_path: Path) -> Path:
    folder = tmp_path / "photos"
    folder.mkdir()
    (folder / "3fa9.jpg").write_bytes(PHOTO)
    (folder / "empty.png").write_bytes(b"")
    (folder / ".left-by-the-system").write_bytes(b"junk")
    return folder


@pytest.fixture
def archive(tmp_path: Path, photos: Path) -> Path:
    path = tmp_path / "ten.zip"
    write_archive(path, RECORD, photos)
    return path


def test_a_record_comes_back_equal_with_its_photos(archive: Path, tmp_path: Path) -> None:
    assert read_archive(archive).entries == RECORD
    assert set(read_archive(archive).photos) == {"3fa9.jpg", "empty.png"}
    assert unpack_photos(archive, tmp_path / "new" / "photos") == ("3fa9.jpg", "empty.png")
    assert (tmp_path / "new" / "photos" / "3fa9.jpg").read_bytes() == PHOTO


def test_any_zip_and_json_reader_will_do(archive: Path) -> None:
    """The independent way in: the standard library alone."""
    with zipfile.ZipFile(archive) as packed:
        assert packed.testzip() is None
        assert packed.namelist() == ["about.json", "record.jsonl", "photos/3fa9.jpg", "photos/empty.png"]
        raw = packed.read("record.jsonl")
        about = json.loads(packed.read("about.json"))
        lines = [json.loads(line) for line in raw.decode("utf-8").splitlines()]
    assert about == {
        "format": "witness-mark record",
        "version": 1,
        "lines": 4,
        "record_sha256": hashlib.sha256(raw).hexdigest(),
        "photos": {
            "3fa9.jpg": hashlib.sha256(PHOTO).hexdigest(),
            "empty.png": hashlib.sha256(b"").hexdigest(),
        },
    }
    assert lines[1] == {
        "id": "id-2",
        "day": "2026-03-14",
        "time": "10:40",
        "written": "2026-03-14T18:00:00",
        "line": 2,
        "who": "you",
        "words": "took off wheel nuts lr · müde",
        "fact": {"did": "took_off", "at": ["wheel nuts, left rear"]},
        "version": 1,
    }
    assert lines[3]["fact"]["instead"] == {"did": "took_off", "at": ["wheel, left rear"]}


def test_the_same_record_gives_the_same_bytes(archive: Path, photos: Path, tmp_path: Path) -> None:
    (photos / "3fa9.jpg").touch()
    write_archive(tmp_path / "again.zip", iter(RECORD), photos)
    assert (tmp_path / "again.zip").read_bytes() == archive.read_bytes()


def test_an_empty_record_without_photos_comes_back(tmp_path: Path) -> None:
    write_archive(tmp_path / "a.zip", [])
    assert read_archive(tmp_path / "a.zip").entries == ()
    assert dict(read_archive(tmp_path / "a.zip").photos) == {}


@given(records(most=6))
def test_every_record_comes_back_equal(tmp_path_factory: pytest.TempPathFactory, record: list[Entry]) -> None:
    path = tmp_path_factory.getbasetemp() / "any.zip"
    write_archive(path, record)
    assert read_archive(path).entries == tuple(record)


def test_the_old_file_stays_whole_when_writing_fails(archive: Path, photos: Path) -> None:
    before = archive.read_bytes()
    (photos / "a photo with spaces.jpg").write_bytes(b"x")
    with pytest.raises(BadInput, match="would not survive elsewhere"):
        write_archive(archive, RECORD, photos)

    def breaking_off() -> object:
        yield RECORD[0]
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_archive(archive, breaking_off())  # type: ignore[arg-type]
    assert archive.read_bytes() == before
    assert sorted(p.name for p in archive.parent.iterdir()) == ["photos", "ten.zip"]


def test_a_place_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be written"):
        write_archive(tmp_path / "no such folder" / "a.zip", RECORD)


def test_a_photo_already_there_is_left_as_it_is(archive: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    kept.mkdir()
    (kept / "3fa9.jpg").write_bytes(b"mine")
    unpack_photos(archive, kept)
    assert (kept / "3fa9.jpg").read_bytes() == b"mine"


# ---- damage and malice --------------------------------------------------------------------------


def packed(path: Path, members: dict[str, bytes]) -> None:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        for name, content in members.items():
            made.writestr(name, content)


def members_of(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as held:
        return {name: held.read(name) for name in held.namelist()}


Spoil = Callable[[dict[str, bytes]], object]


def saying(**said: object) -> Spoil:
    def spoil(held: dict[str, bytes]) -> None:
        held["about.json"] = json.dumps(json.loads(held["about.json"]) | said).encode()

    return spoil


def with_record(record: bytes) -> Spoil:
    """A record that carries its own right check sum, and is wrong all the same."""

    def spoil(held: dict[str, bytes]) -> None:
        held["record.jsonl"] = record
        saying(record_sha256=hashlib.sha256(record).hexdigest(), lines=record.count(b"\n"))(held)

    return spoil


def numbered(*numbers: int, same_id: bool = False) -> bytes:
    """A record of remarks with these line numbers."""
    heading = {"day": "2026-03-14", "time": "24:00", "written": "", "who": "", "words": "", "version": 1}
    lines = [
        heading | {"id": "same" if same_id else str(n), "line": n, "fact": {"did": "remarked"}}
        for n in numbers
    ]
    return b"".join(json.dumps(line).encode() + b"\n" for line in lines)


def without_first_line(record: bytes) -> bytes:
    return record.split(b"\n", 1)[1]


def altered(name: str, change: Callable[[bytes], bytes]) -> Spoil:
    return lambda held: held.update({name: change(held[name])})


SPOILT: dict[str, tuple[Spoil, str]] = {
    "a line altered": (altered("record.jsonl", lambda raw: raw.replace(b"nuts", b"nutz")), "check sum"),
    "a line taken out": (altered("record.jsonl", without_first_line), "check sum"),
    "a photo altered": (lambda m: m.update({"photos/3fa9.jpg": b"another"}), "photo 3fa9.jpg"),
    "a photo lost": (lambda m: m.pop("photos/3fa9.jpg"), "3fa9.jpg is either missing"),
    "a photo nobody listed": (lambda m: m.update({"photos/more.jpg": b""}), "more.jpg is either missing"),
    "no record": (lambda m: m.pop("record.jsonl"), "holds no record.jsonl"),
    "no word about it": (lambda m: m.pop("about.json"), "holds no about.json"),
    "another format": (saying(format="shopping list"), "shopping list"),
    "a newer version": (saying(version=2), "renew"),
    "a wrong count": (saying(lines=5), "holds 4 lines"),
    "no check sum": (saying(record_sha256=None), "about.json cannot be read"),
    "no json": (lambda m: m.update({"about.json": b"{"}), "about.json cannot be read"),
    "a list for a word about it": (lambda m: m.update({"about.json": b"[]"}), "about.json cannot be read"),
    "a line that is no line": (with_record(b"{}\n"), "line 1 of record.jsonl"),
    "a fact nobody knows": (with_record(numbered(1).replace(b"remarked", b"flew")), "line 1 of record.jsonl"),
    "a last line cut short": (with_record(numbered(1, 2)[:-1]), "holds 1 lines"),
    "a line missing": (with_record(numbered(1, 3)), "Line 2 is missing"),
    "a line twice": (with_record(numbered(1, 1)), "stands twice"),
    "an id twice": (with_record(numbered(1, 2, same_id=True)), "same id"),
    "a way out upwards": (lambda m: m.update({"photos/../../evil.py": b""}), "has no place there"),
    "a way out from the root": (lambda m: m.update({"/etc/evil": b""}), "has no place there"),
    "a way out by a drive": (lambda m: m.update({"photos/c:evil": b""}), "has no place there"),
    "a way out backwards": (lambda m: m.update({"photos/..\\evil.py": b""}), "has no place there"),
    "a folder inside": (lambda m: m.update({"photos/in/side.jpg": b""}), "has no place there"),
    "a hidden file": (lambda m: m.update({"photos/.profile": b""}), "has no place there"),
    "a device": (lambda m: m.update({"photos/NUL.jpg": b""}), "has no place there"),
    "a stranger": (lambda m: m.update({"readme.exe": b""}), "has no place there"),
    "one name twice in another case": (lambda m: m.update({"photos/3FA9.jpg": b""}), "twice"),
    "a bomb": (lambda m: m.update({"photos/bomb.jpg": bytes(2**23)}), "would swell"),
}  # fmt: skip


@pytest.mark.parametrize("name", SPOILT)
def test_a_spoilt_archive_is_refused_and_nothing_is_taken_from_it(
    archive: Path, tmp_path: Path, name: str
) -> None:
    spoil, what = SPOILT[name]
    held = members_of(archive)
    spoil(held)
    packed(archive, held)
    for read in (read_archive, lambda path: unpack_photos(path, tmp_path / "into")):
        with pytest.raises(BadInput) as caught:
            read(archive)
        assert what in caught.value.given
        assert "nothing was taken" in caught.value.do
    assert not (tmp_path / "into").exists()
    assert not list(tmp_path.glob("**/evil*"))


def test_packed_anew_by_another_hand_it_is_still_whole(archive: Path) -> None:
    held = members_of(archive)
    packed(archive, {"photos/": b""} | dict(sorted(held.items(), reverse=True)))
    assert read_archive(archive).entries == RECORD


@pytest.mark.parametrize("part", [0.0, 0.05, 0.3, 0.6, 0.9, 0.99])
def test_a_cut_off_archive_is_refused(archive: Path, part: float) -> None:
    whole = archive.read_bytes()
    archive.write_bytes(whole[: int(len(whole) * part)])
    with pytest.raises(BadInput, match="not a whole ZIP"):
        read_archive(archive)


@given(st.data())
def test_a_flipped_byte_is_refused_or_does_no_harm(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    path = tmp_path_factory.getbasetemp() / "flipped.zip"
    write_archive(path, RECORD)
    whole = bytearray(path.read_bytes())
    where = data.draw(st.integers(0, len(whole) - 1))
    whole[where] ^= data.draw(st.integers(1, 255))
    path.write_bytes(whole)
    with suppress(BadInput):
        assert read_archive(path).entries == RECORD


def test_a_size_that_lies_is_found_out(archive: Path) -> None:
    """The header claims ten bytes; what is packed unfolds to far more."""
    held = members_of(archive) | {"photos/bomb.jpg": bytes(2**23)}
    packed(archive, held)
    raw = archive.read_bytes()
    archive.write_bytes(raw.replace(struct.pack("<L", 2**23), struct.pack("<L", 10)))
    with pytest.raises(BadInput, match=r"not a whole ZIP|bomb"):
        read_archive(archive)


def test_too_many_or_too_large_files_are_refused(archive: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(zip_reading, "MOST_BYTES", 100)
    with pytest.raises(BadInput, match="more than 100"):
        read_archive(archive)
    monkeypatch.setattr(zip_reading, "MOST_MEMBERS", 2)
    with pytest.raises(BadInput, match="holds 4 files, more than 2"):
        read_archive(archive)


def test_one_name_twice_is_refused(archive: Path) -> None:
    with zipfile.ZipFile(archive, "a") as held, pytest.warns(UserWarning, match="Duplicate"):
        held.writestr("record.jsonl", b"")
    with pytest.raises(BadInput, match="twice"):
        read_archive(archive)


def test_a_pass_phrase_is_refused(archive: Path) -> None:
    raw = bytearray(archive.read_bytes())
    for mark, offset in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        raw[raw.index(mark) + offset] |= 1
    archive.write_bytes(raw)
    with pytest.raises(BadInput, match="under a pass phrase"):
        read_archive(archive)


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04", b"%PDF-1.7", b"x" * 5000])
def test_what_is_no_zip_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "a.zip").write_bytes(content)
    with pytest.raises(BadInput, match="not a whole ZIP"):
        read_archive(tmp_path / "a.zip")


def test_no_file_at_all_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be read"):
        read_archive(tmp_path / "a.zip")


def test_a_spreadsheet_is_not_an_archive(tmp_path: Path) -> None:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as made:
        made.writestr("[Content_Types].xml", "<x/>")
    (tmp_path / "a.xlsx").write_bytes(buffer.getvalue())
    with pytest.raises(BadInput, match="has no place there"):
        read_archive(tmp_path / "a.xlsx")
