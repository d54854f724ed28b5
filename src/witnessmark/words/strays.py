"""Words beside the fact that found no place in it, and may yet be what it is about."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.naming import is_noun
from witnessmark.words.proper import is_unknown
from witnessmark.words.work import Work

_ASIDE = ("vehicle", "place", "helper", "trade", "stand", "container")
_THINGS = ("blank", "tool", "fluid", "product", "tin", "fastener")
# What a kind of fact speaks of beside its thing.
_OWN: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "blanked": ("blank",),
        "unblanked": ("blank",),
        "lifted": ("stand",),
        "let_down": ("stand",),
        "opened_tin": ("tin",),
        "marked": ("product",),
        "bared": ("product", "tool"),
        "coated": ("product", "tin"),
        "filled": ("fluid", "tin"),
        "drained": ("fluid", "tin"),
        "described": ("fastener",),
        "welded": ("tool",),
        "tightened": ("tool",),
    }
)
_FREE = frozenset(
    {"photographed", "remarked", "held", "ran", "last_spark", "watched_fire", "came_back", "took_time"}
)
_FAR = 4


def note_strays(work: Work) -> None:
    """Doubt a reading that leaves out a thing, a strange word or a number beside its verb or its name."""
    if work.call.tag in _FREE:
        return
    for at in _loose(work):
        if work.atoms[at].value is not None:
            if not fits(work, at):
                work.doubt("a number found no place")
        elif _is_thing(work, at) and not _is_led(work, at) and not _qualifies(work, at):
            work.doubt("a thing beside it found no place")


def _loose(work: Work) -> list[int]:
    """Words and numbers of the main clauses that tell the fact or its name, and that found no place."""
    main = {work.line.segment[i] for i in work.told | _named(work)}
    known = lexicon()
    return [
        i
        for i, atom in enumerate(work.atoms)
        if work.is_free(i)
        and i not in work.told
        and not work.line.under[i]
        and work.line.segment[i] in main
        and (atom.value is not None or (atom.sort == "word" and atom.low not in known.glue | known.trim))
    ]


def _named(work: Work) -> set[int]:
    return {i for h in work.hits if h.atoms <= work.placed for i in h.atoms}


def _is_thing(work: Work, at: int) -> bool:
    low = work.atoms[at].low
    if low in work.name.split() or low in hint("passing") | hint("spots") | hint("colours"):
        return False
    if work.call.tag in ("braced", "unbraced") and low in hint("braces"):
        return False
    if any(s.first <= at < s.last for cls in _ASIDE for s in work.line.spans_of(cls)):
        return False
    if any(s.first <= at < s.last for cls in _OWN.get(work.call.tag, ()) for s in work.line.spans_of(cls)):
        return False
    classed = any(s.first <= at < s.last for cls in _THINGS for s in work.line.spans_of(cls))
    return classed or is_noun(low) or _is_strange_object(work, at)


def _is_strange_object(work: Work, at: int) -> bool:
    """Whether a word known nowhere stands where the thing does: right behind the verb or behind its name."""
    low = work.atoms[at].low
    if not is_unknown(work.line, at, work.vocabulary) or low.endswith(("ly", "ed", "ing")):
        return False
    if any(h.last == at for h in work.hits if h.atoms <= work.placed):
        return True
    before = at - 1
    while (
        before >= 0 and work.atoms[before].low in lexicon().glue | lexicon().trim and before not in work.told
    ):
        before -= 1
    return before in work.told


def _is_led(work: Work, at: int) -> bool:
    """Whether a preposition that is none of the verb's leads to it: "with the dial gauge", "on the slope"."""
    if at and work.atoms[at - 1].low in ("its", "their", "it"):
        return True
    back = at - 1
    while back >= 0 and at - back <= _FAR and work.atoms[back].sort in ("word", "quantity", "side"):
        if work.atoms[back].low in lexicon().beside and (back not in work.told or work.call.tag == "stored"):
            return True
        back -= 1
    return False


def _qualifies(work: Work, at: int) -> bool:
    """Whether a placed name follows at once: "rad top hose" is the top hose of the radiator."""
    after = at + 1
    named = any(after in h.atoms for h in work.hits if h.atoms <= work.placed)
    return after < len(work.atoms) and (named or after in work.taken)


def fits(work: Work, at: int) -> bool:
    """Whether a number counts or numbers what it stands beside: "four turns", "4 bolts" of these, "tub 3"."""
    low = work.atoms[at].low
    near = [a.low for a in work.atoms[at + 1 : at + 3]]
    before = work.atoms[at - 1].low if at else ""
    if (
        low in ("one", "single")
        or low in hint("often")
        or before in hint("numbered")
        or near[:1] in (["off"], ["x"])
    ):
        return True
    if any(n in hint("counted") or n in hint("braces") for n in near) or "/" in work.words(at, at + 1):
        return True
    if any(s.first == at + 1 for cls in ("fluid", "product") for s in work.line.spans_of(cls)):
        return True
    return any(
        h.atoms <= work.placed and 0 < h.first - at <= 2 and work.atoms[h.last - 1].low.endswith("s")
        for h in work.hits
    )
