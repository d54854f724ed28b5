"""A typed line taken apart: words, figures, days and sides in order, and what each may be."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from datetime import date
from types import MappingProxyType

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.ground.numerals import read_number
from witnessmark.ground.quantities import find_quantities
from witnessmark.ground.spoken import COUNT, read_said
from witnessmark.ground.spoken import WORDS as NUMBER_WORDS
from witnessmark.ground.threads_typed import find_threads
from witnessmark.words.atoms import Atom, Canon, Span
from witnessmark.words.corners import FoundSide, find_sides
from witnessmark.words.days import find_days
from witnessmark.words.lexicon import canonical, hint, lexicon
from witnessmark.words.spans import spans_in
from witnessmark.words.spelling import mend
from witnessmark.words.times import find_times
from witnessmark.words.tokens import Token, is_stop, tokens_of
from witnessmark.words.vocabulary import Vocabulary

_TIMES = re.compile(r"x([0-9]{1,3})")
_COUNT = re.compile(rf"\b{COUNT}\b", re.I)
_COUNTS = {**NUMBER_WORDS, "once": 1.0, "twice": 2.0, "thrice": 3.0, "single": 1.0}


class Line(Struct, frozen=True):
    """Everything about a line that does not depend on what it is about.

    segment  for each atom, how many commas or stops stand before it
    under    for each atom, whether it stands in a clause of why, when or what for
    """

    text: str
    atoms: tuple[Atom, ...]
    spans: Mapping[int, tuple[Span, ...]]
    canon: tuple[Canon, ...]
    segment: tuple[int, ...]
    under: tuple[bool, ...]

    def words(self, first: int, last: int) -> str:
        """The text of a run of atoms, as typed."""
        return self.text[self.atoms[first].start : self.atoms[last - 1].end] if first < last else ""

    def spans_of(self, cls: str) -> list[Span]:
        """Every span of a class, in order."""
        return [s for group in self.spans.values() for s in group if s.cls == cls]


def take_apart(text: str, vocabulary: Vocabulary, today: date) -> Line:
    """Find in a text all that can be found without knowing what it is about."""
    atoms = _atoms(text, vocabulary, today)
    canon = _canon(atoms)
    spans: dict[int, list[Span]] = {}
    for span in spans_in(atoms, canon):
        if span.cls == "condition" and _is_side_of(atoms, canon, span.first, vocabulary):
            continue
        spans.setdefault(span.first, []).append(span)
    items = {i for s in spans.values() for one in s if one.cls == "item" for i in range(one.first, one.last)}
    segment, under = _clauses(atoms, items)
    frozen = MappingProxyType({at: tuple(group) for at, group in sorted(spans.items())})
    return Line(text, atoms, frozen, canon, segment, under)


def _atoms(text: str, vocabulary: Vocabulary, today: date) -> tuple[Atom, ...]:
    """Figures, days and times first; then sides; what is left are words, numbers and marks."""
    taken = _figures(text, today)
    free: list[tuple[Token, bool, bool]] = []
    for token in tokens_of(text):
        if not any(a.start < token.end and token.start < a.end for a in taken):
            mended = mend(token, vocabulary)
            free.append((mended.token, mended.mended, mended.shaky))
    tokens = [t for t, _, _ in free]
    sides = {s.first: s for s in find_sides(tokens, vocabulary.vehicle.country)}
    at = 0
    while at < len(tokens):
        side = sides.get(at)
        last = side.last if side else at + 1
        if side and (_is_split(tokens[at:last], taken) or _is_humidity(tokens[at], taken)):
            side, last = None, at + 1
        taken.append(_atom(tokens[at:last], free[at:last], side))
        at = last
    return tuple(sorted(taken, key=lambda a: a.start))


def _is_split(tokens: Sequence[Token], taken: Sequence[Atom]) -> bool:
    """Whether a figure stands between the words of a side."""
    return any(tokens[0].end <= a.start < tokens[-1].end for a in taken)


def _is_humidity(token: Token, taken: Sequence[Atom]) -> bool:
    """ "RH 70 %" is damp in the air, not the right hand."""
    near = [a for a in taken if a.quantity and a.quantity.kind == "ratio"]
    return token.low == "rh" and any(
        0 <= a.start - token.end <= 4 or 0 <= token.start - a.end <= 4 for a in near
    )


def _figures(text: str, today: date) -> list[Atom]:
    times = find_times(text)
    found = [Atom(t.start, t.end, text[t.start : t.end].lower(), "time", time=t) for t in times]
    for day in find_days(text, today):
        if _is_free(found, day.start, day.end):
            found.append(Atom(day.start, day.end, text[day.start : day.end].lower(), "day", day=day))
    for thread in find_threads(text):
        if not thread.thread.endswith("tpi") and _is_free(found, thread.start, thread.end):
            found.append(Atom(thread.start, thread.end, thread.thread.lower(), "thread", thread=thread))
    for quantity in find_quantities(text):
        if _is_free(found, quantity.start, quantity.end):
            low = text[quantity.start : quantity.end].lower()
            found.append(Atom(quantity.start, quantity.end, low, "quantity", quantity=quantity))
    for match in _COUNT.finditer(text):
        if _is_free(found, match.start(), match.end()):
            count = read_said(match[0])
            found.append(Atom(match.start(), match.end(), match[0].lower(), "number", value=count))
    return found


def _is_free(found: Sequence[Atom], start: int, end: int) -> bool:
    return all(end <= a.start or a.end <= start for a in found)


def _atom(tokens: Sequence[Token], free: Sequence[tuple[Token, bool, bool]], side: FoundSide | None) -> Atom:
    first, last = tokens[0], tokens[-1]
    mended, shaky = any(m for _, m, _ in free), any(s for _, _, s in free)
    if side:
        low = " ".join(t.low for t in tokens)
        return Atom(first.start, last.end, low, "side", side=side, mended=mended, shaky=shaky or mended)
    return Atom(first.start, last.end, first.low, first.sort, value=_count(first), mended=mended, shaky=shaky)


def _count(token: Token) -> float | None:
    if token.sort == "number":
        try:
            return read_number(token.text)
        except BadInput:
            return None
    times = _TIMES.fullmatch(token.low)
    return float(times[1]) if times else _COUNTS.get(token.low)


def _canon(atoms: Sequence[Atom]) -> tuple[Canon, ...]:
    """Stems of the words, run by run: a mark or a figure breaks a run; one-word sides take part."""
    found: list[Canon] = []
    run: list[int] = []
    for at in (*range(len(atoms)), -1):
        if at >= 0 and (atoms[at].sort == "word" or (atoms[at].sort == "side" and " " not in atoms[at].low)):
            run.append(at)
            continue
        found += [
            Canon(_end_of(w, atoms[run[a]]), run[a], run[b - 1] + 1)
            for w, a, b in canonical([atoms[i].low for i in run])
        ]
        run = []
    return tuple(found)


def _end_of(stem: str, atom: Atom) -> str:
    """ "Back" where it tells an end is the rear one."""
    return "rear" if stem == "back" and atom.sort == "side" else stem


def _is_side_of(atoms: Sequence[Atom], canon: Sequence[Canon], at: int, vocabulary: Vocabulary) -> bool:
    """Whether "left" is the side of the name before it: a half-shaft left out is not missing."""
    told = atoms[at].side
    before = next((c.stem for c in reversed(canon) if c.last == at), "")
    if told is None or not before:
        return False
    named = [vocabulary.names[p] for p in vocabulary.by_stem.get(before, ())]
    return any(n.stems[-1] == before and any(told.side in s.split() for s in n.variants) for n in named)


def _is_purpose(atoms: Sequence[Atom], at: int) -> bool:
    """ "To look at points" tells what for; "want to look" does not."""
    if atoms[at].low != "to" or at + 1 >= len(atoms) or atoms[at + 1].low not in hint("purposes"):
        return False
    return at > 0 and atoms[at - 1].low not in hint("willing")


def _clauses(atoms: Sequence[Atom], items: Collection[int]) -> tuple[tuple[int, ...], tuple[bool, ...]]:
    """Count the stops before each atom, and mark what stands behind "so", "before", "because"."""
    known = lexicon().clause
    segment: list[int] = []
    under: list[bool] = []
    count, lower = 0, False
    for atom in atoms:
        at = len(segment)
        if at in items:
            pass
        elif atom.sort == "mark" and (is_stop(atom.low) or atom.low in ",-–—()"):
            count += 1
            lower = False
        elif atom.low in known or _is_purpose(atoms, at):
            lower = True
        segment.append(count)
        under.append(lower)
    return tuple(segment), tuple(under)
