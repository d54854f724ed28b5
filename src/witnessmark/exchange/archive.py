"""The whole record in one open file: a ZIP with the lines as JSON, the photos, and a word about both.

    about.json     what this is: format, version, how many lines, check sums
    record.jsonl   one line of the record a line, as JSON, in the order of their numbers
    photos/...     the photos, named as the record names them

Any ZIP and JSON reader will do to read it. The same record and photos give the same bytes.
"""

from __future__ import annotations

import hashlib
import zipfile
from collections.abc import Collection, Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

import msgspec
from msgspec import Struct

from witnessmark.exchange.beside import written_beside
from witnessmark.exchange.zip_reading import content, digest, is_plain_name, members, opened, refused
from witnessmark.ground.errors import BadInput, RecordDamaged
from witnessmark.journal.entry import Entry
from witnessmark.journal.rules.numbering import broken_numbering, shared_ids
from witnessmark.journal.wire import entry_from_json, entry_to_json

FORMAT = "witness-mark record"
VERSION = 1
ABOUT, RECORD, PHOTOS = "about.json", "record.jsonl", "photos/"
_DAY = (1980, 1, 1, 0, 0, 0)  # the first day a ZIP can name: no clock, so that the bytes stay the same


class About(Struct, frozen=True, kw_only=True):
    """What an archive says of itself; the check sums are SHA-256, in hexadecimal."""

    format: str
    version: int
    lines: int
    record_sha256: str
    photos: Mapping[str, str] = {}


class Archive(Struct, frozen=True, kw_only=True):
    """What was read: the entries, and the photos' names with their check sums."""

    entries: tuple[Entry, ...]
    photos: Mapping[str, str]


def write_archive(
    path: Path,
    entries: Iterable[Entry],
    photos_dir: Path | None = None,
    only: Collection[str] | None = None,
) -> None:
    """Write a record and the photos of a folder, beside and then in place.

    only  names of the photos that go along; None takes every one in the folder

    Raises BadInput where the file cannot be written or a photo's name would not survive elsewhere.
    """
    record = b"".join(entry_to_json(entry) + b"\n" for entry in entries)
    photos = {n: file for n, file in _photos_in(photos_dir).items() if only is None or n in only}
    about = About(
        format=FORMAT,
        version=VERSION,
        lines=record.count(b"\n"),
        record_sha256=hashlib.sha256(record).hexdigest(),
        photos={name: _digest_of(file) for name, file in photos.items()},
    )
    with written_beside(path) as beside, zipfile.ZipFile(beside, "w") as packed:
        _pack(packed, ABOUT, msgspec.json.format(msgspec.json.encode(about), indent=2) + b"\n")
        _pack(packed, RECORD, record)
        for name, file in photos.items():
            _pack(packed, PHOTOS + name, file.read_bytes(), zipfile.ZIP_STORED)


def read_archive(path: Path) -> Archive:
    """Read an archive whole and check all of it, photos too, before anything is handed over.

    Raises BadInput for what is not a whole archive of this kind.
    """
    with opened(path) as packed:
        return _checked(packed, path)


def unpack_photos(path: Path, folder: Path) -> tuple[str, ...]:
    """Put an archive's photos into a folder and hand back their names. One already there is left as it is.

    Raises BadInput as `read_archive` does, before the first photo is written.
    """
    with opened(path) as packed:
        photos = _checked(packed, path).photos
        with suppress(OSError):  # a folder that cannot be made is told of by the first photo
            folder.mkdir(parents=True, exist_ok=True)
        for name in photos:
            if not (folder / name).exists():
                with written_beside(folder / name) as beside:
                    beside.write_bytes(packed.read(PHOTOS + name))
    return tuple(photos)


def _checked(packed: zipfile.ZipFile, path: Path) -> Archive:
    held = members(packed, path, _belongs)
    for needed in (ABOUT, RECORD):
        if needed not in held:
            raise refused(path, f"holds no {needed}: it is not the archive of a record")
    about = _about(content(packed, held[ABOUT]), path)
    record = content(packed, held[RECORD])
    if hashlib.sha256(record).hexdigest() != about.record_sha256:
        raise refused(path, f"is damaged: {RECORD} does not have the check sum it was written with")
    _check_photos(packed, path, about)
    return Archive(entries=_entries(record, about, path), photos=about.photos)


def _about(raw: bytes, path: Path) -> About:
    try:
        said = msgspec.json.decode(raw, type=dict[str, Any])
        if said.get("format") != FORMAT:
            raise refused(path, f"says it is {said.get('format')!r}, not {FORMAT!r}")
        version = said.get("version")
        if isinstance(version, int) and version > VERSION:
            raise refused(
                path, f"was written in version {version}, this program reads up to {VERSION}: renew it"
            )
        return msgspec.convert(said, About)
    except (msgspec.DecodeError, msgspec.ValidationError) as trouble:
        raise refused(path, f"is damaged: {ABOUT} cannot be read: {trouble}") from trouble


def _check_photos(packed: zipfile.ZipFile, path: Path, about: About) -> None:
    held = {name.removeprefix(PHOTOS) for name in packed.namelist() if name.startswith(PHOTOS)} - {""}
    if lost := sorted(held ^ set(about.photos)):
        raise refused(path, f"is damaged: the photo {lost[0]} is either missing or was never listed")
    for name, sum_written in about.photos.items():
        with packed.open(PHOTOS + name) as photo:
            if digest(photo) != sum_written:
                raise refused(
                    path, f"is damaged: the photo {name} does not have the check sum it was written with"
                )


def _entries(record: bytes, about: About, path: Path) -> tuple[Entry, ...]:
    *lines, rest = record.split(b"\n")
    if rest or len(lines) != about.lines:
        raise refused(path, f"is damaged: {RECORD} holds {len(lines)} lines, {ABOUT} says {about.lines}")
    entries: list[Entry] = []
    for number, line in enumerate(lines, 1):
        try:
            entries.append(entry_from_json(line))
        except RecordDamaged as trouble:
            raise refused(path, f"is damaged: line {number} of {RECORD}: {trouble}") from trouble
    for fault in (*broken_numbering(entries), *shared_ids(entries)):
        raise refused(path, f"does not hold a whole record: {fault.what}")
    return tuple(entries)


def _belongs(name: str) -> bool:
    return name in (ABOUT, RECORD, PHOTOS) or (
        name.startswith(PHOTOS) and is_plain_name(name.removeprefix(PHOTOS))
    )


def _photos_in(folder: Path | None) -> dict[str, Path]:
    if folder is None or not folder.is_dir():
        return {}
    found = {f.name: f for f in sorted(folder.iterdir()) if f.is_file() and not f.name.startswith(".")}
    for name in found:
        if not is_plain_name(name):
            raise BadInput(
                given=f"the photo {name!r} in {folder} has a name that would not survive elsewhere",
                holds="letters, digits, dots, hyphens and underscores",
                do="Name the file otherwise, then export again.",
            )
    return found


def _digest_of(file: Path) -> str:
    with file.open("rb") as photo:
        return digest(photo)


def _pack(packed: zipfile.ZipFile, name: str, content: bytes, how: int = zipfile.ZIP_DEFLATED) -> None:
    info = zipfile.ZipInfo(name, _DAY)
    info.compress_type = how
    info.create_system = 3
    info.external_attr = 0o644 << 16
    packed.writestr(info, content)
