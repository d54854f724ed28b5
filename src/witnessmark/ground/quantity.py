"""A quantity: what a person typed, kept, beside its value in the one unit of its kind."""

from __future__ import annotations

from msgspec import Struct


class Quantity(Struct, frozen=True, omit_defaults=True):
    """A number with its unit.

    typed  the words as typed, "13 lbf ft"
    value  the number in the inside unit of its kind, 17.63
    unit   that inside unit, "N·m"; "" for a plain count
    """

    typed: str
    value: float
    unit: str = ""


class FoundQuantity(Struct, frozen=True, omit_defaults=True):
    """A quantity found in a line, and the span of its words; `size` is all of one like "38 x 60 x 10"."""

    start: int
    end: int
    quantity: Quantity
    kind: str = ""
    size: str = ""
