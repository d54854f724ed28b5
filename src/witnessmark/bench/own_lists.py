"""Lists of one's own kit, typed or as a file: drivers and sockets, rings."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from msgspec import Struct

from witnessmark.bench.kinds import csv_rows, sizes
from witnessmark.bench.slip import Asked
from witnessmark.ground.errors import BadInput
from witnessmark.ground.numerals import read_number
from witnessmark.ground.quantities import read_quantity
from witnessmark.ground.units import Mm

DRIVERS = "32x36 29x41 mm (inside x outside, length after a further x), or a file with inside mm, outside mm"
RINGS = "50.39x3.53 mm (inside x section), or a file with inside mm, section mm"


class Driver(Struct, frozen=True, kw_only=True):
    """Something hollow to drive with.

    length  mm, None where it was not measured
    hollow  mm, how deep its hollow goes; None where it is open right through
    own     from the person's own drawer, not from a table
    """

    name: str
    inside: Mm
    outside: Mm
    length: Mm | None = None
    hollow: Mm | None = None
    own: bool = True
    source: str = ""


class Ring(Struct, frozen=True, kw_only=True):
    """An O-ring: inside and section with their tolerances, mm."""

    name: str
    inside: Mm
    section: Mm
    inside_tolerance: Mm
    section_tolerance: Mm
    own: bool = False


def drivers(name: str, typed: str) -> Asked:
    """Own drivers, from a typed list or from the text of a file.

    >>> drivers("have", "32x36 29x41x80 mm").value[1].length
    80.0
    """
    if "\n" in typed:
        rows = rows_in_mm(name, typed, ("inside", "outside"), ("length", "hollow"), holds=DRIVERS)
        return Asked(typed, tuple(_driver(name, row, said) for row, said in rows), "mm")
    found = _typed_sizes(name, typed)
    made = (_driver(name, dict(zip(("inside", "outside", "length"), one, strict=False)), "") for one in found)
    return Asked(typed, tuple(made), "mm")


def _typed_sizes(name: str, typed: str) -> list[tuple[float, ...]]:
    """Two or three numbers a size, in the order typed."""
    parts = 3 if re.search(r"x[^ ]*x", re.sub(r"\s*[x×]\s*", "x", typed)) else 2
    if parts == 2:
        return list(sizes(2, holds=DRIVERS)(name, typed).value)
    unit = re.sub(r".*[0-9]", "", typed.strip())
    bodies = re.sub(r"\s*[x×]\s*", "x", typed.strip().removesuffix(unit)).split()
    return [sizes(one.count("x") + 1, holds=DRIVERS)(name, f"{one} {unit}").value[0] for one in bodies]


def _driver(name: str, row: Mapping[str, float | None], said: str) -> Driver:
    inside, outside = row["inside"], row["outside"]
    if inside is None or outside is None or not 0 <= inside < outside <= 600:
        raise BadInput(
            given=f"{name} has a driver of inside {inside} mm and outside {outside} mm",
            holds="an inside smaller than its outside, 600 mm at most",
            do="Measure it again; inside comes first.",
        )
    length, hollow = row.get("length"), row.get("hollow")
    return Driver(
        name=said or f"{inside:g}x{outside:g}",
        inside=Mm(inside),
        outside=Mm(outside),
        length=None if length is None else Mm(length),
        hollow=None if hollow is None else Mm(hollow),
    )


def rings(name: str, typed: str) -> Asked:
    """Own rings, from a typed list or from the text of a file; tolerances may be missing.

    >>> rings("sizes", "50.39x3.53 mm").value[0].section
    3.53
    """
    if "\n" in typed:
        may = ("inside_tolerance", "section_tolerance")
        rows = list(rows_in_mm(name, typed, ("inside", "section"), may, holds=RINGS))
    else:
        found = sizes(2, holds=RINGS)(name, typed).value
        rows = [({"inside": one[0], "section": one[1]}, "") for one in found]
    return Asked(typed, tuple(_ring(name, row, said) for row, said in rows), "mm")


def _ring(name: str, row: Mapping[str, float | None], said: str) -> Ring:
    inside, section = row["inside"], row["section"]
    if inside is None or section is None or not (0.5 <= inside <= 1000 and 0.5 <= section <= 20):
        raise BadInput(
            given=f"{name} has a ring of inside {inside} mm and section {section} mm",
            holds="an inside of 0.5 to 1000 mm and a section of 0.5 to 20 mm",
            do="Measure it again; inside comes first.",
        )
    inside_tolerance, section_tolerance = row.get("inside_tolerance"), row.get("section_tolerance")
    return Ring(
        name=said or f"{inside:g} x {section:g}",
        inside=Mm(inside),
        section=Mm(section),
        inside_tolerance=Mm(-1.0 if inside_tolerance is None else inside_tolerance),
        section_tolerance=Mm(-1.0 if section_tolerance is None else section_tolerance),
        own=True,
    )


def rows_in_mm(
    name: str, text: str, needed: tuple[str, ...], may: tuple[str, ...], *, holds: str
) -> Iterator[tuple[dict[str, float | None], str]]:
    """Rows of a file as lengths in mm and the words of a `name` column.

    The unit stands in the heading ("inside mm") or in each cell ("32 mm", "1 1/4 in").
    """
    heads, body = _heads(text)
    for row in csv_rows(name, "\n".join([",".join(heads), *body]), needed=needed, holds=holds):
        found = {key: _cell(name, row.get(key, ""), heads[key]) for key in (*needed, *may) if key in heads}
        yield found, row.get("name", "")


def _heads(text: str) -> tuple[dict[str, str], list[str]]:
    """Column names with the unit each heading carries, and the lines below."""
    lines = [line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")]
    heads: dict[str, str] = {}
    for head in lines[0].split(",") if lines else []:
        found = re.fullmatch(r"\s*\"?([a-z_ ]+?)[\s_]*\(?(mm|cm|in|inch|inches|thou)?\)?\"?\s*", head.lower())
        key, unit = (found[1].strip().replace(" ", "_"), found[2] or "") if found else (head.strip(), "")
        heads[key] = unit
    return heads, lines[1:]


def _cell(name: str, cell: str, unit: str) -> float | None:
    if not cell:
        return None
    try:
        return read_quantity(f"{read_number(cell)} {unit}" if unit and _bare(cell) else cell, "length").value
    except BadInput:
        raise BadInput(
            given=f"the file for {name} has {cell!r}",
            holds="a length with its unit, in the cell or in the heading: inside mm",
            do="Put the unit in the heading.",
        ) from None


def _bare(cell: str) -> bool:
    try:
        read_number(cell)
    except BadInput:
        return False
    return True
