"""Figures whose unit was not typed but is told by the word beside them; always a doubt."""

from __future__ import annotations

from witnessmark.ground.measures import INCH
from witnessmark.ground.quantity import Quantity
from witnessmark.words.lexicon import hint
from witnessmark.words.work import Work


def dimensioned(work: Work) -> tuple[Quantity, ...]:
    """Bare numbers beside "gap", "float", "wire": millimetres are taken, and doubted."""
    found = []
    for at in work.numbers():
        atom = work.atoms[at]
        if atom.sort != "number" or atom.value is None or not _beside_dimension(work, at):
            continue
        if atom.value == int(atom.value) and "." not in atom.low and not _is_dimension(work, at - 1):
            continue
        work.place(at)
        inches = _is_part_of_an_inch(work.words(at, at + 1))
        work.doubt(f"the unit was not typed: {'inches are' if inches else 'mm is'} taken")
        found.append(Quantity(work.words(at, at + 1), atom.value * (INCH if inches else 1.0), "mm"))
    return tuple(found)


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
