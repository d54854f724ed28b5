"""Every source named by a data file, by its key."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from witnessmark.ground.pedigree import Source
from witnessmark.tables.read import names_in, read_table


@cache
def sources() -> Mapping[str, Source]:
    """All sources of the package."""
    found: dict[str, Source] = {}
    for name in names_in("sources"):
        for key, row in read_table(name).items():
            found[key] = Source(key=key, **row)
    return MappingProxyType(found)


@cache
def cautions() -> Mapping[str, str]:
    """The usual caution by its key, in our own words.

    >>> "manual" in cautions()["brakes-both-sides"] or len(cautions()) > 5
    True
    """
    return MappingProxyType({key: str(row["text"]) for key, row in read_table("cautions").items()})
