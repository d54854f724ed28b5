"""What does not fit the kind of fact that was read, or the thing it was read of."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from itertools import pairwise
from types import MappingProxyType

from witnessmark.tables.read import read_table
from witnessmark.vehicle.sides import parted
from witnessmark.words.lexicon import hint, lexicon, lows, stem, stems
from witnessmark.words.matching import is_verb
from witnessmark.words.proper import is_unknown
from witnessmark.words.verbs import verbs
from witnessmark.words.work import Work

_SHORT_FORM = re.compile(r"[bcdfghjklmnpqrstvwxz]{2,}|[a-z]+[bcfghjklmnpqrstvwxz]d")


_TWO_BARE = re.compile(r"[0-9.,]+\s?[x×]\s?[0-9.,]+")
_BESIDE = ("fluid", "product", "stand", "blank", "tin", "tool", "container")


def note_misfits(work: Work) -> None:
    """Doubt a reading whose figures, first words or new name speak for another one."""
    _note_figures(work)
    _note_short_forms(work)
    if work.call.tag != "remarked":
        _note_first_words(work)
        _note_two_ways(work)
        _note_new_name(work)


@cache
def _kinds_of_figures() -> Mapping[str, frozenset[str]]:
    rows = read_table("words/hints")["figures"]
    return MappingProxyType({kind: frozenset(tags) for kind, tags in rows.items()})


def _note_figures(work: Work) -> None:
    """Money, litres and volts are told by few kinds of fact."""
    for at, atom in enumerate(work.atoms):
        fits = _kinds_of_figures().get(atom.quantity.kind) if atom.quantity else None
        if fits is not None and work.call.tag not in fits and not work.line.under[at]:
            work.doubt("a figure belongs to another kind of fact")
        bought = work.call.tag in hint("bought")
        if atom.quantity and not bought and _TWO_BARE.fullmatch(atom.quantity.size):
            work.doubt("the unit was not typed: mm is taken")


def _note_first_words(work: Work) -> None:
    """A verb or a clause at the head that found no place, or a verb there that means two things."""
    known = lexicon()
    small = known.glue | known.trim | hint("light_verbs")
    first = next((i for i, a in enumerate(work.atoms) if a.sort == "word" and a.low not in small), None)
    if first is None or work.line.under[first]:
        return
    if _is_stray_verb(work, first) or _is_stray_clause(work, first):
        work.doubt("the head of the line found no place")
    if work.call.tag != "downed_tools" and _says_first(work, "downed_tools"):
        work.doubt("a second thing is told")


def _note_two_ways(work: Work) -> None:
    """ "Cracked the union" may be done or found; what was put on "to see" may be on for good."""
    words = [i for i, a in enumerate(work.atoms) if a.sort == "word" and a.low not in lexicon().glue]
    typed = [a.low for a in work.atoms]
    if words and work.call.tag == "found" and typed[words[0]] in hint("two_ways"):
        follower = work.atoms[words[0] + 1] if words[0] + 1 < len(work.atoms) else None
        if follower is not None and follower.sort != "mark":
            work.doubt("it may be another kind of fact")
    pairs = list(pairwise(typed))
    if work.call.tag in ("fitted", "took_off") and any(
        ("to", word) in pairs for word in ("see", "check", "try")
    ):
        work.doubt("it may be another kind of fact")
    if work.call.tag == "offered" and any(low in ("gave", "paid", "settled") for low in typed):
        work.doubt("a second thing is told")


def _is_stray_verb(work: Work, at: int) -> bool:
    """Whether a verb found no place, and is not joined to the one that did: "cleaned and greased"."""
    joined = at + 2 < len(work.atoms) and work.atoms[at + 1].low == "and" and at + 2 in work.told
    return work.is_free(at) and at not in work.told and is_verb(work.atoms[at].low) and not joined


def _is_stray_clause(work: Work, at: int) -> bool:
    segment = work.line.segment
    own = [i for i in range(len(segment)) if segment[i] == segment[at]]
    return segment[at] < max(segment) and not any(i in work.placed or i in work.told for i in own)


def _says_first(work: Work, tag: str) -> bool:
    """Whether the words that are a kind of fact's own stand somewhere in the line."""
    typed = [a.low for a in work.atoms]
    return any(
        tuple(typed[i : i + len(words)]) == words for words in verbs()[tag].first for i in range(len(typed))
    )


def _note_short_forms(work: Work) -> None:
    """ "Cvr" and "flr" are words to their writer."""
    for at, atom in enumerate(work.atoms):
        if (
            work.is_free(at)
            and _SHORT_FORM.fullmatch(atom.low)
            and is_unknown(work.line, at, work.vocabulary)
        ):
            work.doubt("a short form is not known")


def _note_new_name(work: Work) -> None:
    """A new name that holds a known one, or is only what is poured, may be no new thing."""
    beside = {s.means for cls in _BESIDE for s in work.line.spans_of(cls)}
    new = (*(p.name for p in work.parts), *(j.name for j in work.joints))
    known = [n.stems for n in work.vocabulary.names if len(lows(n.plain)) > 1] if new else []
    for whole in new:
        name = parted(whole)[0]
        words = stems(name)
        longer = (n for n in known if len(n) < len(words) and set(n) <= set(words))
        if work.call.tag != "described" and any(longer):
            work.doubt("a known name stands within the new one")
        if name in beside or stem(name) in beside:
            work.doubt("it may be what was used, not what it was done to")
        if work.call.tag != "described" and words[-1] in hint("weak_heads"):
            work.doubt("its name may be another word for a known thing")
        if _goes_on(work, name):
            work.doubt("its name may go on")


def _goes_on(work: Work, name: str) -> bool:
    """Whether a word that found no place stands right behind a new name: "bulkhead stiffener"."""
    last = max((i for i, a in enumerate(work.atoms) if a.low in lows(name) and i in work.placed), default=-1)
    if last < 0 or last + 1 >= len(work.atoms):
        return False
    atom, known = work.atoms[last + 1], lexicon()
    small = known.glue | known.trim | known.beside | known.clause | known.turning
    return (
        atom.sort == "word" and work.is_free(last + 1) and last + 1 not in work.told and atom.low not in small
    )
