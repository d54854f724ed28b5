"""The phrases that tell what kind of fact a line is, read from the data and made ready for matching."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from msgspec import Struct

from witnessmark.tables.read import read_table
from witnessmark.words.lexicon import Words, lows

WEIGHTS: Mapping[str, float] = MappingProxyType(
    {"strong": 3.0, "plain": 2.2, "weak": 1.3, "base": 1.2, "shaky": 2.4}
)


class Element(Struct, frozen=True):
    """One place of a phrase: words, runs of words, classes, or a gap; what is barred must not stand here."""

    runs: tuple[Words, ...] = ()
    classes: frozenset[str] = frozenset()
    gap: bool = False
    maybe: bool = False
    barred: bool = False


class Phrase(Struct, frozen=True):
    """One way to say a kind of fact. `doubted` ones are also used for what is only meant, or for another."""

    tag: str
    weight: float
    elements: tuple[Element, ...]
    doubted: bool = False


class Verb(Struct, frozen=True):
    """What the sentence begins with, and what the line must have for it.

    needs  figures or classes, one of which must be there
    own    where told, only these words of its phrases are said by the sentence; the rest stay in the remark
    thing  it is said of a thing
    first  words that are decisive at the head of a line
    """

    says: str
    needs: frozenset[str] = frozenset()
    own: frozenset[str] = frozenset()
    thing: bool = False
    first: tuple[Words, ...] = ()

    def says_itself(self, word: str) -> bool:
        return not self.own or word in self.own


@cache
def verbs() -> Mapping[str, Verb]:
    """Every kind of fact that can be typed, by its name in the journal."""
    rows = read_table("words/verbs")
    return MappingProxyType({tag: _verb(row) for tag, row in rows.items()})


def _verb(row: Mapping[str, Any]) -> Verb:
    return Verb(
        says=row["says"],
        needs=frozenset(row.get("needs", ())),
        own=frozenset(row.get("own", ())),
        thing=bool(row.get("thing", False)),
        first=tuple(lows(text) for text in row.get("first", ())),
    )


@cache
def phrases() -> tuple[Phrase, ...]:
    """Every phrase, in the order of the data."""
    found = []
    for tag, row in read_table("words/verbs").items():
        for rank, weight in WEIGHTS.items():
            for text in row.get(rank, ()):
                found.append(Phrase(tag, weight, _elements(text), rank in ("base", "shaky")))
    return tuple(found)


def _elements(text: str) -> tuple[Element, ...]:
    return tuple(_element(part) for part in text.split())


def _element(part: str) -> Element:
    if part == "*":
        return Element(gap=True)
    maybe = part.endswith("?")
    choices = part.lstrip("!").rstrip("?").split("|")
    return Element(
        runs=tuple(lows(c.replace("_", " ")) for c in choices if not c.startswith("@")),
        classes=frozenset(c[1:] for c in choices if c.startswith("@")),
        maybe=maybe,
        barred=part.startswith("!"),
    )


@cache
def verb_words() -> frozenset[str]:
    """Every word that stands in some phrase."""
    return frozenset(
        w for phrase in phrases() for element in phrase.elements for run in element.runs for w in run
    )


@cache
def starts() -> tuple[Mapping[str, tuple[Phrase, ...]], Mapping[str, tuple[Phrase, ...]]]:
    """Phrases by the word, and by the class, they can begin with."""
    by_word: dict[str, list[Phrase]] = {}
    by_class: dict[str, list[Phrase]] = {}
    for phrase in phrases():
        for element in phrase.elements:
            for run in element.runs:
                by_word.setdefault(run[0], []).append(phrase)
            for cls in element.classes:
                by_class.setdefault(cls, []).append(phrase)
            if not element.maybe:
                break
    return (
        MappingProxyType({w: tuple(p) for w, p in by_word.items()}),
        MappingProxyType({c: tuple(p) for c, p in by_class.items()}),
    )
