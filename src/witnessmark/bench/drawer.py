"""A person's own drawer: what the bench may take from it before it looks in its tables."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from msgspec import Struct

from witnessmark.bench.own_lists import Driver, Ring
from witnessmark.ground.errors import BadInput
from witnessmark.ground.quantities import read_quantity
from witnessmark.ground.units import Mm

INPUTS: Mapping[tuple[str, str], tuple[str, str]] = MappingProxyType(
    {
        ("seals", "driver"): ("have", "drivers"),
        ("orings", "match"): ("sizes", "rings"),
        ("shims", "stack"): ("shims", "shims"),
    }
)
"""Questions that search a drawer: subject and question to the input it is added to, and its shelf here."""

PLAINLY_MM = 10.0
"""Sizes typed without a unit are millimetres where the largest is at least this; below it may be inches."""
MOST_SECTION = 20.0

_DRIVES = re.compile(r"\b(sockets?|tubes?|pipes?|drivers?|drifts?|sleeves?)\b")
_RINGS = re.compile(r"\bo[- ]?rings?\b|^(?:(?:rubber|sealing|spare) )?rings?$")
_SHIMS = re.compile(r"\bshims?\b")
_WELDING = re.compile(r"\b(welding|welder|mig|mag) wire\b|\bwire for the welder\b")
_TAIL = re.compile(r"(.*[0-9½¼¾⅛])\s*([^0-9]*)", re.S)


class Drawer(Struct, frozen=True, kw_only=True):
    """What is owned and has a size.

    shims  thickness in mm, and how many of it
    wires  diameters of welding wire, mm
    """

    drivers: tuple[Driver, ...] = ()
    rings: tuple[Ring, ...] = ()
    shims: tuple[tuple[float, int], ...] = ()
    wires: tuple[Mm, ...] = ()

    def adds_to(self, subject: str, question: str) -> Mapping[str, tuple[Any, ...]]:
        """Input name to the own pieces a question may use; nothing for questions that use none."""
        name, shelf = INPUTS.get((subject, question), ("", ""))
        pieces = getattr(self, shelf) if shelf else ()
        return {name: pieces} if pieces else {}


EMPTY = Drawer()


def drawer_of(owned: Iterable[tuple[str, float, str]]) -> Drawer:
    """Sort what is owned, each an item, how many, and its size as typed, into a drawer.

    What has no size, or not the sizes its sort needs, stays out: nothing is guessed.

    >>> drawer_of([("tube", 1, "32 x 36 mm"), ("shims", 4, "0.05 mm"), ("anvil", 1, "")]).shims
    ((0.05, 4),)
    """
    drivers: list[Driver] = []
    rings: list[Ring] = []
    shims: dict[float, int] = {}
    wires: dict[Mm, None] = {}
    for item, number, size in owned:
        words, lengths = item.lower(), lengths_in(size)
        if _SHIMS.search(words) and len(lengths) == 1:
            shims[lengths[0]] = shims.get(lengths[0], 0) + int(number)
        elif _WELDING.search(words) and len(lengths) == 1:
            wires[lengths[0]] = None
        elif _RINGS.search(words) and len(lengths) == 2 and min(lengths) <= MOST_SECTION:
            rings.append(_ring(item, lengths))
        elif _DRIVES.search(words) and len(lengths) in (2, 3) and lengths[0] != lengths[1]:
            drivers.append(_driver(item, lengths))
    return Drawer(drivers=tuple(drivers), rings=tuple(rings), shims=tuple(shims.items()), wires=tuple(wires))


def _driver(item: str, lengths: tuple[Mm, ...]) -> Driver:
    """Two diameters, whichever was typed first; a third number is how long it is."""
    inside, outside = sorted(lengths[:2])
    long = lengths[2] if len(lengths) > 2 else None
    return Driver(name=f"{item} {inside:g} x {outside:g}", inside=inside, outside=outside, length=long)


def _ring(item: str, lengths: tuple[Mm, ...]) -> Ring:
    """The smaller number is the section: so it is for every ring of a size that people keep."""
    section, inside = sorted(lengths)
    return Ring(
        name=f"{item} {inside:g} x {section:g}", inside=inside, section=section,
        inside_tolerance=Mm(-1.0), section_tolerance=Mm(-1.0), own=True,
    )  # fmt: skip


def lengths_in(size: str) -> tuple[Mm, ...]:
    """The lengths of a size as typed, mm; none where a unit is missing and millimetres are not plain.

    >>> lengths_in("38 x 60 x 10"), lengths_in("1 1/4 x 2 in"), lengths_in("1.25 x 1.5"), lengths_in("M8")
    ((38.0, 60.0, 10.0), (31.75, 50.8), (), ())
    """
    found = _TAIL.fullmatch(size.strip())
    if found is None:
        return ()
    unit = found[2].strip()
    pieces = [piece.strip() for piece in re.split(r"[x×]", found[1])]
    try:
        lengths = tuple(Mm(_length(piece, unit or "mm")) for piece in pieces)
    except BadInput:
        return ()
    plain = bool(unit) or any(c.isalpha() or c in "\"″'" for c in found[1].replace("x", "").replace("×", ""))
    return lengths if plain or max(lengths) >= PLAINLY_MM else ()


def _length(piece: str, unit: str) -> float:
    own = piece and not (piece[-1].isdigit() or piece[-1] in "½¼¾⅛")
    return read_quantity(piece if own else f"{piece} {unit}", "length").value
