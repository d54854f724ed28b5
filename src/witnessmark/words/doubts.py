"""What makes a reading doubtful beyond its builder's own doubts: turned words, second verbs, names left over."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.matching import Call
from witnessmark.words.naming import FULL, is_noun
from witnessmark.words.work import Work

_MARGIN = 0.75
_TELLING = 1.9
_MANY_LEFT = 6
_HEAD_LEFT = 2
_SMALL = 2.0
_MAY_BE_MEANT = frozenset(
    {"wanted", "guessed", "left", "downed_tools", "offered", "remarked", "ordered", "sent_away"}
)
_MAY_BE_TURNED = frozenset(
    {"left", "wanted", "remarked", "found_behind", "nipped_up", "described_vehicle", "struck"}
)
_GOOD_WITHOUT = frozenset({"proved", "looked_at", "ran", "watched_fire", "turned", "found", "held", "came"})
_ALIKE = (frozenset({"took_off", "opened"}), frozenset({"tightened", "marked"}), frozenset({"fitted", "dry_fitted"}), frozenset({"proved", "looked_at"}), frozenset({"downed_tools", "nipped_up"}))  # fmt: skip


def note_doubts(work: Work, ranked: Sequence[Call]) -> None:
    """Add to a finished reading every doubt that its words as a whole raise."""
    tag = work.call.tag
    if work.call.doubted:
        work.doubt("it may be meant, not done")
    if any(work.atoms[i].shaky for i in work.call.atoms):
        work.doubt("the spelling may mean another word")
    if tag not in _MAY_BE_MEANT and _is_meant(work):
        work.doubt("it may be meant, not done")
    if tag not in _MAY_BE_TURNED and _is_turned(work, tag):
        work.doubt("a word may turn it round")
    if any(a.low in hint("contrasts") and i not in work.placed for i, a in enumerate(work.atoms)):
        work.doubt("it may not be the whole of it")
    _note_small_words(work)
    _note_rivals(work, ranked)
    _note_left_over(work)


def _is_meant(work: Work) -> bool:
    known = lexicon().meant
    return (
        any(
            (a.low in known or a.low == "?") and i not in work.placed and not work.line.under[i]
            for i, a in enumerate(work.atoms)
        )
        or "?" in work.line.text
    )


def _is_turned(work: Work, tag: str) -> bool:
    known = lexicon().turning
    for at, atom in enumerate(work.atoms):
        if atom.low not in known or at in work.placed or work.line.under[at]:
            continue
        if atom.low in ("no", "without", "nothing", "none") and tag in _GOOD_WITHOUT:
            continue
        if (
            atom.low == "no"
            and at + 1 < len(work.atoms)
            and work.line.segment[at] > work.line.segment[min(work.call.atoms, default=at)]
        ):
            continue
        return True
    return False


def _note_small_words(work: Work) -> None:
    """Where only "on", "in" or "off" tells the fact: it may lead to a place, or belong to a verb not known."""
    if work.call.score >= _SMALL:
        return
    for at in work.call.atoms:
        after = at + 1
        while after < len(work.atoms) and work.atoms[after].low in ("the", "a", "my"):
            after += 1
        if work.atoms[at].low in ("on", "in") and after < len(work.atoms) and is_noun(work.atoms[after].low):
            work.doubt("a small word may only tell where")
    verbs = [
        i
        for i, a in enumerate(work.atoms)
        if i not in work.placed and not work.line.under[i] and _is_verb(a.low)
    ]
    if verbs:
        work.doubt("a word like a verb found no place")


def _is_verb(low: str) -> bool:
    return low in hint("short_verbs") or (low.endswith("ed") and len(low) > 4)


def _note_rivals(work: Work, ranked: Sequence[Call]) -> None:
    best = work.call
    for rival in ranked:
        if rival.tag == best.tag or (rival.atoms <= best.atoms and rival.atoms):
            continue
        if any({rival.tag, best.tag} <= group for group in _ALIKE):
            continue
        if rival.score > best.score - _MARGIN and not (not rival.atoms and best.atoms):
            work.doubt("it may be another kind of fact")
        elif rival.score >= _TELLING and rival.atoms and rival.atoms.isdisjoint(work.placed):
            work.doubt("a second thing is told")


def _note_left_over(work: Work) -> None:
    """A whole name, or many words, that found no place."""
    meant = {h.named.plain for h in work.hits if h.atoms <= work.placed}
    for hit in work.hits:
        if hit.named.plain in meant:
            continue
        alone = hit.atoms.isdisjoint(work.placed)
        if (
            alone
            and hit.how == FULL
            and not any(work.line.under[i] for i in hit.atoms)
            and not _is_qualifier(work, hit.last)
        ):
            work.doubt("another known thing is named")
    first = min((i for i in work.placed | work.call.also), default=0)
    if sum(_is_content(work, i) for i in range(first)) >= _HEAD_LEFT:
        work.doubt("the head of the line found no place")
    content = [
        i
        for i in range(len(work.atoms))
        if i not in work.placed and _is_content(work, i) and not work.line.under[i]
    ]
    if len(content) >= _MANY_LEFT:
        work.doubt("many words found no place")
    unplaced_sides = [
        i for i, a in enumerate(work.atoms) if a.side and i not in work.placed and not work.line.under[i]
    ]
    if unplaced_sides:
        work.doubt("a side found no place")


def _is_qualifier(work: Work, at: int) -> bool:
    """Whether a placed name follows at once: "rad top hose" is the top hose."""
    return at < len(work.atoms) and at in work.placed and any(at in h.atoms for h in work.hits)


def _is_content(work: Work, at: int) -> bool:
    atom = work.atoms[at]
    return atom.sort == "word" and atom.low not in lexicon().glue
