"""Figures whose unit was not typed but is told by the word beside them; always a doubt."""

from __future__ import annotations

import re

from witnessmark.ground.measures import INCH
from witnessmark.ground.quantity import Quantity
from witnessmark.words.lexicon import hint
from witnessmark.words.work import Work


def bare_lengths(work: Work) -> tuple[Quantity, ...]:
    """Bare numbers of a measurement that tells no other figure: millimetres are taken, and doubted."""
    found = []
    for at in work.numbers():
        atom = work.atoms[at]
        before = work.atoms[at - 1].low if at else ""
        if atom.sort == "number" and atom.value is not None and before not in hint("numbered"):
            work.place(at)
            work.doubt("the unit was not typed: mm is taken")
            found.append(Quantity(work.words(at, at + 1), atom.value, "mm"))
    return tuple(found)


_BY = ("by", "x")


def dimensioned(work: Work) -> tuple[Quantity, ...]:
    """Bare numbers beside "gap", "float", "wire": millimetres are taken, and doubted."""
    found = []
    for at in work.numbers():
        atom = work.atoms[at]
        if atom.sort != "number" or atom.value is None:
            continue
        shared = _unit_behind(work, at) or _unit_before(work, at)
        if shared is not None:
            work.place(at)
            found.append(Quantity(work.words(at, at + 1), atom.value * shared, "mm"))
            continue
        if not _beside_dimension(work, at):
            continue
        if atom.value == int(atom.value) and "." not in atom.low and not _is_dimension(work, at - 1):
            continue
        work.place(at)
        inches = _is_part_of_an_inch(work.words(at, at + 1))
        work.doubt(f"the unit was not typed: {'inches are' if inches else 'mm is'} taken")
        found.append(Quantity(work.words(at, at + 1), atom.value * (INCH if inches else 1.0), "mm"))
    return tuple(found)


def _unit_behind(work: Work, at: int) -> float | None:
    """What one of its unit is in mm, where a number shares the unit of the next: "200 by 65 mm"."""
    if at + 2 >= len(work.atoms) or work.atoms[at + 1].low not in _BY:
        return None
    return _length_unit(work, at + 2)


def _unit_before(work: Work, at: int) -> float | None:
    """The same where the unit stands with the first: "8 inches by 5"."""
    return _length_unit(work, at - 2) if at > 1 and work.atoms[at - 1].low in _BY else None


def _length_unit(work: Work, at: int) -> float | None:
    found = work.atoms[at].quantity
    if found is None or found.kind != "length" or found.size:
        return None
    number = re.match(r"[0-9.]+", found.quantity.typed)
    return found.quantity.value / float(number[0]) if number and float(number[0]) else None


def _is_part_of_an_inch(typed: str) -> bool:
    """ "3/16" and "1 3/4" are marks of a rule in inches."""
    return "/" in typed and typed.rpartition("/")[2] in ("2", "4", "8", "16", "32", "64")


def _beside_dimension(work: Work, at: int) -> bool:
    after = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
    return after in hint("gauged") or any(_is_dimension(work, at + step) for step in (-1, 1, -2))


def _is_dimension(work: Work, at: int) -> bool:
    return any(
        s.first <= at < s.last for group in work.line.spans.values() for s in group if s.cls == "dimension"
    )
