"""What a line is about: which of the names in it are meant, and on which side."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.assemblies import assembly_meant
from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.naming import FULL, HEADLESS, LOOSE, TAIL, Hit, is_noun
from witnessmark.words.resolving import resolve
from witnessmark.words.sided import sides_for
from witnessmark.words.work import Work


def known_subjects(work: Work) -> tuple[str, ...]:
    """Whole names of the known things the line is about; what is unclear becomes a doubt."""
    whole = assembly_meant(work)
    chosen = [whole] if whole else choose(work)
    if not chosen:
        return ()
    wholes: list[str] = []
    for hit in chosen:
        sides = sides_for(work, hit, chosen)
        wholes += [w for w in resolve(work, hit, sides) if w not in wholes]
    for hit in chosen:
        work.placed |= hit.atoms
    _note_names(work, chosen)
    return tuple(wholes)


def _note_names(work: Work, chosen: Sequence[Hit]) -> None:
    first = chosen[0]
    work.name = first.named.plain
    if first.how == HEADLESS or (first.doubted and first.first - 1 not in work.taken):
        work.doubt("the name may be another thing's")
    if first.how == TAIL and len(first.atoms) == 1 < len(first.named.stems) and _is_bare(work, first):
        work.doubt("only the last word of its name was typed")
    if first.how == LOOSE:
        work.doubt("only some words of the name were typed")
    if any(hit.rivals for hit in chosen):
        work.doubt("two names fit")
    if any(work.atoms[i].shaky for hit in chosen for i in hit.atoms):
        work.doubt("the spelling may mean another word")


def _is_bare(work: Work, hit: Hit) -> bool:
    """Whether the one word typed is said of many things, or a strange word before it tells of another."""
    before = hit.first - 1
    while before >= 0 and work.atoms[before].sort in ("side", "number"):
        before -= 1
    known = lexicon()
    small = known.glue | known.trim | known.beside | known.clause | known.turning | hint("new") | hint("old")
    strange = before >= 0 and work.atoms[before].sort == "word" and work.is_free(before)
    named = strange and work.atoms[before].low not in small and before not in work.told
    return named or hit.named.stems[-1] in hint("bare")


def choose(work: Work) -> list[Hit]:
    """The hits meant: those of the main clause in no phrase of place or means, and what is joined to them."""
    free = [h for h in work.hits if not (h.atoms & work.call.atoms) or work.call.atoms - h.atoms]
    free = [h for h in free if h.atoms.isdisjoint(work.taken)]
    if any(h.how == FULL for h in free):
        free = [h for h in free if h.how == FULL or not _is_item(work, h)]
    solid = [h for h in free if h.how != HEADLESS and h.score > 0] or _last_resort(work, free)
    if not solid:
        return []
    main = [h for h in solid if not work.line.under[h.first]] or solid
    direct = [h for h in main if not _is_beside(work, h)] or main
    groups = _groups(work, direct)
    best = max(groups, key=lambda g: _group_score(work, g))
    if len(groups) > 1 and _are_rivals(work, best, groups):
        work.doubt("two things are named")
    return best


def _is_item(work: Work, hit: Hit) -> bool:
    """Whether the words are also those of a renewable of two words or more."""
    spans = [s for s in work.line.spans_of("item") if s.last - s.first > 1]
    return any(hit.atoms <= set(range(s.first, s.last)) for s in spans)


def _last_resort(work: Work, free: Sequence[Hit]) -> list[Hit]:
    """A name by its first words only counts where no new thing is plainly named."""
    return [h for h in free if h.score > 0 and not _grows(work, h)]


def _grows(work: Work, hit: Hit) -> bool:
    at = hit.last
    return at < len(work.atoms) and work.atoms[at].sort == "word" and is_noun(work.atoms[at].low)


def _is_beside(work: Work, hit: Hit) -> bool:
    """Whether a preposition that does not belong to the verb leads to it."""
    at = hit.first - 1
    while at >= 0 and (
        work.atoms[at].low in hint("passed_over") or work.atoms[at].sort in ("side", "number")
    ):
        at -= 1
    return at >= 0 and work.atoms[at].low in lexicon().beside and at not in work.call.atoms


def _groups(work: Work, hits: Sequence[Hit]) -> list[list[Hit]]:
    """Hits joined by "and" or a comma stand together; of two that touch, the first tells of the second."""
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
    if any(low not in hint("links") and low != "," for low in lows):
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
