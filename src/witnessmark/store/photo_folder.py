"""Photos of a record: files in a folder beside the journal, each named by the check sum of its content.

A photo is on the disk, whole, before any line may name it. It is never changed and never taken out.
"""

from __future__ import annotations

import hashlib
import os
import re
import uuid
from collections.abc import Iterable, Iterator
from pathlib import Path

from witnessmark.ground.errors import BadInput
from witnessmark.ground.fault import Fault
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Photographed, Struck

FOLDER = "photos"
SMALL = "thumbs"  # scratch: it may be deleted at any time
ENDING = ".jpg"
_NAME = re.compile(r"[0-9a-f]{64}\.jpg")
_RESTORE = "Bring the file back from the last archive; change nothing else."


def photo_name(content: bytes) -> str:
    """The name a photo is kept under: SHA-256 of its content.

    >>> photo_name(b"")[:12], len(photo_name(b""))
    ('e3b0c44298fc', 68)
    """
    return hashlib.sha256(content).hexdigest() + ENDING


def is_photo_name(name: str) -> bool:
    """Whether a name can be that of a photo kept here; nothing else is ever looked for on the disk.

    >>> is_photo_name(photo_name(b"")), is_photo_name("../journal.db"), is_photo_name("a.jpg")
    (True, False, False)
    """
    return _NAME.fullmatch(name) is not None


def keep_photo(folder: Path, content: bytes) -> str:
    """Put a photo into the record's folder and give its name, once it is on the disk.

    folder  the record's own folder

    One that is there already, whole, is left as it is. Raises BadInput for trouble with the disk.
    """
    name = photo_name(content)
    place = folder / FOLDER
    beside = place / f".{uuid.uuid4().hex}.coming"
    try:
        if not place.is_dir():
            place.mkdir(exist_ok=True)
            _settled(folder)
        if _holds(place / name, content):
            return name
        with beside.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(place / name)
        _settled(place)
    except OSError as trouble:
        beside.unlink(missing_ok=True)
        raise BadInput(
            given=f"a photo could not be kept in {place}: {trouble.strerror or trouble}",
            holds="a folder this user may write, with room in it",
            do="Make room, then send it again; nothing was written.",
        ) from trouble
    return name


def photo_file(folder: Path, name: str) -> Path:
    """Where a photo lies. Raises BadInput for a name that is none, or where no such photo is kept."""
    file = folder / FOLDER / name
    if not is_photo_name(name) or not file.is_file():
        raise BadInput(
            given="there is no such photo in this record",
            holds="a photo that a line of the journal names",
            do="Look in the journal.",
        )
    return file


def thumbnail(folder: Path, name: str) -> bytes | None:
    """The small copy of a photo, None where there is none yet."""
    file = folder / SMALL / name
    try:
        return file.read_bytes() if is_photo_name(name) else None
    except OSError:
        return None


def keep_thumbnail(folder: Path, name: str, content: bytes) -> None:
    """Keep the small copy of a photo. A disk that will not take it changes nothing."""
    place = folder / SMALL
    beside = place / f".{uuid.uuid4().hex}.coming"
    try:
        place.mkdir(exist_ok=True)
        beside.write_bytes(content)
        beside.replace(place / name)
    except OSError:
        beside.unlink(missing_ok=True)


def photos_named(entries: Iterable[Entry]) -> dict[str, int]:
    """Each photo that any line names, struck or not, with the first line that does."""
    named: dict[str, int] = {}
    for entry in entries:
        fact = entry.fact.instead if isinstance(entry.fact, Struck) else entry.fact
        if isinstance(fact, Photographed):
            for name in fact.photos:
                named.setdefault(name, entry.line)
    return named


def photo_faults(folder: Path, entries: Iterable[Entry]) -> Iterator[Fault]:
    """Photos that a line names and that are missing, or are no longer what they were."""
    for name, line in photos_named(entries).items():
        file = folder / FOLDER / name
        if "/" in name or "\\" in name or not file.is_file():
            yield _fault(line, f"The photo {name[:12]} of line {line} is missing.")
        elif is_photo_name(name) and _digest(file) != name.removesuffix(ENDING):
            yield _fault(line, f"The photo {name[:12]} of line {line} is no longer what it was.")


def _fault(line: int, what: str) -> Fault:
    return Fault(line=line, rule="photo", what=what, do=_RESTORE)


def _holds(file: Path, content: bytes) -> bool:
    return file.is_file() and file.stat().st_size == len(content) and file.read_bytes() == content


def _digest(file: Path) -> str:
    with file.open("rb") as photo:
        return hashlib.file_digest(photo, "sha256").hexdigest()


def _settled(folder: Path) -> None:
    """Have the folder's own entry on the disk as well; not every system lets a folder be opened."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    door = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(door)
    finally:
        os.close(door)
