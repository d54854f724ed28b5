"""Readers of what is typed: one for each kind of input. Units are required and never guessed."""

from __future__ import annotations

import csv
import difflib
import re
from collections.abc import Iterator

from witnessmark.bench.question import Reader
from witnessmark.bench.slip import Asked
from witnessmark.ground.errors import BadInput
from witnessmark.ground.measures import MEASURES
from witnessmark.ground.numerals import read_number
from witnessmark.ground.quantities import read_quantity

FILE_MARK = "@"


def quantity(kind: str) -> Reader:
    """A number with its unit, of one kind of `ground.measures`.

    >>> quantity("length")("bore", "5/16 in").value
    7.9375
    """

    def read(name: str, typed: str) -> Asked:
        try:
            found = read_quantity(typed, kind)
        except BadInput as trouble:
            raise _about(name, typed, trouble) from None
        return Asked(typed, found.value, found.unit)

    return read


length = quantity("length")
torque = quantity("torque")
force = quantity("force")
stress = quantity("stress")
temperature = quantity("temperature")
pitch = quantity("pitch")
angle = quantity("angle")


def number(name: str, typed: str) -> Asked:
    """A plain number without a unit, as a nut factor is.

    >>> number("nut_factor", "0,18").value
    0.18
    """
    try:
        return Asked(typed, _plain_number(typed))
    except BadInput as trouble:
        raise _about(name, typed, trouble) from None


def fraction(name: str, typed: str) -> Asked:
    """A part of one: 0.75 or 75 %.

    >>> fraction("fraction_of_proof", "75 %").value
    0.75
    """
    if typed.strip().endswith("%"):
        return Asked(typed, number(name, typed.strip()[:-1]).value / 100)
    return number(name, typed)


def count(name: str, typed: str) -> Asked:
    """A whole number.

    >>> count("spots", "12").value
    12
    """
    value = number(name, typed).value
    if value != int(value):
        raise BadInput(given=f"{name} is {typed}", holds="a whole number, as 12", do="Count them again.")
    return Asked(typed, int(value))


def words(name: str, typed: str) -> Asked:
    """Any words, tidied."""
    tidy = " ".join(typed.split())
    if not tidy:
        raise BadInput(given=f"{name} is empty", holds="some words", do=f"Say what {name} is.")
    return Asked(typed, tidy)


def one_of(*allowed: str) -> Reader:
    """One word out of a few; an unknown one is told with the near ones.

    >>> one_of("open", "blocked")("breather", "Open").value
    'open'
    """

    def read(name: str, typed: str) -> Asked:
        tidy = " ".join(typed.lower().split())
        for word in allowed:
            if tidy == word.lower():
                return Asked(typed, word)
        near = difflib.get_close_matches(tidy, allowed, n=3)
        raise BadInput(
            given=f"{name} is {typed!r}",
            holds=f"one of {', '.join(allowed)}",
            do=f"Did you mean {' or '.join(near)}?" if near else "Give one of these.",
            near=tuple(near),
        )

    return read


def sizes(parts: int, kind: str = "length", *, holds: str) -> Reader:
    """Sizes like "32x36 29x41 mm": numbers joined by x, blanks between, the unit once at the end.

    parts is how many numbers make one size. The value is a tuple of tuples in the inside unit.

    >>> sizes(2, holds="32x36 29x41 mm")("have", "32x36 29x41 mm").value
    ((32.0, 36.0), (29.0, 41.0))
    """

    def read(name: str, typed: str) -> Asked:
        body, factor, unit = parted_unit(name, typed, kind, holds)
        found = [re.split(r"\s*[x×]\s*", one) for one in re.sub(r"\s*[x×]\s*", "x", body).split()]
        if not found or any(len(one) != parts for one in found):
            raise BadInput(given=f"{name} is {typed!r}", holds=holds, do="Part the sizes with blanks.")
        return Asked(
            typed, tuple(tuple(_listed(name, n, holds) * factor for n in one) for one in found), unit
        )

    return read


def points(per_group: int | None, dims: int, kind: str = "length", *, holds: str) -> Reader:
    """Points like "0,0 0,50; 100,0 100,50 mm": commas inside a point, blanks between, `;` between groups.

    per_group  how many points a group must hold; None for any

    >>> points(2, 2, holds="0,0 0,50; 100,0 100,50 mm")("lines", "0,0 0,50 mm").value
    (((0.0, 0.0), (0.0, 50.0)),)
    """

    def read(name: str, typed: str) -> Asked:
        body, factor, unit = parted_unit(name, typed, kind, holds)
        groups = [re.sub(r"\s*,\s*", ",", g).split() for g in body.split(";") if g.strip()]
        found = tuple(
            tuple(tuple(_listed(name, n, holds) * factor for n in one.split(",")) for one in group)
            for group in groups
        )
        if not found or any(len(p) != dims for group in found for p in group):
            raise BadInput(given=f"{name} is {typed!r}", holds=holds, do=f"Give {dims} numbers a point.")
        if per_group is not None and any(len(group) != per_group for group in found):
            raise BadInput(given=f"{name} is {typed!r}", holds=holds, do=f"Give {per_group} points a group.")
        return Asked(typed, found, unit)

    return read


def vector(dims: int, kind: str, *, holds: str) -> Reader:
    """One point, like "0,-7.5,0 kN".

    >>> vector(3, "force", holds="0,-7.5,0 kN")("load", "0,-7.5,0 kN").value
    (0.0, -7500.0, 0.0)
    """
    many = points(1, dims, kind, holds=holds)

    def read(name: str, typed: str) -> Asked:
        found = many(name, typed)
        if len(found.value) != 1:
            raise BadInput(given=f"{name} is {typed!r}", holds=holds, do="Give one point.")
        return Asked(typed, found.value[0][0], found.unit)

    return read


def counted(*, holds: str) -> Reader:
    """Pieces with how many of each: "0.05x4 0.30x2 mm", "4 of 0.05, 2 of 0.30 mm"; value (size, count) pairs.

    >>> counted(holds="0.05x4 mm")("shims", "0.05x4 2 of 0.10 mm").value
    ((0.05, 4), (0.1, 2))
    """

    def read(name: str, typed: str) -> Asked:
        body, factor, unit = parted_unit(name, typed, "length", holds)
        joined = re.sub(r"(\S+)\s+(?:of|off)\s+(\S+)", r"\2x\1", body.replace(", ", " ").replace(";", " "))
        found = [re.split("[x×]", one) for one in re.sub(r"\s*[x×]\s*", "x", joined).split()]
        pieces = []
        for one in found:
            if len(one) > 2:
                raise BadInput(given=f"{name} has {'x'.join(one)!r}", holds=holds, do="Give size and count.")
            many = _listed(name, one[1], holds) if len(one) == 2 else 1.0
            if many != int(many) or many < 0:
                raise BadInput(given=f"{name} has {many:g} pieces", holds=holds, do="Give a whole count.")
            pieces.append((_listed(name, one[0], holds) * factor, int(many)))
        return Asked(typed, tuple(pieces), unit)

    return read


def parted_unit(name: str, typed: str, kind: str, holds: str) -> tuple[str, float, str]:
    """A list's body, the factor of the unit at its end, and the inside unit.

    >>> parted_unit("have", "1 2 in", "length", "1 2 mm")
    ('1 2', 25.4, 'mm')
    """
    found = re.fullmatch(r"(.*[0-9½¼¾])\s*([^0-9\s,;x×.½¼¾][^0-9]*)", typed.strip(), re.S)
    if found is None:
        raise BadInput(
            given=f"{name} is {typed!r}, without a unit", holds=holds, do="Add the unit at the end."
        )
    try:
        one = read_quantity(f"1 {found[2]}", kind)
    except BadInput as trouble:
        raise _about(name, typed, trouble) from None
    return found[1], one.value, MEASURES[kind].unit


def csv_rows(name: str, text: str, *, needed: tuple[str, ...], holds: str) -> Iterator[dict[str, str]]:
    """The rows of an already-read CSV text, keys in lower case; `#` lines are passed over."""
    lines = [line for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")]
    reader = csv.DictReader(lines, skipinitialspace=True)
    heads = [(h or "").strip().lower() for h in reader.fieldnames or []]
    missing = [n for n in needed if n not in heads]
    if missing:
        raise BadInput(
            given=f"the file for {name} has no column {' or '.join(missing)}",
            holds=holds,
            do=f"Give it a first line with {', '.join(needed)}.",
        )
    for row in reader:
        yield {
            (k or "").strip().lower(): (v or "").strip() for k, v in row.items() if isinstance(v, str | None)
        }


def _plain_number(typed: str) -> float:
    text = typed.strip()
    if re.fullmatch(r"[-+]?[0-9]*\.?[0-9]+e[-+]?[0-9]{1,2}", text, re.I):
        return float(text)
    return read_number(text)


def _listed(name: str, typed: str, holds: str) -> float:
    try:
        return _plain_number(typed)
    except BadInput:
        raise BadInput(
            given=f"{name} has {typed!r}, not a number", holds=holds, do="Type it again."
        ) from None


def _about(name: str, typed: str, trouble: BadInput) -> BadInput:
    """The same trouble, said of the input by its name."""
    given = trouble.given if typed and typed in trouble.given else f"{typed!r}: {trouble.given}"
    return BadInput(given=f"{name}: {given}", holds=trouble.holds, do=trouble.do, near=trouble.near)
