"""From a name and the sides told with it to the whole names of the record."""

from __future__ import annotations

from msgspec.structs import replace

from witnessmark.vehicle.sides import OTHER, parted, whole_name
from witnessmark.words.lexicon import hint, lexicon, stem
from witnessmark.words.naming import Hit
from witnessmark.words.sided import wants_all
from witnessmark.words.vocabulary import Named
from witnessmark.words.work import Work


def resolve(work: Work, hit: Hit, sides: list[str]) -> list[str]:
    named = _picked(work, hit)
    variants = named.variants
    picked = work.pick.get("side")
    if picked is not None and picked in variants:
        work.side = picked
        return [variants[picked]]
    before = set(work.placed)
    many = wants_all(work, hit.atoms)
    if many and len(variants) == 1:
        work.placed = before
    if not sides:
        return _unsided(work, named, many or _is_several(work, hit, named))
    wholes: list[str] = []
    for side in sides:
        wholes += [w for w in _sided(work, named, side, many) if w not in wholes]
    if not work.side and len(sides) == 1:
        work.side = sides[0]
    return wholes


def _picked(work: Work, hit: Hit) -> Named:
    plain = work.pick.get("name")
    return next((n for n in hit.rivals if n.plain == plain), hit.named)


def _unsided(work: Work, named: Named, many: bool) -> list[str]:
    variants = named.variants
    work.variants = tuple(variants)
    if many and len(variants) > 1:
        if not work.has(*lexicon().many):
            work.doubt("the side was not typed")
        return list(variants.values())
    if "" in variants:
        return [variants[""]]
    if len(variants) == 1:
        side, whole = next(iter(variants.items()))
        work.side = side
        if whole not in work.recent and work.call.tag not in hint("one_known"):
            work.doubt("the side was not typed")
        return [whole]
    lately = next((w for w in work.recent if w in variants.values()), None)
    if lately is None:
        told = [parted(w)[1] for w in work.recent if parted(w)[1] in variants]
        lately = variants[told[0]] if told else None
    work.doubt("the side was not typed")
    whole = lately or next(iter(variants.values()))
    work.side = parted(whole)[1]
    return [whole]


def _is_several(work: Work, hit: Hit, named: Named) -> bool:
    """Whether several are typed of a thing that each side has one of: "stood the doors in the loft".

    A book gives its figure for every side.
    """
    if work.call.tag in hint("bought"):
        return False
    if work.call.tag == "read_figure":
        return True
    typed, known = work.atoms[hit.last - 1].low, named.plain.split()[-1]
    return typed.endswith("s") and not known.endswith("s") and stem(typed) == stem(known)


def _sided(work: Work, named: Named, side: str, many: bool) -> list[str]:
    variants = named.variants
    if side in variants:
        return [variants[side]]
    within = [s for s in variants if s and set(side.split()) <= set(s.split())]
    around = [s for s in variants if s and set(s.split()) < set(side.split())]
    if many and within:
        return [variants[s] for s in within]
    if len(within) == 1:
        return [variants[within[0]]]
    if within:
        work.doubt("the side told leaves more than one")
        work.variants = tuple(within)
        lately = next((variants[s] for s in within if variants[s] in work.recent), variants[within[0]])
        work.side = parted(lately)[1]
        return [lately]
    if len(around) == 1:
        return [variants[around[0]]]
    if "" in variants and len(variants) == 1:
        work.doubt("the record knows it without a side")
        work.side = side
        return [variants[""]]
    if side in OTHER and all(" " in s for s in variants):
        work.doubt("the corner is not told")
    return [mirrored(work, named, side)]


def mirrored(work: Work, named: Named, side: str) -> str:
    """The same thing on a side the record has not: described like the one it has."""
    whole = whole_name(named.plain, side)
    if any(p.name == whole for p in work.parts) or any(j.name == whole for j in work.joints):
        return whole
    model = next(iter(named.variants.values()))
    joint, part = work.vocabulary.vehicle.joints.get(model), work.vocabulary.vehicle.parts.get(model)
    swap = _Swap(parted(model)[1], side)
    if joint is not None:
        work.joints.append(
            replace(
                joint,
                name=whole,
                side=side,
                place=swap.text(joint.place),
                assembly=swap.whole(joint.assembly),
                holds=tuple(swap.whole(n) for n in joint.holds),
                behind=tuple(tuple(swap.whole(n) for n in route) for route in joint.behind),
                figure=None,
            )
        )
    elif part is not None:
        work.parts.append(
            replace(
                part, name=whole, side=side, place=swap.text(part.place), assembly=swap.whole(part.assembly)
            )
        )
    return whole


class _Swap:
    """Names carried from one side to another."""

    def __init__(self, old: str, new: str) -> None:
        self.old, self.new = old, new

    def whole(self, name: str) -> str:
        plain, side = parted(name)
        return whole_name(plain, self.new) if side and side == self.old else name

    def text(self, place: str) -> str:
        return place.replace(self.old, self.new) if self.old else place
