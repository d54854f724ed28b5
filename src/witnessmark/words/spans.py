"""Phrases of the data found in a line: what is renewed, fluids and their grades, findings, tools and more."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise

from witnessmark.words.atoms import Atom, Canon, Span
from witnessmark.words.lexicon import Words, lexicon
from witnessmark.words.trade import trade

_LONGEST_ITEM = 8


def spans_in(atoms: Sequence[Atom], canon: Sequence[Canon]) -> list[Span]:
    """Every phrase of every class, in no order."""
    return [*_phrase_spans(atoms), *_fluid_grades(atoms), *_item_spans(atoms, canon)]


def _phrase_spans(atoms: Sequence[Atom]) -> list[Span]:
    found = []
    table = _by_first_word()
    for at, atom in enumerate(atoms):
        for words, cls, means in table.get(atom.low, ()):
            if tuple(a.low for a in atoms[at : at + len(words)]) == words:
                found.append(Span(cls, at, at + len(words), means))
    return found


@cache
def _by_first_word() -> Mapping[str, list[tuple[Words, str, str]]]:
    table: dict[str, list[tuple[Words, str, str]]] = {}
    for cls, rows in lexicon().phrases.items():
        for words, means in rows.items():
            table.setdefault(words[0], []).append((words, cls, means))
    return table


_GRADE = re.compile(r"[0-9]{1,3}w[0-9]{0,3}|[0-9]{2}w")


def _fluid_grades(atoms: Sequence[Atom]) -> list[Span]:
    """ "ep90", "SAE 30", "20w50", "dot 4": a grade tells a fluid."""
    found = []
    grades = lexicon().grades
    for at, atom in enumerate(atoms):
        after = atoms[at + 1] if at + 1 < len(atoms) else None
        letters = atom.low.rstrip("0123456789")
        if atom.sort == "word" and letters in grades and letters != atom.low:
            found.append(Span("fluid", at, at + 1, atom.low))
        elif atom.sort == "word" and atom.low in grades and after and after.sort == "number":
            found.append(Span("fluid", at, at + 2, f"{atom.low} {after.low}"))
        elif (
            atom.sort == "number"
            and after
            and after.start == atom.end
            and _GRADE.fullmatch(atom.low + after.low)
        ):
            found.append(Span("fluid", at, at + 2, atom.low + after.low))
    return found


def _item_spans(atoms: Sequence[Atom], canon: Sequence[Canon]) -> list[Span]:
    """What is renewed, by the longest words that tell it."""
    found: list[Span] = []
    at = 0
    while at < len(canon):
        size = _item_size(atoms, canon, at)
        if size > 1 and canon[at].stem == "new" and _item_size(atoms, canon, at + 1) >= size:
            at, size = at + 1, _item_size(atoms, canon, at + 1)
        if size:
            words = " ".join(c.stem for c in canon[at : at + size])
            found.append(Span("item", canon[at].first, canon[at + size - 1].last, words))
        at += max(size, 1)
    return found


def _item_size(atoms: Sequence[Atom], canon: Sequence[Canon], at: int) -> int:
    """How many stems from here on tell an item, 0 where none do."""
    for size in range(min(_LONGEST_ITEM, len(canon) - at), 0, -1):
        words = tuple(c.stem for c in canon[at : at + size])
        if words in trade().items and _adjoining(
            atoms, canon[at : at + size], parted=words in trade().parted
        ):
            return size
    return 0


def _adjoining(atoms: Sequence[Atom], run: Sequence[Canon], *, parted: bool) -> bool:
    """Whether the words stand side by side; a comma may stand between where the item is written with one."""
    return all(
        b.first <= a.last or (parted and b.first == a.last + 1 and atoms[a.last].low == ",")
        for a, b in pairwise(run)
    )
