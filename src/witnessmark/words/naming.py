"""Names of this vehicle found in a line, whole or by the part of them a person types."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.words.atoms import Canon, Span
from witnessmark.words.lexicon import hint, lexicon, lows, stem
from witnessmark.words.line import Line
from witnessmark.words.proper import proper_runs
from witnessmark.words.runs import is_led, run_together, sequences
from witnessmark.words.trade import trade
from witnessmark.words.verbs import verb_words
from witnessmark.words.vocabulary import Named, Vocabulary

FULL, TAIL, LOOSE, HEADLESS = "full", "tail", "loose", "headless"


class Hit(Struct, frozen=True):
    """A name found.

    first, last  span of atoms
    named        the name meant
    how          full: every word · tail: its last words · loose: some words · headless: its first words only
    atoms        the atoms its words came from
    rivals       other names that fit the same words as well
    doubted      a word beside it says it may be another thing
    """

    first: int
    last: int
    named: Named
    how: str
    score: float
    atoms: frozenset[int]
    rivals: tuple[Named, ...] = ()
    doubted: bool = False


def find_names(line: Line, vocabulary: Vocabulary) -> tuple[Hit, ...]:
    """Every name in a line, in order; of those that overlap the better one, its rivals noted."""
    candidates = [hit for place in _near(line, vocabulary) for hit in _hits(line, vocabulary.names[place])]
    wider = [s for s in (*line.spans_of("stand"), *line.spans_of("item")) if s.last - s.first > 1]
    candidates = [h for h in candidates if not any(_is_inside(h, s) for s in wider)]
    firms = {i for first, last in proper_runs(line, vocabulary) for i in range(first, last)}
    candidates = [h for h in candidates if firms.isdisjoint(h.atoms)]
    candidates.sort(key=lambda h: (-h.score, h.first, h.named.plain))
    chosen: list[Hit] = []
    for hit in candidates:
        if not any(hit.atoms & other.atoms for other in chosen):
            rivals = _rivals(hit, candidates)
            chosen.append(
                Hit(hit.first, hit.last, hit.named, hit.how, hit.score, hit.atoms, rivals, hit.doubted)
            )
    return tuple(sorted(chosen, key=lambda h: h.first))


def _is_inside(hit: Hit, span: Span) -> bool:
    """Whether a longer phrase that is no name of the vehicle holds the hit: "hub" in "hub split pin"."""
    return span.first <= hit.first and hit.last <= span.last and span.last - span.first > hit.last - hit.first


def _near(line: Line, vocabulary: Vocabulary) -> list[int]:
    places = {p for canon in line.canon for p in vocabulary.by_stem.get(canon.stem, ())}
    joined = {c.stem for c in line.canon if len(c.stem) > 5}
    if joined:
        places |= {
            p for p, n in enumerate(vocabulary.names) if len(n.stems) > 1 and "".join(n.stems) in joined
        }
    return sorted(places)


def _rivals(hit: Hit, candidates: Sequence[Hit]) -> tuple[Named, ...]:
    """Names that fit the very same words nearly as well: "seal" may be any seal."""
    found = [
        c.named
        for c in candidates
        if c.named is not hit.named and c.atoms == hit.atoms and hit.score - c.score < 9
    ]
    return (
        tuple({named.plain: named for named in found}.values())
        if hit.how != FULL
        else tuple(
            c.named
            for c in candidates
            if c.named is not hit.named and c.atoms == hit.atoms and c.how == FULL and c.score == hit.score
        )
    )


def _hits(line: Line, named: Named) -> list[Hit]:
    """The ways one name may be meant; the best kind only."""
    size = len(named.stems)
    whole = sequences(line, named.stems) or run_together(line, named.stems)
    if whole:
        return [_hit(line, named, run, FULL, 100 + 10 * size + _as_typed(line, run, named)) for run in whole]
    turned = _turned_round(line, named)
    if turned:
        return turned
    for kept in range(size - 1, 0, -1):
        tails = [r for r in sequences(line, named.stems[size - kept :]) if not _qualified(line, r, named)]
        if tails and kept == 1 and size > 2 and (loose := _loose(line, named)):
            return loose
        if tails:
            score = 60 + 8 * kept - 3 * (size - kept) - (12 if kept == 1 and _is_head(named.stems[-1]) else 0)
            return [_hit(line, named, run, TAIL, score) for run in tails]
    return _loose(line, named) or _headless(line, named)


def _as_typed(line: Line, run: Sequence[Canon], named: Named) -> float:
    """A little more where the very words were typed: "doors" before "door"."""
    atoms = sorted({i for c in run for i in range(c.first, c.last)})
    return 2.0 if tuple(line.atoms[i].low for i in atoms) == lows(named.plain) else 0.0


def _hit(line: Line, named: Named, run: Sequence[Canon], how: str, score: float) -> Hit:
    atoms = frozenset(i for c in run for i in range(c.first, c.last))
    first, last = min(atoms), max(atoms) + 1
    doubted = how == FULL and (_qualified(line, run, named) or _skips_position(line, run))
    if _continued(line, run):
        score, how, doubted = score - 70, HEADLESS if how == FULL else how, True
    return Hit(first, last, named, how, score, atoms, (), doubted)


def _skips_position(line: Line, run: Sequence[Canon]) -> bool:
    """ "Lower" between the words of a name may tell another thing."""
    own = {i for c in run for i in range(c.first, c.last)}
    return any(line.atoms[i].low in hint("positions") and i not in own for i in range(min(own), max(own)))


def _turned_round(line: Line, named: Named) -> list[Hit]:
    """The last words first: "patch in the wheel well", "gasket went on the float chamber"."""
    size = len(named.stems)
    for kept in range(1, size):
        heads = [r for r in sequences(line, named.stems[size - kept :]) if not _qualified(line, r, named)]
        bodies = sequences(line, named.stems[: size - kept]) if heads else []
        for head in heads:
            for body in bodies:
                led = is_led(line, head[-1].last, body[0].first)
                if led:
                    score = 98 + 10 * size - 2 * (led > 1)
                    hit = _hit(line, named, [*head, *body], FULL, score)
                    return [replace(hit, doubted=hit.doubted or led > 1)]
    return []


def _loose(line: Line, named: Named) -> list[Hit]:
    """Some of the words in order, the last among them: "steering bolts" for "steering box bolts"."""
    size = len(named.stems)
    for at, canon in enumerate(line.canon):
        if canon.stem != named.stems[-1] or size < 2:
            continue
        run, place, left = [canon], size - 1, at - 1
        while (
            left >= 0
            and line.canon[left].last == run[0].first
            and line.canon[left].stem in named.stems[:place]
        ):
            place = named.stems.index(line.canon[left].stem)
            run.insert(0, line.canon[left])
            left -= 1
        if len(run) > 1 and not _qualified(line, run, named):
            return [_hit(line, named, run, LOOSE, 50 + 6 * len(run) - 3 * (size - len(run)))]
    return []


def _headless(line: Line, named: Named) -> list[Hit]:
    """Only the first words: "hub" where the record knows a hub nut. Never more than a suspicion."""
    size = len(named.stems)
    for kept in range(size - 1, 0, -1):
        runs = [r for r in sequences(line, named.stems[:kept]) if not _qualified(line, r, named)]
        if runs:
            return [_hit(line, named, run, HEADLESS, 22 + 5 * kept - 2 * (size - kept)) for run in runs]
    return []


def _qualified(line: Line, run: Sequence[Canon], named: Named) -> bool:
    """Whether a noun before it makes it another thing: "fuel hose" is no brake hose."""
    before = run[0].first - 1
    if before < 0 or line.atoms[before].sort != "word" or _ends_another(line, before):
        return False
    low = line.atoms[before].low
    return is_noun(low) and stem(low) not in named.stems


def _ends_another(line: Line, at: int) -> bool:
    """Whether a renewable, a dimension or a product ends here: "split pin hub nut" are two things."""
    ended = {
        s.last - 1
        for group in line.spans.values()
        for s in group
        if s.cls in ("item", "dimension", "product", "fluid")
    }
    return at in ended


def _continued(line: Line, run: Sequence[Canon]) -> bool:
    """Whether a noun behind it makes it the first half of another name: "wing mirror" is no wing."""
    at = run[-1].last
    while at < len(line.atoms) and line.atoms[at].low in hint("positions"):
        at += 1
    if at >= len(line.atoms) or line.atoms[at].sort != "word":
        return False
    if any(
        s.cls in ("dimension", "fluid", "condition", "item", "product", "blank")
        for s in line.spans.get(at, ())
    ):
        return False
    low = line.atoms[at].low
    if low in hint("spots"):
        return False
    return is_noun(low) and (low not in verb_words() or low in hint("goes_on"))


def _is_head(word: str) -> bool:
    return (word,) in lexicon().heads


def is_noun(low: str) -> bool:
    """Whether a word is one that things on a vehicle are called by.

    >>> is_noun("bracket"), is_noun("yesterday"), is_noun("removed")
    (True, False, False)
    """
    known = lexicon()
    if low in known.glue or low in known.trim or low in known.beside or low in known.clause or low in _past():
        return False
    return _usual(low) in _nouns()


def is_head(low: str) -> bool:
    """Whether a word can be the last of a thing's name.

    >>> is_head("bracket"), is_head("steering")
    (True, False)
    """
    return is_noun(low) and _usual(low) in _last_words()


def _usual(low: str) -> str:
    """The stem of a word in the trade's one spelling: "diffs" is a differential."""
    return stem(lexicon().alias.get(low, (low,))[-1])


@cache
def _last_words() -> frozenset[str]:
    known = lexicon()
    return frozenset(words[-1] for words in (*known.parts, *known.heads, *trade().kinds) if words)


@cache
def _past() -> frozenset[str]:
    """Words of the phrases that are verbs by their ending: "welded" is no noun in "welded patch"."""
    return frozenset(w for w in verb_words() if w.endswith("ed"))


@cache
def _nouns() -> frozenset[str]:
    """Stems of every name of a part, a joint or a kind; ordinary verbs among them are left out."""
    known = lexicon()
    names = (*known.parts, *known.heads, *known.materials, *trade().kinds)
    tools = (words for words in known.phrases["tool"])
    return frozenset(stem(w) for words in (*names, *tools) for w in words if w not in hint("no_nouns"))
