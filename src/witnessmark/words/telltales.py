"""The telltales of a line: what of its words, in what order and company, may tell the kind of fact.

A telltale is a short text, its first letters saying of which sort it is:

u  a word anywhere          m  a word of the main clause      l  the last word
c  a class anywhere         d  a class of the main clause
b  two neighbours, each as word or class                      s  two words with one between
k  the consonants of a word anywhere                          q  the consonants of a word of the main clause
g  three to five letters in a row within a word, ^ and $ its ends

Names of the vehicle, figures, days, times and sides stand as one token each: what they are tells, not which.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from witnessmark.vehicle.conditions import condition
from witnessmark.words.atoms import Atom
from witnessmark.words.line import Line
from witnessmark.words.naming import Hit, is_noun

_CLASSES = frozenset(
    {
        "blank", "stand", "tin", "trade", "treatment", "vehicle", "dimension", "container", "place", "tool",
        "fastener", "helper", "fluid", "product", "condition", "item",
    }
)  # fmt: skip
_NAMED = 40
_SHORTEST = 4
_LONGEST_RUN = 5
_VOWELS = re.compile("[aeiouy]+")
_TWICE = re.compile(r"(.)\1+")
_SOUNDS = (("ight", "it"), ("ck", "k"), ("ph", "f"), ("c", "k"))


class Told(Struct, frozen=True):
    """One token of a line.

    word     as compared, or what it stands for, as <name>, <side>, <torque>
    classes  what else it is, as <bad>, <noun>
    main     it stands before the first comma and in no clause of why, when or what for
    letters  the letters as typed, "" where it is no plain word of four letters or more
    """

    word: str
    classes: tuple[str, ...]
    main: bool
    letters: str


def telltales(line: Line, hits: Sequence[Hit]) -> tuple[str, ...]:
    """Every telltale of a line, each once, sorted."""
    told = list(_told(line, hits))
    words = [t for t in told if t.word != ","]
    found: set[str] = {f"l {words[-1].word}"} if words else set()
    for token in words:
        found.update(_alone(token))
    choices = [("^",), *((t.word, *t.classes) for t in told), ("$",)]
    for before, after in pairwise(choices):
        found.update(f"b {a} {b}" for a in before for b in after)
    found.update(f"s {a[0]} {b[0]}" for a, b in zip(choices, choices[2:], strict=False))
    return tuple(sorted(found))


def _alone(token: Told) -> Iterator[str]:
    """What one token tells by itself."""
    yield f"u {token.word}"
    yield from (f"c {name}" for name in token.classes)
    bones = consonants(token.letters)
    if len(bones) > 1:
        yield f"k {bones}"
    if token.main:
        yield f"m {token.word}"
        yield from (f"d {name}" for name in token.classes)
        if len(bones) > 1:
            yield f"q {bones}"
    if token.letters:
        ended = f"^{token.letters}$"
        for size in range(3, _LONGEST_RUN + 1):
            yield from (f"g {ended[at : at + size]}" for at in range(len(ended) - size + 1))


def words_alone(line: Line, atom: Atom) -> tuple[str, ...]:
    """What a plain word tells anywhere, by itself and by its consonants."""
    bones = consonants(_letters(line, atom))
    return (f"u {atom.low}", f"k {bones}") if len(bones) > 1 else (f"u {atom.low}",)


def consonants(word: str) -> str:
    """A word without what a hurried thumb leaves out: its first letter and its consonants, each once.

    >>> consonants("drained"), consonants("drnd"), consonants("bright"), consonants("brite"), consonants("")
    ('drnd', 'drnd', 'brt', 'brt', '')
    """
    for spelt, sound in _SOUNDS:
        word = word.replace(spelt, sound)
    word = _TWICE.sub(r"\1", word)
    return word[:1] + _VOWELS.sub("", word[1:])


def _told(line: Line, hits: Sequence[Hit]) -> Iterator[Told]:
    named = {at: hit for hit in hits if hit.score > _NAMED for at in hit.atoms}
    classes = _classes(line)
    last: Hit | None = None
    for at, atom in enumerate(line.atoms):
        main = line.segment[at] == 0 and not line.under[at]
        hit = named.get(at)
        if hit is not None:
            if hit is not last:
                yield Told("<name>", (), main, "")
            last = hit
            continue
        last = None
        word = _word(atom)
        plain = atom.sort == "word" and word == atom.low
        noun = ("<noun>",) if plain and is_noun(atom.low) else ()
        letters = _letters(line, atom) if plain else ""
        yield Told(word, (*classes.get(at, ()), *noun), main, letters)


def _classes(line: Line) -> dict[int, tuple[str, ...]]:
    """The classes each atom stands in."""
    found: dict[int, tuple[str, ...]] = {}
    for spans in line.spans.values():
        for span in spans:
            if span.cls not in _CLASSES:
                continue
            name = span.cls
            if name == "condition":
                name = "bad" if condition(span.means).bad else "good"
            for at in range(span.first, span.last):
                found[at] = (*found.get(at, ()), f"<{name}>")
    return found


def _word(atom: Atom) -> str:
    """What an atom stands for."""
    if atom.sort == "mark":
        return atom.low if atom.low in "?!:" else ","
    if atom.quantity:
        return "<size>" if atom.quantity.size else f"<{atom.quantity.kind}>"
    if atom.time:
        return "<hours>" if atom.time.until else "<clock>"
    if atom.day:
        return "<coming>" if atom.day.past is None else "<day>"
    if atom.sort in ("side", "thread"):
        return f"<{atom.sort}>"
    return "<n>" if atom.value is not None and atom.low not in ("a", "an", "one") else atom.low


def _letters(line: Line, atom: Atom) -> str:
    """The letters of a word as typed, before its spelling was mended."""
    letters = "".join(sign for sign in line.text[atom.start : atom.end].lower() if sign.isalpha())
    return letters if len(letters) >= _SHORTEST else ""
