"""The names one vehicle answers to, looked up by their words; made once and kept by the caller."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from msgspec import Struct

from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.lexicon import Words, lexicon, lows, stems
from witnessmark.words.verbs import verb_words

SHORTEST_MENDED = 5


class Named(Struct, frozen=True):
    """One plain name of the vehicle.

    plain     "hub nut"
    stems     ("hub", "nut")
    variants  side -> whole name; side "" where it has none
    sort      "joint", "part" or "assembly", whichever the record holds it to be first
    """

    plain: str
    stems: Words
    variants: Mapping[str, str]
    sort: str


class Vocabulary(Struct, frozen=True):
    """Lookups over one vehicle.

    names    every plain name
    by_stem  stem -> places in `names`
    words    words of those names as typed
    mends    first letter -> words a misspelt one may be brought to
    """

    vehicle: Vehicle
    names: tuple[Named, ...]
    by_stem: Mapping[str, tuple[int, ...]]
    words: frozenset[str]
    mends: Mapping[str, tuple[str, ...]]

    def sort_of(self, whole: str) -> str:
        """Whether a whole name is a joint's, a part's or an assembly's; "" where it is not known."""
        if whole in self.vehicle.joints:
            return "joint"
        if whole in self.vehicle.parts:
            return "part"
        return "assembly" if whole in self.vehicle.assemblies else ""


def vocabulary_of(vehicle: Vehicle) -> Vocabulary:
    """Make the lookups for a vehicle."""
    names = _names(vehicle)
    by_stem: dict[str, list[int]] = {}
    for place, named in enumerate(names):
        for word in set(named.stems):
            by_stem.setdefault(word, []).append(place)
    words = frozenset(low for named in names for low in lows(named.plain))
    return Vocabulary(
        vehicle=vehicle,
        names=names,
        by_stem=MappingProxyType({word: tuple(places) for word, places in by_stem.items()}),
        words=words,
        mends=MappingProxyType(_mends(words)),
    )


def _names(vehicle: Vehicle) -> tuple[Named, ...]:
    variants: dict[str, dict[str, str]] = {}
    sorts: dict[str, str] = {}
    groups = (
        ("joint", tuple(vehicle.joints)),
        ("part", tuple(vehicle.parts)),
        ("assembly", vehicle.assemblies),
    )
    for sort, wholes in groups:
        for whole in wholes:
            plain, side = parted(whole)
            variants.setdefault(plain, {}).setdefault(side, whole)
            sorts.setdefault(plain, sort)
    return tuple(
        Named(plain, stems(plain), MappingProxyType(sides), sorts[plain]) for plain, sides in variants.items()
    )


def _mends(words: frozenset[str]) -> dict[str, tuple[str, ...]]:
    found = dict(_common_mends())
    fresh: dict[str, set[str]] = {}
    for word in words:
        if _may_be_mended(word):
            fresh.setdefault(word[0], set()).add(word)
    return found | {letter: tuple(sorted({*found.get(letter, ()), *own})) for letter, own in fresh.items()}


@cache
def _common_mends() -> Mapping[str, tuple[str, ...]]:
    """What every vehicle's words share."""
    known = lexicon()
    found: dict[str, list[str]] = {}
    for word in sorted((known.every - known.plain) | verb_words()):
        if _may_be_mended(word):
            found.setdefault(word[0], []).append(word)
    return MappingProxyType({letter: tuple(group) for letter, group in found.items()})


def _may_be_mended(word: str) -> bool:
    return len(word) >= SHORTEST_MENDED - 1 and word.isalpha()
