"""The sides a line tells for each name in it, and whether it means more than one of a thing."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from witnessmark.vehicle.sides import CORNERS, OTHER
from witnessmark.words.lexicon import lexicon
from witnessmark.words.naming import Hit
from witnessmark.words.work import Work

_HANDS = frozenset({"left", "right"})
_BOUGHT = frozenset({"ordered", "came", "offered", "owned", "paid"})
MORE_THAN_ONE = 2


def sides_for(work: Work, hit: Hit, chosen: Sequence[Hit]) -> list[str]:
    """The sides told for one name: those beside it where there are several names and sides, else all."""
    told = _told(work, {i for other in chosen for i in other.atoms})
    if set(hit.named.variants) == {""}:
        told = [at for at in told if not _is_said_otherwise(work, at, hit.named.plain.split())]
    mine = _own(work, hit, chosen, told) if len(chosen) > 1 and len(told) > 1 else told
    return _placed(work, mine)


def _is_said_otherwise(work: Work, at: int, name: Sequence[str]) -> bool:
    """Of a thing that has no sides "left" and "right" are other words: "left on", "right again".

    A side may also be of its very name, as in "back axle".
    """
    if work.atoms[at].low in name:
        work.place(at)
        return True
    if work.atoms[at].low not in _HANDS:
        return False
    work.doubt("a side is told of a thing that the record knows without one")
    return True


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


def _is_said_of(work: Work, at: int, name: Collection[int]) -> bool:
    """Whether "both" stands beside the name, or alone between stops: "sill trims on, both"."""
    segment = work.line.segment[at]
    mine = [i for i, s in enumerate(work.line.segment) if s == segment and work.atoms[i].sort != "mark"]
    return mine == [at] or any(work.line.segment[i] == segment for i in name)


def wants_all(work: Work, name: Collection[int] = ()) -> bool:
    """Whether "both", "all four" or "each" stands for the name, and not for its ends or faces."""
    handed = any(a.side and a.side.side and not work.line.under[i] for i, a in enumerate(work.atoms))
    for at, atom in enumerate(work.atoms):
        if atom.low == "each" and work.call.tag in _BOUGHT:
            continue
        if atom.low not in lexicon().many or at in work.call.atoms or work.line.under[at]:
            continue
        if name and not _is_said_of(work, at, name):
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
