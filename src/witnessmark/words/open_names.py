"""Names that may be told to anybody: made of words of the trade alone, so that nobody's own is among them."""

from __future__ import annotations

import re
from functools import cache

from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.sides import SIDES
from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.lexicon import canonical, lexicon, lows, stem

_SMALL = ("and", "of", "the", "to", "for", "in", "on", "at", "with", "both", "upper", "lower", "inner")
_PLAIN = re.compile(r"[A-Za-z0-9 ,()/.–-]*")
_MOST_DIGITS = 2


@cache
def trade_stems() -> frozenset[str]:
    """Stems of the words by which kinds of joint, starting lists and the trade's things are named."""
    known = lexicon()
    found = {word for words in (*known.parts, *known.heads, *known.materials) for word in words}
    texts = [*SIDES, *_SMALL]
    for kind in catalogue().values():
        texts += [kind.name, *kind.words, *(item.item for item in kind.renew)]
    for chosen in starting_lists().values():
        texts += [chosen.name, chosen.place, *(part.name for part in chosen.part)]
        texts += [joint.name for joint in chosen.joint]
    for text in texts:
        found |= {stem(low) for low in lows(text)} | {word for word, _, _ in canonical(lows(text))}
    return frozenset(found)


def is_open(text: str) -> bool:
    """Whether every word is one of the trade's or a small number, with no odd sign between them.

    >>> is_open("hub nut, left rear"), is_open("Aunt Edna's jack"), is_open("number 07700")
    (True, False, False)
    """
    return _PLAIN.fullmatch(text) is not None and all(_is_known(low) for low in lows(text))


def _is_known(low: str) -> bool:
    if low.isdigit():
        return len(low) <= _MOST_DIGITS
    known = trade_stems()
    return stem(low) in known or all(word in known for word, _, _ in canonical((low,)))


def open_name(name: str, vehicle: Vehicle) -> str:
    """The name of a part or joint where it may be told, else the name of its kind, else "a part"."""
    if is_open(name):
        return name
    joint = vehicle.joints.get(name)
    if joint is None or joint.kind == "unsaid":
        return "a part" if joint is None else "a joint"
    return catalogue()[joint.kind].name.lower()
