"""Where on the drawing a told place lies; what lies nowhere on it is listed beside it."""

from __future__ import annotations

import re
from collections.abc import Collection

from witnessmark.tables.read import read_table
from witnessmark.vehicle.sides import CORNERS


def drawn_place(told: str, known: Collection[str]) -> str:
    """The place of a drawing that a told place belongs to, "" where none does.

    known  the places that this drawing has

    >>> drawn_place("left rear corner", ["left rear", "rear"]), drawn_place("top shelf", ["rear"])
    ('left rear', '')
    """
    if told in known:
        return told
    words = frozenset(re.findall(r"[a-z]+", told.lower()))
    rows = [row["place"] for row in read_table("bodies/places")["row"] if _says(words, row["words"])]
    ends = [place for place in rows if place in ("front", "rear")]
    corners = [corner for corner in CORNERS if words >= set(corner.split())]
    halves = [side for side in ("left", "right") if side in words]
    ordered = [*(p for p in rows if p not in ends), *corners, *halves, *ends]
    return next((place for place in ordered if place in known), "")


def _says(words: frozenset[str], phrases: list[str]) -> bool:
    return any(words >= set(phrase.split()) for phrase in phrases)
