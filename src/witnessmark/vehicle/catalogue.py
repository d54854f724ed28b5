"""The close-out catalogue, read once from its data files."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

import msgspec

from witnessmark.ground.errors import BadInput
from witnessmark.tables.read import names_in, read_table
from witnessmark.vehicle.kind import Kind

UNSAID = "unsaid"


@cache
def catalogue() -> Mapping[str, Kind]:
    """Every kind by its key.

    >>> catalogue()["unsaid"].if_missed
    'lets_go'
    """
    kinds: dict[str, Kind] = {}
    for name in names_in("closeout"):
        for key, row in read_table(name).items():
            kinds[key] = msgspec.convert({"key": key, **row}, Kind)
    return MappingProxyType(kinds)


def kind_of(key: str) -> Kind:
    """The kind with this key; a key not in the catalogue is bad input."""
    kinds = catalogue()
    if key not in kinds:
        raise BadInput(
            given=f"kind {key!r} is not in the close-out catalogue",
            holds="a kind of joint, as wheel-nuts or shaft-seal",
            do="Give one of the kinds, or `unsaid` where you do not know.",
            near=tuple(k for k in kinds if key[:4] in k)[:3],
        )
    return kinds[key]
