"""What a line is about: which of the names in it are meant, and on which side."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from msgspec.structs import replace

from witnessmark.vehicle.sides import CORNERS, OTHER, parted, whole_name
from witnessmark.words.lexicon import lexicon
from witnessmark.words.naming import FULL, HEADLESS, LOOSE, Hit, is_noun
from witnessmark.words.vocabulary import Named
from witnessmark.words.work import Work

_LINKS = frozenset(
    {"and", "plus", "also", "both", "the", "a", "an", "its", "his", "my", "of", "all", "as", "well"}
)
_PASSED = frozenset(
    {"the", "a", "an", "its", "my", "new", "old", "both", "all", "each", "every", "that", "this"}
)
_HANDS = frozenset({"left", "right"})
MORE_THAN_ONE = 2


def known_subjects(work: Work) -> tuple[str, ...]:
    """Whole names of the known things the line is about; what is unclear becomes a doubt."""
    chosen = choose(work)
    if not chosen:
        return ()
    wholes: list[str] = []
    for hit in chosen:
        sides = _sides_for(work, hit, chosen)
        wholes += [w for w in _resolve(work, hit, sides) if w not in wholes]
    for hit in chosen:
        work.placed |= hit.atoms
    _note_names(work, chosen)
    return tuple(wholes)


def _note_names(work: Work, chosen: Sequence[Hit]) -> None:
    first = chosen[0]
    work.name = first.named.plain
    if first.how == HEADLESS or first.doubted:
        work.doubt("the name may be another thing's")
    if first.how == LOOSE:
        work.doubt("only some words of the name were typed")
    if any(hit.rivals for hit in chosen):
        work.doubt("two names fit")
    if any(work.atoms[i].shaky for hit in chosen for i in hit.atoms):
        work.doubt("the spelling may mean another word")


def choose(work: Work) -> list[Hit]:
    """The hits meant: those of the main clause that stand in no phrase of place or means, and what is joined to them."""
    free = [h for h in work.hits if not (h.atoms & work.call.atoms) or work.call.atoms - h.atoms]
    solid = [h for h in free if h.how != HEADLESS] or _last_resort(work, free)
    if not solid:
        return []
    main = [h for h in solid if not work.line.under[h.first]] or solid
    direct = [h for h in main if not _is_beside(work, h)] or main
    groups = _groups(work, direct)
    best = max(groups, key=lambda g: _group_score(work, g))
    if len(groups) > 1 and _are_rivals(work, best, groups):
        work.doubt("two things are named")
    return best


def _last_resort(work: Work, free: Sequence[Hit]) -> list[Hit]:
    """A name by its first words only counts where no new thing is plainly named."""
    return [h for h in free if h.score > 0 and not _grows(work, h)]


def _grows(work: Work, hit: Hit) -> bool:
    at = hit.last
    return at < len(work.atoms) and work.atoms[at].sort == "word" and is_noun(work.atoms[at].low)


def _is_beside(work: Work, hit: Hit) -> bool:
    """Whether a preposition that does not belong to the verb leads to it."""
    at = hit.first - 1
    while at >= 0 and (work.atoms[at].low in _PASSED or work.atoms[at].sort in ("side", "number")):
        at -= 1
    return at >= 0 and work.atoms[at].low in lexicon().beside and at not in work.call.atoms


def _groups(work: Work, hits: Sequence[Hit]) -> list[list[Hit]]:
    """Hits joined by "and" or a comma stand together; of two that touch, the first only tells more of the second."""
    groups: list[list[Hit]] = []
    for hit in hits:
        last = groups[-1][-1] if groups else None
        if last is not None and last.last == hit.first:
            groups[-1][-1] = hit
        elif last is not None and _are_joined(work, last, hit):
            groups[-1].append(hit)
        else:
            groups.append([hit])
    return groups


def _are_joined(work: Work, first: Hit, second: Hit) -> bool:
    between = [a for a in work.atoms[first.last : second.first] if a.sort != "side" and a.value is None]
    lows = [a.low for a in between]
    if any(low not in _LINKS and low != "," for low in lows):
        return False
    return "and" in lows or "plus" in lows or ("," in lows and _ends_there(work, second)) or lows == []


def _ends_there(work: Work, hit: Hit) -> bool:
    """Whether no clause of its own begins with this name."""
    if hit.last >= len(work.atoms):
        return True
    atom = work.atoms[hit.last]
    return (
        atom.sort in ("mark", "side", "quantity", "day", "time")
        or atom.low == "and"
        or hit.last in work.call.atoms
    )


def _group_score(work: Work, group: Sequence[Hit]) -> tuple[float, float]:
    first = group[0]
    near = min((abs(first.first - i) for i in work.call.atoms), default=0)
    return (first.score - 12 * work.line.segment[first.first], -near)


def _are_rivals(work: Work, best: Sequence[Hit], groups: Sequence[Sequence[Hit]]) -> bool:
    segment = work.line.segment[best[0].first]
    return any(
        g is not best and g[0].how == FULL and work.line.segment[g[0].first] == segment for g in groups
    )


# ---- sides


def _sides_for(work: Work, hit: Hit, chosen: Sequence[Hit]) -> list[str]:
    """The sides told for one name: those beside it where there are several names and sides, else all."""
    told = _told(work, {i for other in chosen for i in other.atoms})
    mine = _own(work, hit, chosen, told) if len(chosen) > 1 and len(told) > 1 else told
    return _placed(work, mine)


def _told(work: Work, names: Collection[int]) -> list[int]:
    """Atoms that tell a side and are no part of a name or of a clause of why."""
    told = []
    for at, atom in enumerate(work.atoms):
        if (
            atom.side is None
            or at in names
            or work.line.under[at]
            or (at in work.call.atoms and atom.low in _HANDS)
        ):
            continue
        if atom.side.unknown:
            work.doubt("nearside and offside are not known until the country is")
        else:
            told.append(at)
    return told


def _placed(work: Work, mine: Sequence[int]) -> list[str]:
    sides: list[str] = []
    for at in mine:
        found = work.atoms[at].side
        assert found is not None
        work.place(at)
        sides.append(found.side)
        if work.atoms[at].shaky:
            work.doubt("the spelling of a side was mended")
    return _merged(work, mine, sides)


def merged_sides(work: Work, names: Collection[int]) -> list[str]:
    """Every side told in the line beside these atoms; placed."""
    return _placed(work, _told(work, names))


def _own(work: Work, hit: Hit, chosen: Sequence[Hit], told: Sequence[int]) -> list[int]:
    """Sides between this name and the next; where the sides come first, those before it."""
    firsts = sorted(h.first for h in chosen)
    leading = told[0] < firsts[0]
    place = firsts.index(hit.first)
    if leading:
        low = firsts[place - 1] if place else -1
        return [i for i in told if low < i < hit.first]
    high = firsts[place + 1] if place + 1 < len(firsts) else len(work.atoms)
    return [i for i in told if hit.first < i < high]


def _merged(work: Work, at: Sequence[int], sides: Sequence[str]) -> list[str]:
    """ "Left" here and "rear" there are one corner; the same side twice is one."""
    unique = list(dict.fromkeys(sides))
    if len(unique) == MORE_THAN_ONE:
        corner = next((c for c in CORNERS if set(c.split()) == set(unique)), None)
        if corner:
            return [corner]
        wider, closer = sorted(unique, key=lambda s: len(s.split()))
        if len(wider.split()) == 1 and wider in closer.split():
            return [closer]
        if (
            len(wider.split()) == 1
            and len(closer.split()) == MORE_THAN_ONE
            and OTHER[wider] in closer.split()
        ):
            work.doubt("two sides are told")
            return [closer]
        if not any(a.low == "and" for a in work.atoms[at[0] : at[-1]]):
            work.doubt("two sides are told")
    return unique


def wants_all(work: Work, name: Collection[int] = ()) -> bool:
    """Whether "both", "all four" or "each" stands before the name or for it, not before "sides of" or "ends"."""
    handed = any(a.side and a.side.side and not work.line.under[i] for i, a in enumerate(work.atoms))
    for at, atom in enumerate(work.atoms):
        if atom.low not in lexicon().many or at in work.call.atoms or work.line.under[at]:
            continue
        follower = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
        if follower == "round" and at - 1 in name:
            work.place(at, at + 2)
            return True
        if (
            follower in ("ends", "end", "the", "of", "way", "day", "told", "night", "over", "in", "round")
            and atom.low != "both"
        ):
            continue
        if follower in ("ends", "end", "threads", "halves", "faces", "ways") or (
            follower in ("sides", "side") and handed
        ):
            continue
        work.place(at)
        if follower in ("sides", "side", "four", "round", "corners", "wheels") and at + 1 not in name:
            work.place(at + 1)
        return True
    return False


# ---- from name and sides to whole names


def _resolve(work: Work, hit: Hit, sides: list[str]) -> list[str]:
    named = _picked(work, hit)
    variants = named.variants
    picked = work.pick.get("side")
    if picked is not None and picked in variants:
        work.side = picked
        return [variants[picked]]
    many = wants_all(work, hit.atoms)
    if not sides:
        return _unsided(work, named, many)
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
        return list(variants.values())
    if "" in variants:
        return [variants[""]]
    if len(variants) == 1:
        side, whole = next(iter(variants.items()))
        work.side = side
        if whole not in work.recent:
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


def other_sides(side: str) -> tuple[str, ...]:
    """Other sides a person may have meant, the nearest slip first.

    >>> other_sides("left rear")
    ('right rear', 'left front')
    """
    words = side.split()
    found = []
    for at, word in enumerate(words):
        found.append(" ".join([*words[:at], OTHER[word], *words[at + 1 :]]))
    return tuple(found)
