"""Nut factors averaged over the coarse threads, as a handbook makes its table of them."""

from __future__ import annotations

from witnessmark.bench.bolts import nut_factor
from witnessmark.ground.units import Degree, Mm, Ratio

SIZES = (
    (4, 0.7, 7, 4.5),
    (5, 0.8, 8, 5.5),
    (6, 1, 10, 6.6),
    (8, 1.25, 13, 9),
    (10, 1.5, 16, 11),
    (12, 1.75, 18, 13.5),
    (16, 2, 24, 17.5),
    (20, 2.5, 30, 22),
    (24, 3, 36, 26),
    (30, 3.5, 46, 33),
    (36, 4, 55, 39),
)
"""Diameter and coarse pitch as the handbook names them; width across flats of ISO 4014 and medium hole of
ISO 273, mm, which stand in for the national ones it was made with."""
FACE = 0.95
"""The face under a hexagon over its width across flats: from memory of the standard behind the table."""


def equivalent(outer: float, inner: float) -> float:
    """Diameter at which friction on a ring of even pressure acts, as the handbook's equation has it."""
    return 2 / 3 * (outer**3 - inner**3) / (outer**2 - inner**2)


def average(in_thread: float, under_head: float) -> float:
    """Our nut factor, averaged over the eleven sizes of the table."""
    found = [
        nut_factor(
            Mm(diameter),
            Mm(pitch),
            Mm(diameter - 0.649519 * pitch),
            Degree(60),
            Ratio(in_thread),
            Ratio(under_head),
            Mm(equivalent(FACE * flats, hole)),
        )
        for diameter, pitch, flats, hole in SIZES
    ]
    return sum(found) / len(found)
