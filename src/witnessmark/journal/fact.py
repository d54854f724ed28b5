"""What every fact carries: figures with units, as typed, and the words that found no other place."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.ground.quantity import Quantity

Names = tuple[str, ...]


class Fact(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="did"):
    figures: tuple[Quantity, ...] = ()
    remark: str = ""


class AtFact(Fact, frozen=True, kw_only=True, omit_defaults=True):
    """A fact about named parts or joints."""

    at: Names = ()
