"""What a database server says, told as something a person can act on."""

from __future__ import annotations

from collections.abc import Mapping

import psycopg
from psycopg import errors

from witnessmark.ground.errors import BadInput, RecordDamaged, WitnessMarkError
from witnessmark.store.kept_at import KeptAt


def told(trouble: psycopg.Error, where: KeptAt) -> WitnessMarkError:
    """The error to raise instead of the server's own."""
    for sort, (given, holds, do) in _MENDABLE.items():
        if isinstance(trouble, sort):
            said = f"the record {where} {given} ({first_line(trouble)})"
            return BadInput(given=said, holds=holds, do=do)
    return RecordDamaged(f"the record {where} cannot be read: {first_line(trouble)}. Nothing was written.")


def first_line(trouble: psycopg.Error) -> str:
    """The first line of what the server said."""
    return f"{trouble}".strip().partition("\n")[0] or type(trouble).__name__


_MENDABLE: Mapping[type[psycopg.Error], tuple[str, str, str]] = {
    errors.InsufficientPrivilege: (
        "may not be read or written by this database user",
        "a user who may use that schema",
        "Have the database's keeper grant it; nothing was written.",
    ),
    errors.ReadOnlySqlTransaction: (
        "lies on a server that takes no lines",
        "the server that is written to, not its copy",
        "Name that server in the setting; nothing was written.",
    ),
    errors.DiskFull: (
        "could not be written: the server's disk is full",
        "a disk with room for one more line",
        "Make room there, then write the line again; nothing of it was written.",
    ),
    psycopg.OperationalError: (
        "cannot be reached, or the connection was lost",
        "a database server that answers, and that this user may log in to",
        "See that it runs. Then send the same line again: it cannot be written twice.",
    ),
}
