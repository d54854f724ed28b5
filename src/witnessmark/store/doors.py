"""People, the hashes of their pass phrases, and who is logged in: beside the record, never in it.

One file, readable by its owner alone. It is no part of the journal, of an archive or of a backup, and
nothing in it is needed to read the record.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.store.disk_trouble import DISK_TROUBLE, told

FILE = "doors.db"
WAIT_SECONDS = 10.0

_TABLES = """
CREATE TABLE IF NOT EXISTS people (
    plain  TEXT PRIMARY KEY,
    name   TEXT NOT NULL,
    role   TEXT NOT NULL,
    phrase TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS log_ins (
    mark  BLOB PRIMARY KEY,
    plain TEXT NOT NULL REFERENCES people (plain) ON DELETE CASCADE,
    begun TEXT NOT NULL,
    used  TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS tries (
    number INTEGER PRIMARY KEY,
    of     TEXT NOT NULL,
    moment TEXT NOT NULL
) STRICT;
"""


class Person(Struct, frozen=True, kw_only=True):
    """Somebody with a key.

    name    as typed; `plain` is the same without regard to capitals, unique
    phrase  the hash of the pass phrase
    """

    plain: str
    name: str
    role: str
    phrase: str


class LogIn(Struct, frozen=True, kw_only=True):
    """Somebody who is logged in, since when, and when last seen."""

    person: Person
    begun: datetime
    used: datetime


class Doors:
    """The file of one folder; made, with mode 0600, when the first thing is kept in it."""

    def __init__(self, folder: Path) -> None:
        self.file = folder / FILE

    # ---- people

    def people(self) -> tuple[Person, ...]:
        """Everybody, by name."""
        if not self.file.is_file():
            return ()
        with self._open() as kept:
            rows = kept.execute("SELECT plain, name, role, phrase FROM people ORDER BY plain")
            return tuple(_person(row) for row in rows)

    def keep(self, person: Person) -> None:
        """Add somebody, or put in the place of who stood under that name; that person's log-ins end."""
        with self._open() as kept:
            kept.execute("DELETE FROM people WHERE plain = ?", (person.plain,))
            kept.execute(
                "INSERT INTO people VALUES (?,?,?,?)", (person.plain, person.name, person.role, person.phrase)
            )

    def rehash(self, plain: str, phrase: str) -> None:
        """Keep a newer hash of the same pass phrase."""
        with self._open() as kept:
            kept.execute("UPDATE people SET phrase = ? WHERE plain = ?", (phrase, plain))

    def remove(self, plain: str) -> None:
        """Take somebody out, and every log-in with them."""
        with self._open() as kept:
            kept.execute("DELETE FROM people WHERE plain = ?", (plain,))

    # ---- log-ins

    def begin(self, mark: bytes, plain: str, now: datetime) -> None:
        """Remember a log-in by the mark of its key; the key itself is not kept."""
        moment = now.isoformat()
        with self._open() as kept:
            kept.execute("INSERT INTO log_ins VALUES (?,?,?,?)", (mark, plain, moment, moment))

    def log_in(self, mark: bytes) -> LogIn | None:
        """Who is logged in by this mark, None where nobody is."""
        if not self.file.is_file():
            return None
        asked = (
            "SELECT plain, name, role, phrase, begun, used FROM log_ins JOIN people USING (plain)"
            " WHERE mark = ?"
        )
        with self._open() as kept:
            row = kept.execute(asked, (mark,)).fetchone()
        if row is None:
            return None
        begun, used = (datetime.fromisoformat(moment) for moment in row[4:])
        return LogIn(person=_person(row[:4]), begun=begun, used=used)

    def used(self, mark: bytes, now: datetime) -> None:
        """Remember that a log-in was used."""
        with self._open() as kept:
            kept.execute("UPDATE log_ins SET used = ? WHERE mark = ?", (now.isoformat(), mark))

    def end(self, mark: bytes) -> None:
        """End one log-in."""
        with self._open() as kept:
            kept.execute("DELETE FROM log_ins WHERE mark = ?", (mark,))

    def end_all(self, plain: str) -> None:
        """End every log-in of one person."""
        with self._open() as kept:
            kept.execute("DELETE FROM log_ins WHERE plain = ?", (plain,))

    def forget_before(self, begun: datetime) -> None:
        """Forget log-ins that were begun before a moment."""
        with self._open() as kept:
            kept.execute("DELETE FROM log_ins WHERE begun < ?", (begun.isoformat(),))

    # ---- wrong tries

    def try_begins(self, of: tuple[str, ...], since: datetime, now: datetime) -> tuple[int, tuple[int, ...]]:
        """Count a try before it is known to be right, under each of these keys.

        Gives the most tries of any key since that moment, this one among them, and the tries' numbers.
        """
        with self._open() as kept:
            kept.execute("DELETE FROM tries WHERE moment < ?", (since.isoformat(),))
            made = [
                kept.execute("INSERT INTO tries (of, moment) VALUES (?,?)", (key, now.isoformat())).lastrowid
                for key in of
            ]
            counted = [
                kept.execute("SELECT count(*) FROM tries WHERE of = ?", (key,)).fetchone()[0] for key in of
            ]
        return max(counted), tuple(number for number in made if number is not None)

    def try_was_right(self, numbers: tuple[int, ...]) -> None:
        """A try that was right does not count."""
        with self._open() as kept:
            kept.executemany("DELETE FROM tries WHERE number = ?", [(number,) for number in numbers])

    # ---- inside

    @contextmanager
    def _open(self) -> Iterator[sqlite3.Connection]:
        """The file, in one transaction: all of what is done in it is kept, or nothing."""
        try:
            self._make()
            with closing(sqlite3.connect(self.file, timeout=WAIT_SECONDS, isolation_level=None)) as kept:
                kept.execute("PRAGMA foreign_keys = ON")
                kept.execute("PRAGMA synchronous = FULL")
                kept.execute("PRAGMA secure_delete = ON")
                kept.execute("BEGIN IMMEDIATE")
                yield kept
                kept.execute("COMMIT")
        except DISK_TROUBLE as trouble:
            raise told(trouble, self.file) from trouble

    def _make(self) -> None:
        """Make the file readable by its owner alone before anything is put into it."""
        if self.file.is_file() and self.file.stat().st_size:
            return
        try:
            os.close(os.open(self.file, os.O_CREAT | os.O_RDWR, 0o600))
            self.file.chmod(0o600)
        except OSError as trouble:
            raise BadInput(
                given=f"{self.file} cannot be made: {trouble.strerror}",
                holds="a folder this user may write",
                do="Name another folder, or make this one by hand.",
            ) from trouble
        with closing(sqlite3.connect(self.file, timeout=WAIT_SECONDS)) as kept:
            kept.executescript(_TABLES)


def _person(row: tuple[str, str, str, str]) -> Person:
    plain, name, role, phrase = row
    return Person(plain=plain, name=name, role=role, phrase=phrase)
