"""What the database or the disk says, told as something a person can act on."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from pathlib import Path

from witnessmark.ground.errors import BadInput, RecordDamaged, WitnessMarkError

# A spoilt file may spoil the database's own message as well, which then cannot be decoded.
DiskTrouble = sqlite3.Error | UnicodeDecodeError
DISK_TROUBLE = (sqlite3.Error, UnicodeDecodeError)
BUSY = frozenset({sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED})


def code_of(trouble: DiskTrouble) -> int:
    """The plain error code, 0 where there is none."""
    return getattr(trouble, "sqlite_errorcode", 0) & 0xFF


def told(trouble: DiskTrouble, file: Path) -> WitnessMarkError:
    """The error to raise instead of the database's own."""
    known = _MENDABLE.get(code_of(trouble))
    if known is None:
        return RecordDamaged(f"the record {file} cannot be read: {trouble}. Nothing was written.")
    given, holds, do = known
    return BadInput(given=f"the record {file} {given}", holds=holds, do=do)


_MENDABLE: Mapping[int, tuple[str, str, str]] = {
    sqlite3.SQLITE_FULL: (
        "could not be written: the disk is full",
        "a disk with room for one more line",
        "Make room, then write the line again; nothing of it was written.",
    ),
    sqlite3.SQLITE_READONLY: (
        "may not be written to",
        "a folder and file this user may write",
        "Give yourself the right to write there; nothing was written.",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "cannot be opened",
        "a folder this user may read and write",
        "Look at the folder's rights and at the disk.",
    ),
    sqlite3.SQLITE_PERM: (
        "may not be opened",
        "a folder this user may read and write",
        "Look at the folder's rights.",
    ),
    sqlite3.SQLITE_IOERR: (
        "could not be read or written: the disk reported an error",
        "a disk that answers",
        "Copy the folder to another disk, then check the record there.",
    ),
    sqlite3.SQLITE_BUSY: (
        "is held by another program",
        "a record nobody else is writing",
        "Wait until the other program is done, then try again.",
    ),
    sqlite3.SQLITE_LOCKED: (
        "is held by another program",
        "a record nobody else is writing",
        "Wait until the other program is done, then try again.",
    ),
}
