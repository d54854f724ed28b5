"""A second copy of all that matters, made while others write, and taken back into an empty folder.

One file holds one archive for each vehicle, its lines and its photos, as `export` writes it: any ZIP reader
opens it, and it can be taken back into a file or onto a server. People and log-ins stay out of it.
"""

from __future__ import annotations

import hashlib
import shutil
import tempfile
import zipfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

import msgspec
from msgspec import Struct

from witnessmark.exchange.archive import read_archive
from witnessmark.exchange.beside import written_beside
from witnessmark.exchange.zip_reading import digest, opened, refused
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.begin import reopen
from witnessmark.restoration.carrying import export_file, take_archive
from witnessmark.restoration.shop import is_shop, vehicles_in
from witnessmark.store.opening import holds_record

FORMAT, VERSION = "witness-mark backup", 1
ABOUT = "backup.json"
_MOST_ABOUT = 2**20
_LONGEST_NAME = 200
_BARRED = frozenset('/\\:*?"<>|')  # in the name of a folder, on one system or another


class Kept(Struct, frozen=True, kw_only=True):
    """One vehicle in a backup.

    folder   the name of its folder
    archive  its file in the backup; sha256 the check sum of that
    """

    folder: str
    archive: str
    lines: int
    sha256: str


class About(Struct, frozen=True, kw_only=True):
    """What a backup says of itself; `shop` where the vehicles lay below the folder that was named."""

    format: str
    version: int
    shop: bool
    made: str
    vehicles: tuple[Kept, ...]


def back_up(folder: Path, file: Path, *, now: datetime, say: Callable[[str], None]) -> About:
    """Copy every vehicle of a folder into one file, each read back whole before it counts.

    Others may go on writing: of each vehicle the backup holds what was there when its turn came.

    Raises BadInput where there is no vehicle, or where the file is there already.
    """
    vehicles = vehicles_in(folder)
    if file.exists():
        raise BadInput(
            given=f"{file} is there already",
            holds="a name of its own for each backup",
            do=f"Give another, as: {now:%Y-%m-%d}.zip",
        )
    with (
        _workplace(file.absolute().parent) as place,
        written_beside(file) as beside,
        zipfile.ZipFile(beside, "w", zipfile.ZIP_STORED) as packed,
    ):
        kept = []
        for number, vehicle in enumerate(vehicles, 1):
            say(f"{vehicle.absolute().name} ...")
            made = place / f"{number}.zip"
            lines = export_file(reopen(vehicle, now=now), vehicle, made)
            read_archive(made)
            name = vehicle.absolute().name or "vehicle"
            kept.append(Kept(folder=name, archive=made.name, lines=lines, sha256=_sum_of(made)))
            packed.write(made, made.name)
            made.unlink()
        moment = now.isoformat(timespec="seconds")
        about = About(format=FORMAT, version=VERSION, shop=is_shop(folder), made=moment, vehicles=tuple(kept))
        packed.writestr(ABOUT, msgspec.json.format(msgspec.json.encode(about), indent=1))
    return about


def restore(file: Path, folder: Path, *, kept_at: str = "") -> tuple[Path, ...]:
    """Take a backup back: a vehicle into the folder itself, a shop's vehicles into folders below it.

    Every archive is checked to its last photo before the first line is written.

    kept_at  for one vehicle: the server it is to be kept on

    Raises BadInput where the file is no whole backup, or a record stands where one would go.
    """
    with opened(file) as packed:
        about = _about_in(packed, file)
        targets = [folder / _fit(one.folder, file) if about.shop else folder for one in about.vehicles]
        _demand_room(targets, kept_at)
        folder.absolute().parent.mkdir(parents=True, exist_ok=True)
        with _workplace(folder.absolute().parent) as place:
            archives = [_unpacked(packed, file, one, place) for one in about.vehicles]
            for archive in archives:
                read_archive(archive)
            for archive, target in zip(archives, targets, strict=True):
                take_archive(target, archive, kept_at=kept_at)
    return tuple(targets)


def _about_in(packed: zipfile.ZipFile, file: Path) -> About:
    names = packed.namelist()
    if ABOUT not in names or packed.getinfo(ABOUT).file_size > _MOST_ABOUT:
        raise refused(file, f"holds no {ABOUT}: it is no backup. An archive is taken in with `import`")
    try:
        about = msgspec.json.decode(packed.read(ABOUT), type=About)
    except (msgspec.DecodeError, msgspec.ValidationError) as trouble:
        raise refused(file, f"is damaged: {ABOUT} cannot be read: {trouble}") from trouble
    if about.format != FORMAT or about.version > VERSION:
        raise refused(file, f"is {about.format!r}, version {about.version}; this program reads {FORMAT!r}")
    if sorted(names) != sorted((ABOUT, *(one.archive for one in about.vehicles))) or not about.vehicles:
        raise refused(file, "does not hold the archives that it lists")
    folders = {one.folder.casefold() for one in about.vehicles}
    if len(folders) != len(about.vehicles) or (len(folders) > 1 and not about.shop):
        raise refused(file, "names one folder twice")
    return about


def _unpacked(packed: zipfile.ZipFile, file: Path, one: Kept, place: Path) -> Path:
    """One archive out of the backup, its check sum compared; under a name that is ours to give."""
    info = packed.getinfo(one.archive)
    if info.compress_type != zipfile.ZIP_STORED:
        raise refused(file, f"holds {one.archive!r} packed otherwise than it is written")
    made = place / hashlib.sha256(one.archive.encode()).hexdigest()
    with packed.open(info) as inside, made.open("wb") as out:
        shutil.copyfileobj(inside, out)
    if _sum_of(made) != one.sha256:
        raise refused(file, f"is damaged: {one.archive} does not have the check sum it was written with")
    return made


def _demand_room(targets: list[Path], kept_at: str) -> None:
    if kept_at and len(targets) > 1:
        raise BadInput(
            given=f"{len(targets)} vehicles were to be kept on a server under one name",
            holds="one vehicle, where --kept-at is given",
            do="Restore them into folders first; or leave --kept-at out.",
        )
    for target in targets:
        if holds_record(target):
            raise BadInput(
                given=f"{target} already holds a record",
                holds="a folder without one: a backup is never taken over what is there",
                do="Name a new folder, as: witnessmark restore the-backup.zip copy",
            )


def _fit(name: str, file: Path) -> str:
    """The name of a folder, where it can be one and no way out."""
    odd = any(letter in _BARRED or not letter.isprintable() for letter in name)
    if odd or not name.strip(". ") or len(name) > _LONGEST_NAME:
        raise refused(file, f"names the folder {name!r}, which cannot be one")
    return name


def _sum_of(file: Path) -> str:
    with file.open("rb") as stream:
        return digest(stream)


@contextmanager
def _workplace(above: Path) -> Iterator[Path]:
    """A folder for what lies half-done, on the same disk, gone afterwards."""
    try:
        with tempfile.TemporaryDirectory(prefix=".witnessmark-", dir=above) as place:
            yield Path(place)
    except OSError as trouble:
        raise BadInput(
            given=f"{above} cannot be written: {trouble.strerror or trouble}",
            holds="a folder this user may write, with room in it",
            do="Name another place, or make room there.",
        ) from trouble
