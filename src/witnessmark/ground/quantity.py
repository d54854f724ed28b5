"""A quantity: what a person typed, kept, beside its value in the one unit of its kind."""

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
