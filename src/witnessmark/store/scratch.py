"""Answers kept so that they need not be computed twice. The file may be deleted at any time.

Nothing here is ever the truth: an answer is found only under the very line, seed and version it was
computed for, and whatever is wrong with the file counts as "not kept".
"""

from __future__ import annotations

import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from witnessmark.store.disk_trouble import DISK_TROUBLE

FILE = "scratch.db"
MOST = 500  # answers kept; the oldest go first

_TABLE = "CREATE TABLE IF NOT EXISTS answers (key TEXT PRIMARY KEY, answer BLOB NOT NULL)"
_THIN = "DELETE FROM answers WHERE rowid <= (SELECT max(rowid) FROM answers) - ?"


def answer_key(question: str, *, last_line: int, seed: int, version: str) -> str:
    r"""The key of an answer: asked so, of a record that ends there, with that chance, by that program.

    >>> answer_key("session 3 h", last_line=214, seed=7, version="0.1.0")
    '214\x1f7\x1f0.1.0\x1fsession 3 h'
    """
    return "\x1f".join((str(last_line), str(seed), version, question))


class Scratch:
    """Answers by key, in one file in the vehicle's folder."""

    def __init__(self, folder: Path) -> None:
        self.file = folder / FILE

    def get(self, key: str) -> bytes | None:
        """The answer kept under the key, or None."""
        if not self.file.is_file():
            return None
        try:
            with closing(self._connected()) as connection:
                row = connection.execute("SELECT answer FROM answers WHERE key = ?", (key,)).fetchone()
        except DISK_TROUBLE:
            return None
        return bytes(row[0]) if row else None

    def put(self, key: str, answer: bytes) -> None:
        """Keep an answer. Where the file cannot be written it is not kept, and nothing is said."""
        try:
            self._put(key, answer)
        except sqlite3.OperationalError:
            return
        except DISK_TROUBLE:  # not a database, or a broken one
            self.forget()
            with suppress(*DISK_TROUBLE):
                self._put(key, answer)

    def forget(self) -> None:
        """Delete every answer."""
        with suppress(OSError):
            self.file.unlink(missing_ok=True)

    def _put(self, key: str, answer: bytes) -> None:
        with closing(self._connected()) as connection, connection:
            connection.execute(_TABLE)
            connection.execute("REPLACE INTO answers VALUES (?, ?)", (key, answer))
            connection.execute(_THIN, (MOST,))

    def _connected(self) -> sqlite3.Connection:
        return sqlite3.connect(self.file)
