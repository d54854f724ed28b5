"""Things the record has not heard of: their name out of the words around it, their kind out of the name."""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz import fuzz, process

from witnessmark.ground.errors import BadInput
from witnessmark.vehicle.catalogue import UNSAID, catalogue
from witnessmark.vehicle.sides import whole_name
from witnessmark.vehicle.things import Joint, Part
from witnessmark.words.lexicon import Words, hint, lexicon, stem, stems
from witnessmark.words.naming import is_head, is_noun
from witnessmark.words.trade import trade
from witnessmark.words.verbs import verb_words
from witnessmark.words.work import Work

PART = "part"
DONOR = "donor"
MOST_CHOICES = 5
_LONGEST_NAME = 5


def phrase(work: Work, *, near_verb: bool = True) -> tuple[int, int] | None:
    """The run of free words that most likely names a thing, without small words at its ends."""
    runs = [r for r in _runs(work) if r[0] < r[1]]
    direct = any(is_plain_thing(work, r) and not _led_by_preposition(work, r[0]) for r in runs)
    scored = [(s, -r[0], r) for r in runs if (s := _score(work, r, near_verb, direct)) > 0]
    return _with_spare(work, max(scored)[2]) if scored else None


def _with_spare(work: Work, run: tuple[int, int]) -> tuple[int, int]:
    """A spare engine is another than the engine; what is bought is called by its name alone."""
    led = run[0] > 0 and work.atoms[run[0] - 1].low == "spare" and work.is_free(run[0] - 1)
    return (run[0] - 1, run[1]) if led and work.call.tag not in hint("bought") else run


def first_run(work: Work) -> tuple[int, int] | None:
    """The first run of free words behind the verb, whatever they are."""
    begin = min(work.told, default=0)
    return next((r for r in _runs(work) if r[0] >= begin), None)


def _runs(work: Work) -> list[tuple[int, int]]:
    """Free words side by side; prepositions, figures and marks part them."""
    found: list[tuple[int, int]] = []
    start: int | None = None
    for at in range(len(work.atoms) + 1):
        fits = at < len(work.atoms) and work.is_free(at) and _may_name(work, at)
        if fits and start is None:
            start = at
        if not fits and start is not None:
            found.append(_nominal(work, *work.tidy(start, at)))
            start = None
    return [r for r in found if r[0] < r[1] and (is_plain_thing(work, r) or _is_uncommon(work, r))]


def _is_uncommon(work: Work, run: tuple[int, int]) -> bool:
    """Whether a word in it is none of everyday English."""
    return any(work.atoms[i].low not in lexicon().plain for i in range(*run))


def _may_name(work: Work, at: int) -> bool:
    atom, known = work.atoms[at], lexicon()
    if at in work.passed or atom.value is not None:
        return False
    if tuple(a.low for a in work.atoms[at : at + 2]) in known.keep_start:
        return True
    if atom.sort == "side":
        follower = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
        return (
            " " not in atom.low and stem(follower) in known.keep_end and atom.low in ("front", "rear", "back")
        )
    if (
        atom.sort != "word"
        or atom.low in known.beside
        or atom.low in known.clause
        or atom.low in known.turning
    ):
        return False
    return atom.low not in ("and", "is", "are", "was", "were", "has", "had", "have", "then", "i", "we", "it")


def _nominal(work: Work, first: int, last: int) -> tuple[int, int]:
    """The run up to its last noun, where it has one: "steering lock now fights" is "steering lock"."""
    tools = {s.last - 1 for s in work.line.spans_of("tool")}
    nouns = [
        i
        for i in range(first, last)
        if is_head(work.atoms[i].low) or i in tools or (stem(work.atoms[i].low),) in lexicon().materials
    ]
    if not nouns:
        return first, last
    end = nouns[-1] + 1
    begin = end - 1
    while begin > first and end - begin < _LONGEST_NAME and _describes(work, begin - 1):
        begin -= 1
    return begin, end


def _describes(work: Work, at: int) -> bool:
    """Whether the word may stand inside a name before its noun."""
    low, known = work.atoms[at].low, lexicon()
    if tuple(a.low for a in work.atoms[at : at + 2]) in known.keep_start:
        return True
    if low in known.trim or low in known.glue:
        return False
    return is_noun(low) or work.atoms[at].sort == "side" or low not in verb_words() or low not in known.plain


def _score(work: Work, run: tuple[int, int], near_verb: bool, direct: bool) -> float:
    first, last = run
    score = 0.0
    if is_plain_thing(work, run):
        score += 3.0 + 0.2 * (last - first)
    touching = any(i in work.call.atoms for i in (first - 1, first - 2, last, last + 1))
    if near_verb and touching:
        score += 1.5
    if work.line.under[first]:
        score -= 1.5
    score -= 0.4 * work.line.segment[first]
    lead = _led_by_preposition(work, first)
    if lead and (direct or lead not in hint("inside") or not _is_main(work, first)):
        score -= 2.0 if near_verb else 0.5
    elif direct and _led_by_preposition(work, first, told=True):
        score -= 0.7
    if last - first > _LONGEST_NAME:
        score -= 2.0
    return score if score >= 1.0 else 0.0


def _is_main(work: Work, at: int) -> bool:
    return work.line.segment[at] in {work.line.segment[i] for i in work.told}


def _led_by_preposition(work: Work, first: int, *, told: bool = False) -> str:
    """The preposition that leads to a run, "" for none; one that tells the kind of fact where asked for."""
    at = first - 1
    while at >= 0 and work.atoms[at].low in ("the", "a", "an", "my", "its"):
        at -= 1
    led = at >= 0 and work.atoms[at].low in lexicon().beside and (told or at not in work.call.atoms)
    return work.atoms[at].low if led else ""


def is_plain_thing(work: Work, run: tuple[int, int]) -> bool:
    """Whether a phrase ends in a word that things, materials or tools are called by."""
    low = work.atoms[run[1] - 1].low
    return is_head(low) or (stem(low),) in lexicon().materials or is_tool(work, run)


def is_tool(work: Work, run: tuple[int, int]) -> bool:
    """Whether a phrase ends in a tool: bought and owned, but no thing of the vehicle."""
    return any(s.last == run[1] for s in work.line.spans_of("tool"))


# ---- kinds


def tell_kind(name: str) -> str:
    """The kind its name tells: a catalogue key, "part", or "" where it cannot be told.

    >>> tell_kind("track rod end nut"), tell_kind("tool tray"), tell_kind("swarf flinger")
    ('ball-joint-taper', 'part', '')
    """
    words = stems(name)
    bare = words
    while len(bare) > 1 and bare[-1] in hint("fasteners") and bare not in trade().kinds:
        bare = bare[:-1]
    for tried in (words, bare):
        for size in range(len(tried), 0, -1):
            found = trade().kinds.get(tried[-size:])
            if found and found != UNSAID:
                return found
    return PART if any(words[-size:] in lexicon().parts for size in range(len(words), 0, -1)) else ""


def kind_given(given: str) -> str:
    """A kind as a person answers it: its key, its name, one of its words, or "part".

    Raises BadInput where none of the kinds is meant.
    """
    plain = " ".join(given.lower().split())
    if plain == PART or plain.startswith("a part"):
        return PART
    kinds = catalogue()
    dashed = plain.replace(" ", "-")
    if dashed in kinds:
        return dashed
    if stems(plain) in trade().kinds:
        return trade().kinds[stems(plain)]
    near = process.extract(
        " ".join(stems(plain)), _spoken(), scorer=fuzz.token_set_ratio, limit=MOST_CHOICES, score_cutoff=60
    )
    if (
        near
        and near[0][1] >= 88
        and (len(near) == 1 or near[0][1] - near[1][1] > 6 or _same(near[0][2], near[1][2]))
    ):
        return trade().kinds[near[0][2]]
    raise BadInput(
        given=f"{given!r} is no kind of joint in the close-out catalogue",
        holds="a kind, as wheel-nuts or shaft-seal, `part` for a thing that only comes off, or `unsaid`",
        do="Choose one.",
        near=tuple(dict.fromkeys(trade().kinds[key] for _, _, key in near))[:3],
    )


def _same(a: Words, b: Words) -> bool:
    return trade().kinds[a] == trade().kinds[b]


def _spoken() -> dict[Words, str]:
    return {words: " ".join(words) for words in trade().kinds}


def kind_choices(name: str, first: Sequence[str] = ()) -> tuple[tuple[str, str], ...]:
    """Up to five kinds a new thing may be, the likeliest first; "part" and "unsaid" are always among them."""
    kinds = catalogue()
    near = process.extract(
        " ".join(stems(name)), _spoken(), scorer=fuzz.token_set_ratio, limit=12, score_cutoff=45
    )
    keys = list(dict.fromkeys((*first, *(trade().kinds[key] for _, _, key in near), "plain-fixing")))
    likely = [k for k in keys if k in kinds and k != UNSAID][: MOST_CHOICES - 2]
    return (
        *((k, kinds[k].name) for k in likely),
        (PART, "a part, not a joint"),
        (UNSAID, kinds[UNSAID].name),
    )


def _take_donor(work: Work) -> str:
    """ "On the donor": a part that has still to come off another vehicle."""
    at = next((i for i, a in enumerate(work.atoms) if a.low == "donor" and work.is_free(i)), None)
    if at is None:
        return DONOR if any(p.where == DONOR for p in work.parts) else ""
    lead = at - 1
    while lead > 0 and work.atoms[lead].low in ("the", "my", "a"):
        lead -= 1
    if lead < 0 or work.atoms[lead].low not in ("on", "off", "from", "of"):
        return ""
    work.place(lead, at + 1)
    return DONOR


def bring_in(work: Work, name: str, side: str, kind: str, number: int = 1) -> str:
    """Describe a new part or joint; its whole name."""
    whole = whole_name(name, side)
    if kind == PART:
        work.parts.append(Part(name=whole, side=side, number=number, where=_take_donor(work)))
    else:
        work.joints.append(Joint(name=whole, kind=kind or UNSAID, side=side, number=number))
    return whole
