"""A record begun or opened, wherever its folder says that it is kept: in the folder, or on a server."""

from __future__ import annotations

from pathlib import Path
from types import ModuleType

from witnessmark.ground.errors import BadInput
from witnessmark.store import sqlite_record
from witnessmark.store.folders import refuse_shared_folder
from witnessmark.store.kept_at import SETTING, KeptAt, setting_in
from witnessmark.store.kept_at import kept_at as read_setting
from witnessmark.store.record_store import OpenRecord
from witnessmark.store.schema import FILE


def holds_record(folder: Path) -> bool:
    """Whether a folder is a vehicle's: its record lies there, or a line there says where."""
    return (folder / FILE).is_file() or (folder / SETTING).is_file()


def create(folder: Path, *, kept_at: str = "") -> OpenRecord:
    """Begin an empty record.

    kept_at  a database and the record's name in it; the folder then holds that one line, and the photos

    Raises BadInput where a record stands already, or the folder or the server will not do.
    """
    if (folder / SETTING).is_file() or (kept_at and holds_record(folder)):
        raise BadInput(
            given=f"the record of {folder} already exists",
            holds="a folder without a record",
            do="Open that record, or begin this one in another folder.",
        )
    if not kept_at:
        return sqlite_record.create(folder)
    where = read_setting(kept_at)
    refuse_shared_folder(folder)
    record: OpenRecord = server_store().create(where)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / SETTING).write_text(f"{where}\n", encoding="utf-8")
    except OSError as trouble:
        record.close()
        raise BadInput(
            given=f"the record was begun at {where}, but {folder / SETTING} cannot be written: {trouble}",
            holds="a folder this user may write",
            do=f"Write that one line there by hand: {where}",
        ) from trouble
    return record


def open_record(folder: Path) -> OpenRecord:
    """Open the record of a folder.

    Raises BadInput where there is none, RecordDamaged where what is there is no record of this program.
    """
    where = setting_in(folder)
    if where is None:
        return sqlite_record.open_record(folder)
    refuse_shared_folder(folder)
    _refuse_both(folder, where)
    record: OpenRecord = server_store().open_record(where)
    return record


def server_store() -> ModuleType:
    """The part that speaks to a database server, read only when a folder asks for it.

    Raises BadInput where its library is not there.
    """
    try:
        from witnessmark.store import postgres_record
    except ImportError as trouble:
        raise BadInput(
            given="this record is kept on a database server, and the library that speaks to it is not here",
            holds="the library psycopg, version 3",
            do='Bring it, as: .venv/bin/python -m pip install "psycopg[binary]"',
        ) from trouble
    return postgres_record


def _refuse_both(folder: Path, where: KeptAt) -> None:
    """One truth: a folder that names a server may not hold a record of its own."""
    if (folder / FILE).is_file():
        raise BadInput(
            given=f"{folder} holds a record, {FILE}, and {SETTING} names another, {where}",
            holds="one of the two",
            do="Put one of the files elsewhere, when you know which is the record.",
        )
