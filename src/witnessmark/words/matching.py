"""Which kind of fact a line is: phrases matched against its atoms, weighed, the best of each kind kept."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.vehicle.conditions import condition
from witnessmark.words.atoms import Atom
from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.line import Line
from witnessmark.words.naming import FULL, Hit, is_head, is_noun
from witnessmark.words.verbs import Element, Phrase, Verb, starts, verbs

_WIDEST_GAP = 5
_UNDER = 1.6
_LATER = 0.35
_GAP = 0.03
_AT_HEAD = 0.3
_AFTER_VERB = 0.5
_NEAR = 3
_TOPIC = 0.3
_TELLING = 2.0
_UNNAMED = 0.8
_FIRST = 0.8
_FIRST_WORDS = 3


class Call(Struct, frozen=True):
    """One kind of fact a line may be.

    atoms    the atoms that tell it
    also     atoms of other phrases that tell the same
    doubted  the phrase is also used for what is only meant
    """

    tag: str
    score: float
    atoms: frozenset[int]
    also: frozenset[int] = frozenset()
    doubted: bool = False


class _Spot(Struct, frozen=True):
    atoms: tuple[int, ...]
    end: int
    gaps: int


class _Matcher:
    """Phrases against one line."""

    def __init__(self, line: Line, hits: Sequence[Hit]) -> None:
        self.line, self.hits = line, hits
        self.ends = {h.last - 1 for h in hits}
        named = {i for h in hits if h.how == FULL and len(h.atoms) > 1 for i in h.atoms}
        self.within = named | {
            i for s in line.spans_of("item") if s.last - s.first > 1 for i in range(s.first, s.last)
        }
        self.classes: dict[int, dict[str, list[int]]] = {}
        for at, spans in line.spans.items():
            for span in spans:
                if named.issuperset(range(at, span.last)):
                    continue
                self._note(at, span.cls, span.last)
                if span.cls == "condition":
                    self._note(at, "bad" if condition(span.means).bad else "good", span.last)
        for hit in hits:
            self._note(hit.first, "name", hit.last)
        for at, atom in enumerate(line.atoms):
            for cls in _classes(atom):
                self._note(at, cls, at + 1)

    def _note(self, at: int, cls: str, last: int) -> None:
        self.classes.setdefault(at, {}).setdefault(cls, []).append(last)

    def has(self, cls: str) -> bool:
        return any(cls in found for found in self.classes.values())

    def phrases_at(self, at: int) -> Iterator[Phrase]:
        by_word, by_class = starts()
        if at not in self.within:
            yield from by_word.get(self.line.atoms[at].low, ())
        for cls in self.classes.get(at, {}):
            yield from by_class.get(cls, ())

    def match(self, elements: Sequence[Element], at: int) -> _Spot | None:
        """The first way the elements fit from here on, the fewest words passed over."""
        if not elements:
            return _Spot((), at, 0)
        element, rest = elements[0], elements[1:]
        if element.gap:
            return self._over_gap(rest, at)
        if element.barred:
            return None if self._is_near(element, at) else self.match(rest, at)
        for taken, last in self._fits(element, at):
            spot = self.match(rest, last)
            if spot is not None:
                return _Spot(taken + spot.atoms, spot.end, spot.gaps)
        return self.match(rest, at) if element.maybe else None

    def _is_open(self, first: int, last: int) -> bool:
        """Whether a phrase may use these words: of a whole name only the last, as the noun it speaks of."""
        return all(
            at not in self.within or (at in self.ends and is_noun(self.line.atoms[at].low))
            for at in range(first, last)
        )

    def _is_near(self, element: Element, at: int) -> bool:
        """Whether the element stands here or behind a word or two."""
        for near in range(at, min(at + _NEAR, len(self.line.atoms))):
            if any(True for _ in self._fits(element, near)):
                return True
            if self.line.atoms[near].sort != "word":
                return False
        return False

    def _over_gap(self, rest: Sequence[Element], at: int) -> _Spot | None:
        if not rest:
            return _Spot((), at, 0)
        for skipped in range(_WIDEST_GAP + 1):
            if skipped and (
                at + skipped > len(self.line.atoms) or self.line.atoms[at + skipped - 1].sort == "mark"
            ):
                return None
            spot = self.match(rest, at + skipped)
            if spot is not None:
                return _Spot(spot.atoms, spot.end, spot.gaps + skipped)
        return None

    def _fits(self, element: Element, at: int) -> Iterator[tuple[tuple[int, ...], int]]:
        if at >= len(self.line.atoms):
            return
        for run in element.runs:
            last = at + len(run)
            atoms = self.line.atoms[at:last]
            if tuple(a.low for a in atoms) == run and self._is_open(at, last):
                yield tuple(range(at, last)), last
        for cls in element.classes:
            for last in self.classes.get(at, {}).get(cls, ()):
                yield (), last


def _classes(atom: Atom) -> tuple[str, ...]:
    """The classes a figure, a side or a number belongs to."""
    if atom.quantity:
        return (atom.quantity.kind, "size") if atom.quantity.size else (atom.quantity.kind,)
    if atom.time:
        return ("clock", "hours") if atom.time.until else ("clock",)
    if atom.sort in ("side", "thread"):
        return (atom.sort,)
    return ("n",) if atom.value is not None else ()


def calls(line: Line, hits: Sequence[Hit]) -> list[Call]:
    """Every kind of fact the line may be, best first."""
    matcher = _Matcher(line, hits)
    found = [
        (phrase, spot, at)
        for at in range(len(line.atoms))
        for phrase in matcher.phrases_at(at)
        if (spot := matcher.match(phrase.elements, at)) is not None
    ]
    head = _head(line)
    led = is_verb(line.atoms[head].low) if line.atoms else False
    led = led and any(phrase.weight >= _TELLING and head in spot.atoms for phrase, spot, _ in found)
    best: dict[str, Call] = {}
    said: dict[str, set[int]] = {}
    for phrase, spot, at in found:
        atoms = frozenset(spot.atoms)
        if phrase.weight >= _TELLING and not any(line.under[i] for i in atoms):
            said.setdefault(phrase.tag, set()).update(atoms)
        score = _score(line, phrase, spot, at) - (_AFTER_VERB if led and atoms and head not in atoms else 0.0)
        known = best.get(phrase.tag)
        if known is None or score > known.score:
            best[phrase.tag] = Call(phrase.tag, score, atoms, doubted=phrase.doubted)
    return _able(matcher, line, best, said)


def _able(
    matcher: _Matcher, line: Line, best: Mapping[str, Call], said: Mapping[str, set[int]]
) -> list[Call]:
    """Those whose figures are there, with what the line as a whole adds, best first."""
    table = verbs()
    words = [a.low for a in line.atoms if a.sort == "word"][:_FIRST_WORDS]
    named = bool(matcher.hits) or any(is_head(a.low) for a in line.atoms)
    able = [
        replace(
            call,
            score=call.score + _standing(table[tag], words, named),
            also=frozenset(said.get(tag, set())) | call.atoms,
        )
        for tag, call in best.items()
        if _is_able(matcher, table[tag].needs)
    ]
    return sorted(able, key=lambda c: (-c.score, c.tag))


def is_verb(low: str) -> bool:
    """Whether a word is a verb by its look: -ed, or one of the short ones.

    >>> is_verb("removed"), is_verb("took"), is_verb("gasket")
    (True, True, False)
    """
    return low in hint("short_verbs") or (low.endswith("ed") and len(low) > 4)


def _standing(verb: Verb, head: Sequence[str], named: bool) -> float:
    """What the line as a whole adds: the record's own word at its head, or that no thing is named."""
    own = any(tuple(head[: len(words)]) == words for words in verb.first)
    return (_FIRST if own else 0.0) - (0.0 if named or not verb.thing else _UNNAMED)


def _is_able(matcher: _Matcher, needs: frozenset[str]) -> bool:
    return not needs or any(matcher.has(cls) for cls in needs)


def _score(line: Line, phrase: Phrase, spot: _Spot, at: int) -> float:
    said = len(spot.atoms)
    score = phrase.weight + 0.12 * max(0, said - 1) - _GAP * spot.gaps
    score += 0.08 * sum(bool(e.classes) for e in phrase.elements)
    if any(line.atoms[i].low in lexicon().topics for i in spot.atoms):
        score += _TOPIC
    where = min(spot.atoms) if spot.atoms else at
    if line.under[where]:
        score -= _UNDER
    score -= _LATER * min(line.segment[where], 2)
    return score + (_AT_HEAD if spot.atoms and where <= _head(line) else 0.0)


def _head(line: Line) -> int:
    """The first atom that is more than a side, a number or a day."""
    passed = ("side", "mark", "day", "time", "number")
    return next((i for i, a in enumerate(line.atoms) if a.sort not in passed), 0)
