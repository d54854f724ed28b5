"""A place for a record, whatever it is kept in: begun, opened, and attacked from behind its back."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import Any

import psycopg

from witnessmark.store import opening
from witnessmark.store.kept_at import kept_at
from witnessmark.store.postgres_schema import GUARDS as SERVER_GUARDS
from witnessmark.store.postgres_schema import schema_name
from witnessmark.store.record_store import OpenRecord
from witnessmark.store.schema import FILE
from witnessmark.store.schema import GUARDS as FILE_GUARDS

_NUMBERS = count(1)


class Place:
    """A folder, and where its record is kept: "" in the folder itself."""

    def __init__(self, folder: Path, kept_at: str = "") -> None:
        self.folder = folder
        self.kept_at = kept_at

    @property
    def guards(self) -> tuple[str, ...]:
        return tuple(SERVER_GUARDS if self.kept_at else FILE_GUARDS)

    def create(self) -> OpenRecord:
        return opening.create(self.folder, kept_at=self.kept_at)

    def reopen(self) -> OpenRecord:
        return opening.open_record(self.folder)

    def raw(self) -> Any:
        """A second connection that knows nothing of this program."""
        if not self.kept_at:
            return sqlite3.connect(self.folder / FILE, isolation_level=None)
        where = kept_at(self.kept_at)
        connection = psycopg.connect(where.address, autocommit=True)
        connection.execute(f"SET search_path = {schema_name(where.name)}")
        return connection

    @contextmanager
    def without_guards(self) -> Iterator[Any]:
        """Do what a slip cannot: take the guards away, let the record be changed, put them back."""
        raw = self.raw()
        for guard in self.guards:
            raw.execute(self._off(guard))
        yield raw
        for guard in self.guards:
            raw.execute(self._on(guard))
        raw.close()

    def _off(self, guard: str) -> str:
        return f"ALTER TABLE entries DISABLE TRIGGER {guard}" if self.kept_at else f"DROP TRIGGER {guard}"

    def _on(self, guard: str) -> str:
        return f"ALTER TABLE entries ENABLE ALWAYS TRIGGER {guard}" if self.kept_at else FILE_GUARDS[guard]

    def past_the_guards(self, *statements: str) -> None:
        with self.without_guards() as raw:
            for statement in statements:
                raw.execute(statement)


def new_place(above: Path, kept_where: str) -> Place:
    """A place below a folder where nothing is kept yet; on a server, under a name of its own."""
    return Place(above / "pickup", f"{kept_where}#pickup_{next(_NUMBERS)}" if kept_where else "")


def rows(raw: Any) -> list[tuple[Any, ...]]:
    """Every row, as it stands on the disk."""
    found: Iterable[tuple[Any, ...]] = raw.execute("SELECT * FROM entries ORDER BY line").fetchall()
    return [tuple(row) for row in found]
