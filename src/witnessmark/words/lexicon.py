"""The words of the trade and of English that the line knows, read once from the data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.tables.read import names_in, read_table
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.conditions import conditions
from witnessmark.words.tokens import tokens_of

Words = tuple[str, ...]

_WITH_PLURALS = ("fastener", "helper", "tool", "trade")


class Lexicon(Struct, frozen=True):
    """Sets of words, each named by what its words do in a line."""

    glue: frozenset[str]
    trim: frozenset[str]
    clause: frozenset[str]
    beside: frozenset[str]
    turning: frozenset[str]
    meant: frozenset[str]
    many: frozenset[str]
    topics: frozenset[str]
    plain: frozenset[str]
    keep_start: frozenset[Words]
    keep_end: frozenset[str]
    shorthand: Mapping[str, str]
    alias: Mapping[str, Words]
    joined: Mapping[tuple[str, str], Words]
    phrases: Mapping[str, Mapping[Words, str]]
    parts: frozenset[Words]
    heads: frozenset[Words]
    materials: frozenset[Words]
    grades: frozenset[str]
    every: frozenset[str]


def lows(text: str) -> Words:
    """The compared forms of the words of a text."""
    return tuple(t.low for t in tokens_of(text) if t.sort != "mark")


def stem(word: str) -> str:
    """Singular and plural brought together.

    >>> stem("bushes"), stem("bolts"), stem("chassis"), stem("glass"), stem("assemblies")
    ('bush', 'bolt', 'chassis', 'glass', 'assembly')
    """
    if len(word) <= 3 or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("shes", "ches", "sses", "xes")):
        return word[:-2]
    return word[:-1] if word.endswith("s") else word


def canonical(words: Sequence[str]) -> list[tuple[str, int, int]]:
    """Words in the trade's one spelling, as stems, each with the span of the words it came from.

    >>> [c for c, _, _ in canonical(["prop", "shaft", "bolts"])], [c for c, _, _ in canonical(["carb"])]
    (['propshaft', 'bolt'], ['carburettor'])
    """
    known = lexicon()
    found: list[tuple[str, int, int]] = []
    at = 0
    while at < len(words):
        pair = (words[at], words[at + 1]) if at + 1 < len(words) else ("", "")
        if pair in known.joined:
            found += [(stem(w), at, at + 2) for w in known.joined[pair]]
            at += 2
            continue
        found += [(stem(w), at, at + 1) for w in known.alias.get(words[at], (words[at],))]
        at += 1
    return found


def stems(text: str) -> Words:
    """The canonical stems of a name or phrase.

    >>> stems("Half-shaft O-rings")
    ('halfshaft', 'oring')
    """
    return tuple(word for word, _, _ in canonical(lows(text)))


@cache
def hint(name: str) -> frozenset[str]:
    """One of the short lists that single steps of the reader go by.

    >>> "upper" in hint("positions")
    True
    """
    return frozenset(read_table("words/hints")["words"][name])


@cache
def lexicon() -> Lexicon:
    """Everything the data says about words."""
    glue, nouns, fluids = read_table("words/glue"), read_table("words/nouns"), read_table("words/fluids")
    aliases = read_table("words/aliases")
    alias = {word: tuple(said.split()) for word, said in aliases["words"].items()}
    joined = {_pair(apart): tuple(said.split()) for apart, said in aliases["joined"].items()}
    phrases = _phrases(fluids)
    return Lexicon(
        glue=_plain(glue["glue"]),
        trim=_plain(glue["trim"]),
        clause=_plain(glue["clause"]),
        beside=_plain(glue["beside"]),
        turning=_plain(glue["not"]),
        meant=_plain(glue["meant"]),
        many=_plain(glue["many"]),
        topics=_plain(glue["topics"]),
        plain=_plain(glue["plain"]),
        keep_start=frozenset(lows(text) for text in nouns["keep_start"]),
        keep_end=frozenset(nouns["keep_end"]),
        shorthand=MappingProxyType(dict(aliases["shorthand"])),
        alias=MappingProxyType(alias),
        joined=MappingProxyType(joined),
        phrases=MappingProxyType(phrases),
        parts=frozenset(_stemmed(nouns["parts"], alias, joined)),
        heads=frozenset(_stemmed(nouns["heads"], alias, joined)),
        materials=frozenset(_stemmed(nouns["materials"], alias, joined)),
        grades=frozenset(fluids["grades"]),
        every=_every_word(glue, nouns, phrases, alias, joined),
    )


def _plain(words: Iterable[str]) -> frozenset[str]:
    return frozenset("".join(lows(w)) or w for w in words)


def _pair(apart: str) -> tuple[str, str]:
    first, second = apart.split()
    return (first, second)


def _stemmed(
    names: Iterable[str], alias: Mapping[str, Words], joined: Mapping[tuple[str, str], Words]
) -> list[Words]:
    """Names as stems, while the lexicon is still being made."""
    found = []
    for name in names:
        words = [w for low in lows(name) for w in alias.get(low, (low,))]
        for first, second in joined:
            for at in range(len(words) - 1):
                if (words[at], words[at + 1]) == (first, second):
                    words[at : at + 2] = joined[first, second]
                    break
        found.append(tuple(stem(w) for w in words))
    return found


def _phrases(fluids: Mapping[str, list[str]]) -> dict[str, Mapping[Words, str]]:
    """Classes of phrases: name of the class -> words -> what is meant."""
    classes: dict[str, dict[Words, str]] = {
        name: {lows(text): text for text in texts} for name, texts in read_table("words/classes").items()
    }
    for name in _WITH_PLURALS:
        classes[name] |= {(*words[:-1], words[-1] + "s"): text for words, text in classes[name].items()}
    classes["fluid"] = {lows(text): text for text in fluids["fluids"]}
    classes["product"] = {lows(text): text for text in fluids["products"]}
    classes["condition"] = {
        lows(form): each.word for each in conditions().values() for form in (each.word, *each.forms)
    }
    return {name: MappingProxyType(rows) for name, rows in classes.items()}


def _every_word(
    glue: Mapping[str, list[str]],
    nouns: Mapping[str, list[str]],
    phrases: Mapping[str, Mapping[Words, str]],
    alias: Mapping[str, Words],
    joined: Mapping[tuple[str, str], Words],
) -> frozenset[str]:
    """All words that are spelt right, so that a fix is looked for only beyond them."""
    known = {low for group in (*glue.values(), *nouns.values()) for text in group for low in lows(text)}
    known |= {
        low for group in read_table("words/hints")["words"].values() for text in group for low in lows(text)
    }
    known |= {low for rows in phrases.values() for words in rows for low in words}
    known |= {w for word, said in alias.items() for w in (word, *said)}
    known |= {w for pair, said in joined.items() for w in (*pair, *said)}
    for name in names_in("gates"):
        for ask in read_table(name).get("ask", ()):
            known |= {low for text in (ask["name"], *ask.get("words", ())) for low in lows(text)}
    for kind in catalogue().values():
        texts = [kind.name, *kind.words]
        texts += [t for r in kind.renew for t in (r.item, *r.words)]
        texts += [t for c in kind.check for t in (c.name,)] + [
            t for u in kind.upset for t in (u.name, *u.words)
        ]
        known |= {low for text in texts for low in lows(text)}
    return frozenset(known)
