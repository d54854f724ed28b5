"""The table of a record on a database server, and the guards that keep a slip from changing it.

Each record is a schema of its own. The guards fire always, in whatever role a session replays lines,
and refuse emptying the table as well.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from psycopg import Connection, sql

from witnessmark.store.schema import COLUMNS

LAYOUT = "witness mark record, layout 1"

_TABLE = """
CREATE TABLE entries (
    line    bigint  PRIMARY KEY,
    id      text    NOT NULL UNIQUE,
    day     text    NOT NULL,
    time    text    NOT NULL,
    written text    NOT NULL,
    who     text    NOT NULL,
    words   text    NOT NULL,
    version integer NOT NULL,
    fact    text    NOT NULL
)
"""

# What each guard runs.
_BODIES: Mapping[str, str] = {
    "only_the_next_line": """
BEGIN
  IF NEW.line IS DISTINCT FROM (SELECT coalesce(max(line), 0) + 1 FROM entries)
     OR EXISTS (SELECT 1 FROM entries WHERE id = NEW.id) THEN
    RAISE EXCEPTION 'a line is only ever added at the end of the record'
      USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END
""",
    "never": """
BEGIN
  RAISE EXCEPTION 'a line of the record is never changed or taken out'
    USING ERRCODE = 'integrity_constraint_violation';
END
""",
}

# Each guard: when it fires, the function it runs, and the server's own number for that moment.
GUARDS: Mapping[str, tuple[str, str, int]] = {
    "only_the_next_line": ("BEFORE INSERT ON entries FOR EACH ROW", "only_the_next_line", 7),
    "no_line_changed": ("BEFORE UPDATE ON entries FOR EACH STATEMENT", "never", 18),
    "no_line_taken_out": ("BEFORE DELETE ON entries FOR EACH STATEMENT", "never", 10),
    "no_emptying": ("BEFORE TRUNCATE ON entries FOR EACH STATEMENT", "never", 34),
}

_ASK_GUARDS = """
SELECT t.tgname, t.tgenabled::text, t.tgtype, t.tgqual IS NULL, p.proname, p.prosrc
FROM pg_trigger t JOIN pg_proc p ON p.oid = t.tgfoid
WHERE t.tgrelid = 'entries'::regclass AND NOT t.tgisinternal
"""

INSERT = f"INSERT INTO entries ({COLUMNS}) VALUES (%s,%s,%s,%s,%s,%s,%s,%s,%s)"
# The writers' place: another writer waits here, a reader does not.
TAKE_PLACE = "LOCK TABLE entries IN SHARE ROW EXCLUSIVE MODE"


def schema_name(name: str) -> str:
    """The schema a record lies in.

    >>> schema_name("pickup")
    'record_pickup'
    """
    return f"record_{name}"


def lay(connection: Connection[Any], schema: str) -> None:
    """Make the schema, its table and its guards, inside the transaction the caller has begun."""
    named = sql.Identifier(schema)
    connection.execute(sql.SQL("CREATE SCHEMA {}").format(named))
    connection.execute(sql.SQL("COMMENT ON SCHEMA {} IS {}").format(named, sql.Literal(LAYOUT)))
    connection.execute(sql.SQL("SET LOCAL search_path = {}").format(named))
    connection.execute(_TABLE)
    for name, body in _BODIES.items():
        made = "CREATE FUNCTION {}() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS {}"
        connection.execute(sql.SQL(made).format(sql.Identifier(name), sql.Literal(body)))
    for guard, (moment, body, _) in GUARDS.items():
        connection.execute(f"CREATE TRIGGER {guard} {moment} EXECUTE FUNCTION {body}()")
        connection.execute(f"ALTER TABLE entries ENABLE ALWAYS TRIGGER {guard}")


def layout_of(connection: Connection[Any], schema: str) -> str | None:
    """What a schema says it is; None where there is no schema of the name, "" where it says nothing."""
    asked = "SELECT coalesce(obj_description(oid, 'pg_namespace'), '') FROM pg_namespace WHERE nspname = %s"
    row = connection.execute(asked, (schema,)).fetchone()
    return str(row[0]) if row else None


def missing_guards(connection: Connection[Any]) -> tuple[str, ...]:
    """Names of guards that are gone, switched off, or no longer what they were."""
    kept = {row[0]: tuple(row[1:]) for row in connection.execute(_ASK_GUARDS)}
    return tuple(
        guard
        for guard, (_, body, moment) in GUARDS.items()
        if kept.get(guard) != ("A", moment, True, body, _BODIES[body])
    )
