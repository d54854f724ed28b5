"""Where a record is kept when it is not in its folder: one line in a file there names a database server."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import SplitResult, urlsplit

from msgspec import Struct

from witnessmark.ground.errors import BadInput

SETTING = "kept-at.txt"
EXAMPLE = "postgresql://bench@shed/workshop#pickup"
_SORTS = ("postgresql", "postgres")
_NAME = re.compile(r"[a-z][a-z0-9_]{0,39}")


class KeptAt(Struct, frozen=True, kw_only=True):
    """A record in a database.

    address  of the database, without a pass word
    name     of the record in it: small letters, digits, low lines
    """

    address: str
    name: str

    def __str__(self) -> str:
        return f"{self.address}#{self.name}"


def kept_at(typed: str) -> KeptAt:
    """Read the setting.

    >>> kept_at("postgresql://bench@shed:5433/workshop#pickup").name
    'pickup'

    Raises BadInput where it is no such address, or carries a pass word, which would stand in the folder.
    """
    plain = typed.strip()
    try:
        parts: SplitResult | None = urlsplit(plain)
    except ValueError:
        parts = None
    if parts is None or parts.scheme not in _SORTS or not _NAME.fullmatch(parts.fragment):
        raise BadInput(
            given=f"{plain[:120]!r} names no place to keep a record",
            holds=f"a database and the record's name in it, as {EXAMPLE}",
            do="Write it that way; the name is of small letters, digits and low lines, a letter first.",
        )
    if "password" in parts.query.lower() or parts.password is not None:
        raise BadInput(
            given="the address of the database carries a pass word",
            holds="an address without one: it stands in the vehicle's folder for anybody to read",
            do="Keep the pass word in your own .pgpass file, or in the variable PGPASSWORD.",
        )
    return KeptAt(address=plain.partition("#")[0], name=parts.fragment)


def setting_in(folder: Path) -> KeptAt | None:
    """Where the folder says its record is kept; None where it says nothing."""
    file = folder / SETTING
    try:
        return kept_at(file.read_text("utf-8-sig")) if file.is_file() else None
    except (OSError, UnicodeDecodeError) as trouble:
        raise BadInput(
            given=f"{file} cannot be read ({trouble})",
            holds=f"one line, as {EXAMPLE}",
            do="Look at the file's rights and at how it was saved.",
        ) from trouble
