"""A table of numbers with its pedigree: what it holds, who printed it, what it is not for.

A table is one TOML file with an `[about]` head. Its rows stand in it as `[[row]]`, or beside it
in a CSV file of the same name when there are many. Cells that read as numbers are numbers.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from msgspec import Struct

from witnessmark.tables.read import read_csv, read_table


class About(Struct, frozen=True, kw_only=True):
    """The head of a table.

    holds    what the rows are
    source   keys of tables/sources; a row may name its own in a column `source`
    where    where in the source
    covers   what the numbers may be used for
    not_for  what they must not be used for
    edition  of the source, as printed there; "not said" where it was not
    key      columns that together name a row once
    rising   columns that never fall from row to row, within a like value of `within`
    within   column that parts the rows into runs for `rising`
    units    unit of each column that holds a quantity
    words    columns that hold words, not numbers
    """

    holds: str
    source: tuple[str, ...]
    covers: str
    not_for: str
    edition: str
    key: tuple[str, ...]
    where: str = ""
    rising: tuple[str, ...] = ()
    within: str = ""
    units: Mapping[str, str] = {}
    words: tuple[str, ...] = ()


class Table(Struct, frozen=True):
    """A table read whole: its head and its rows; a missing cell is None."""

    name: str
    about: About
    rows: tuple[Mapping[str, Any], ...]


@cache
def table(name: str) -> Table:
    """One table by its name, as "threads/metric". Shared: read it, never change it."""
    raw = read_table(name)
    head: dict[str, Any] = {k: tuple(v) if isinstance(v, list) else v for k, v in raw["about"].items()}
    about = About(**head)
    rows = raw["row"] if "row" in raw else read_csv(name)
    return Table(name, about, tuple(_row(row, about) for row in rows))


def _row(row: Mapping[str, Any], about: About) -> Mapping[str, Any]:
    return MappingProxyType({k: _cell(v, word=k in about.words) for k, v in row.items()})


def _cell(value: Any, *, word: bool) -> Any:
    if not isinstance(value, str):
        return value
    text = value.strip()
    if word:
        return text
    return float(text) if text else None
