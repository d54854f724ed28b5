"""What makes a reading doubtful beyond its builder's own doubts: turned words, second verbs, left names."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.choosing import CLEAR, CLEAR_BY_PHRASE, WHOLE_PHRASE, Choice
from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.matching import Call, is_verb
from witnessmark.words.misfits import note_misfits
from witnessmark.words.naming import FULL, is_noun
from witnessmark.words.strays import fits, note_strays
from witnessmark.words.work import Work

_MARGIN = 0.75
_TELLING = 1.6
_MANY_LEFT = 4
_HEAD_LEFT = 2
_SMALL = 2.0
_PLAIN = 2.9
_LOOSE = 2
_MAY_BE_MEANT = frozenset(
    {"wanted", "guessed", "left", "downed_tools", "offered", "remarked", "ordered", "sent_away"}
)
_MAY_BE_TURNED = frozenset(
    {"left", "wanted", "remarked", "found_behind", "nipped_up", "described_vehicle", "struck"}
)
_GOOD_WITHOUT = frozenset({"proved", "looked_at", "ran", "watched_fire", "turned", "found", "held", "came"})
_ALIKE = (
    frozenset({"took_off", "opened"}),
    frozenset({"tightened", "marked"}),
    frozenset({"fitted", "dry_fitted"}),
    frozenset({"proved", "looked_at"}),
    frozenset({"downed_tools", "nipped_up"}),
)


def note_doubts(work: Work, ranked: Sequence[Call]) -> None:
    """Add to a finished reading every doubt that its words as a whole raise."""
    tag = work.call.tag
    if work.call.atoms and all(work.line.under[i] for i in work.call.atoms):
        work.doubt("it is told only by the way")
    if work.call.doubted:
        work.doubt("it may be meant, not done")
    if any(work.atoms[i].shaky for i in work.call.atoms):
        work.doubt("the spelling may mean another word")
    if tag not in _MAY_BE_MEANT and any(_stands(work, i, "elsewhere") for i in range(len(work.atoms))):
        work.doubt("another time or hand may be meant")
    if _is_undone_again(work):
        work.doubt("it may have been undone again")
    if tag not in _MAY_BE_MEANT and _is_meant(work):
        work.doubt("it may be meant, not done")
    if tag not in _MAY_BE_TURNED and _is_turned(work, tag):
        work.doubt("a word may turn it round")
    if any(a.low in hint("contrasts") and i not in work.placed for i, a in enumerate(work.atoms)):
        work.doubt("it may not be the whole of it")
    _note_small_words(work)
    _note_rivals(work, ranked)
    _note_left_over(work)
    note_strays(work)
    note_misfits(work)


def note_unlikely(work: Work, choice: Choice) -> None:
    """A reading is sure only where the rules and the likelihood tell the same kind, and clearly."""
    tag = work.call.tag
    if tag not in choice.learned and tag == choice.first_by_rules:
        return
    alike = frozenset(kind for group in _ALIKE if tag in group for kind in group)
    if choice.first_by_rules not in {tag, *alike}:
        work.doubt("the words and their order tell different kinds of fact")
    told = choice.first_by_rules == tag and work.call.score >= WHOLE_PHRASE
    if choice.lead(tag, alike) < (CLEAR_BY_PHRASE if told else CLEAR):
        work.doubt("it may be another kind of fact")


def _stands(work: Work, at: int, name: str) -> bool:
    """Whether a word of a short list stands here and found no place."""
    return work.atoms[at].low in hint(name) and at not in work.placed and not work.line.under[at]


def _is_undone_again(work: Work) -> bool:
    """ "Off and on again", "off then back on"."""
    other = {"took_off": ("on", "back", "in"), "fitted": ("off", "out")}.get(work.call.tag, ())
    return any(
        atom.low in other and any(a.low in ("and", "then") for a in work.atoms[max(0, at - 3) : at])
        for at, atom in enumerate(work.atoms)
    ) or (
        work.call.tag == "fitted"
        and any(a.low == "off" and i not in work.told for i, a in enumerate(work.atoms))
    )


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
    if tag != "braced" and "back to front" in " ".join(a.low for a in work.atoms):
        return True
    for at, atom in enumerate(work.atoms):
        if atom.low not in known or at in work.placed or work.line.under[at]:
            continue
        if atom.low in ("no", "without", "nothing", "none") and tag in _GOOD_WITHOUT:
            continue
        if tag in _GOOD_WITHOUT and " ".join(a.low for a in work.atoms[at : at + 2]) == "not a":
            continue
        if tag == "looked_at" and at + 1 < len(work.atoms) and work.atoms[at + 1].low in ("moved", "shifted"):
            continue
        if (
            atom.low == "no"
            and at + 1 < len(work.atoms)
            and work.line.segment[at] > work.line.segment[min(work.call.atoms, default=at)]
        ):
            continue
        return True
    return False


def _note_verbs(work: Work) -> None:
    """Words like verbs that found no place say that something was not understood."""
    for at, atom in enumerate(work.atoms):
        if at not in work.placed and at not in work.told and not work.line.under[at] and is_verb(atom.low):
            work.doubt("a word like a verb found no place")


def _note_small_words(work: Work) -> None:
    """Where only "on" or "off", or one usual word, tells the fact: what it stands beside may turn it."""
    if work.call.score >= _PLAIN:
        return
    _note_verbs(work)
    for at in work.call.atoms if work.call.score < _SMALL else ():
        after = at + 1
        while after < len(work.atoms) and work.atoms[after].low in ("the", "a", "my"):
            after += 1
        if work.atoms[at].low in ("on", "in") and after < len(work.atoms) and is_noun(work.atoms[after].low):
            work.doubt("a small word may only tell where")
    if _loose_words(work) >= (1 if work.call.score < _SMALL else _LOOSE):
        work.doubt("words beside it found no place")


def _loose_words(work: Work) -> int:
    """How many words and numbers in the part of the line that tells the fact found no place."""
    segments = {work.line.segment[i] for i in work.told}
    passing = hint("passing") if work.call.score >= _SMALL else frozenset()
    return sum(
        (_is_content(work, i) and atom.low not in passing) or (atom.sort == "number" and not fits(work, i))
        for i, atom in enumerate(work.atoms)
        if i not in work.placed
        and i not in work.told
        and not work.line.under[i]
        and work.line.segment[i] in segments
    )


def _note_rivals(work: Work, ranked: Sequence[Call]) -> None:
    best = work.call
    for rival in ranked:
        same = rival.tag == best.tag or (rival.atoms and rival.atoms <= best.also)
        if same or any({rival.tag, best.tag} <= group for group in _ALIKE):
            continue
        if rival.score > best.score - _MARGIN and (rival.atoms or not best.atoms):
            work.doubt("it may be another kind of fact")
        elif rival.score >= _TELLING and _says_much(work, rival):
            work.doubt("a second thing is told")


def _says_much(work: Work, call: Call) -> bool:
    """Whether a verb of it found no place, or none of it did and it is more than small words."""
    known = lexicon()
    free = [work.atoms[i].low for i in call.atoms if i not in work.placed and i not in work.told]
    if len(free) < len(call.atoms):
        return any(is_verb(low) for low in free)
    return any(low not in known.glue | known.beside for low in free)


def _note_left_over(work: Work) -> None:
    """A whole name, or many words, that found no place; a name in a clause of its own with words left."""
    if work.call.tag != "downed_tools" and _is_elsewhere(work):
        work.doubt("the name stands in a clause of its own")
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


def _is_elsewhere(work: Work) -> bool:
    """Whether every name meant stands apart from the verb, beside words that found no place."""
    meant = [h for h in work.hits if h.atoms <= work.placed]
    told = {work.line.segment[i] for i in work.told}
    apart = {work.line.segment[h.first] for h in meant}
    if not meant or not told or told & apart:
        return False
    return any(
        work.line.segment[i] in apart and i not in work.placed and _is_content(work, i)
        for i in range(len(work.atoms))
    )


def _is_qualifier(work: Work, at: int) -> bool:
    """Whether a placed name follows at once: "rad top hose" is the top hose."""
    return at < len(work.atoms) and at in work.placed and any(at in h.atoms for h in work.hits)


def _is_content(work: Work, at: int) -> bool:
    atom = work.atoms[at]
    return atom.sort == "word" and atom.low not in lexicon().glue
