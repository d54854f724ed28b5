"""The one table of the journal's file, and the guards that keep a slip from changing it."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping

FILE = "journal.db"
APPLICATION = 0x574D4A31  # "WMJ1": written into the file's head, so that another program's file is known
SCHEMA = 1
OLDEST_SQLITE = (3, 37, 0)  # the first with STRICT tables

COLUMNS = "line, id, day, time, written, who, words, version, fact"

TABLE = """
CREATE TABLE entries (
    line    INTEGER PRIMARY KEY,
    id      TEXT NOT NULL UNIQUE,
    day     TEXT NOT NULL,
    time    TEXT NOT NULL,
    written TEXT NOT NULL,
    who     TEXT NOT NULL,
    words   TEXT NOT NULL,
    version INTEGER NOT NULL,
    fact    TEXT NOT NULL
) STRICT
"""

# An insert "or replace" and an upsert both meet the first guard before they meet the old row,
# on any connection; the other two are there for whoever asks straight out.
GUARDS: Mapping[str, str] = {
    "only_the_next_line": """
CREATE TRIGGER only_the_next_line BEFORE INSERT ON entries
WHEN NEW.line IS NOT (SELECT coalesce(max(line), 0) + 1 FROM entries)
  OR EXISTS (SELECT 1 FROM entries WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a line is only ever added at the end of the record'); END
""",
    "no_line_changed": """
CREATE TRIGGER no_line_changed BEFORE UPDATE ON entries
BEGIN SELECT RAISE(ABORT, 'a line of the record is never changed'); END
""",
    "no_line_taken_out": """
CREATE TRIGGER no_line_taken_out BEFORE DELETE ON entries
BEGIN SELECT RAISE(ABORT, 'a line of the record is never taken out'); END
""",
}


def lay(connection: sqlite3.Connection) -> None:
    """Make the table and its guards, inside the transaction the caller has begun."""
    connection.execute(TABLE)
    for guard in GUARDS.values():
        connection.execute(guard)
    connection.execute(f"PRAGMA application_id = {APPLICATION}")
    connection.execute(f"PRAGMA user_version = {SCHEMA}")


def settle(connection: sqlite3.Connection) -> None:
    """What every connection needs: a commit that is on the disk, and guards that see a replacement."""
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA fullfsync = ON")  # heeded on macOS, where a plain flush stops at the drive
    connection.execute("PRAGMA checkpoint_fullfsync = ON")
    connection.execute("PRAGMA recursive_triggers = ON")


def number(connection: sqlite3.Connection, pragma: str) -> int:
    """The number a pragma answers with."""
    return int(connection.execute(f"PRAGMA {pragma}").fetchone()[0])


def missing_guards(connection: sqlite3.Connection) -> tuple[str, ...]:
    """Names of guards that are gone or no longer what they were."""
    kept = dict(connection.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'"))
    return tuple(name for name, sql in GUARDS.items() if kept.get(name) != sql.strip())
