"""Checks, asks of a gate and things upset, known by their names however the words stand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from types import MappingProxyType

from rapidfuzz import fuzz

from witnessmark.tables.read import read_table
from witnessmark.words.atoms import Canon
from witnessmark.words.lexicon import Words, lexicon, stems
from witnessmark.words.naming import is_head
from witnessmark.words.trade import Answerable, trade
from witnessmark.words.work import Work

_WIDEST = 8
_LIKE = 87


@cache
def _irregular() -> Mapping[str, str]:
    return MappingProxyType(read_table("words/hints")["roots"])


def root(word: str) -> str:
    """A word without its ending, so that "held", "holding" and "hold" are one.

    >>> root("adjustment"), root("holding"), root("bled"), root("tracking"), root("firm")
    ('adjust', 'hold', 'bleed', 'track', 'firm')
    """
    if word in _irregular() or word.endswith("eed"):
        return _irregular().get(word, word)
    for ending in ("ment", "ing", "ed"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            bare = word[: -len(ending)]
            return bare[:-1] if len(bare) > 3 and bare[-1] == bare[-2] and bare[-1] not in "ls" else bare
    return word[:-1] if word.endswith("e") and len(word) > 4 else word


@cache
def _by_roots() -> Mapping[frozenset[str], tuple[tuple[Words, Answerable], ...]]:
    found: dict[frozenset[str], list[tuple[Words, Answerable]]] = {}
    for words, answer in trade().answers.items():
        roots = frozenset(root(w) for w in words if w not in lexicon().glue)
        found.setdefault(roots or frozenset(words), []).append((words, answer))
    return MappingProxyType({roots: tuple(rows) for roots, rows in found.items()})


def find_answer(work: Work, at: Sequence[str], *, upsets_first: bool = False) -> Answerable | None:
    """The check, ask or upset a line names, its words placed; those of the joints named come first.

    A name that is only like one, or whose only word is also a thing's, is doubted.
    """
    exact = _exact(work)
    if exact is not None:
        work.placed |= exact[1]
        work.taken |= exact[1]
        return exact[0]
    kinds = {work.vocabulary.vehicle.joints[w].kind for w in at if w in work.vocabulary.vehicle.joints}
    kinds |= {j.kind for j in work.joints}
    windows = _windows(work)
    best: tuple[tuple[float, ...], Answerable, frozenset[int]] | None = None
    for canon, atoms in windows:
        if len(canon) == 1 and _is_qualified(work, canon[0]):
            continue
        roots = frozenset(root(c.stem) for c in canon)
        for words, answer in _by_roots().get(roots, ()):
            rank = _rank(words, canon, answer, kinds, atoms, upsets_first)
            if best is None or rank > best[0]:
                best = (rank, answer, atoms)
    if best is None:
        return _alike(work, windows)
    if len(best[2]) == 1 and len(stems(best[1].name)) > 1:
        work.doubt("only one word of it was typed")
    if len({work.line.segment[i] for i in best[2]}) > 1 or _is_scattered(work, best[2]):
        work.doubt("the check is told by words that stand apart")
    if not work.call.atoms or _same_segment(work, best[2]):
        work.placed |= best[2]
        work.taken |= best[2]
    return best[1]


def _is_scattered(work: Work, atoms: frozenset[int]) -> bool:
    """Whether a word that tells something stands between the words of the check."""
    known = lexicon()
    between = [i for i in range(min(atoms), max(atoms)) if i not in atoms and work.atoms[i].sort == "word"]
    return any(work.is_free(i) and work.atoms[i].low not in known.glue | known.trim for i in between)


def _is_qualified(work: Work, canon: Canon) -> bool:
    """Whether a noun before the one word makes it a thing of its own: "drive belt" is no seat belt."""
    before, known = canon.first - 1, lexicon()
    if before < 0 or work.atoms[before].sort != "word" or not work.is_free(before) or before in work.told:
        return False
    small = known.glue | known.trim | known.beside | known.clause | known.turning
    return is_head(work.atoms[canon.first].low) and work.atoms[before].low not in small


def _same_segment(work: Work, atoms: frozenset[int]) -> bool:
    """Words behind a comma stay in the remark as well: they tell what was seen."""
    told = {work.line.segment[i] for i in work.call.atoms}
    return any(work.line.segment[i] in told for i in atoms)


def take_named(work: Work) -> Answerable | None:
    """A check, ask or upset by its whole name of two words or more, where no longer name holds it."""
    exact = _exact(work)
    if exact is None:
        return None
    answer, atoms = exact
    if len(atoms) < 2 or any(atoms <= hit.atoms for hit in work.hits if hit.how == "full"):
        return None
    work.placed |= atoms
    work.taken |= atoms
    return answer


def _exact(work: Work) -> tuple[Answerable, frozenset[int]] | None:
    """The longest run of stems that is the very name of a check, an ask or an upset."""
    canon = work.line.canon
    best: tuple[int, Answerable, frozenset[int]] | None = None
    for begin in range(len(canon)):
        for end in range(begin + 1, min(begin + _WIDEST, len(canon)) + 1):
            run = canon[begin:end]
            atoms = _atoms_of(run)
            typed = trade().typed.get(tuple(work.atoms[i].low for i in sorted(atoms)))
            answer = typed or trade().answers.get(tuple(c.stem for c in run))
            free = all(work.is_free(i) or i in work.told for i in atoms) and not _cuts_a_name(work, atoms)
            if (
                answer
                and free
                and stems(answer.name) == tuple(c.stem for c in run)
                and (best is None or len(run) > best[0])
            ):
                best = (len(run), answer, atoms)
    return (best[1], best[2]) if best else None


def _cuts_a_name(work: Work, atoms: frozenset[int]) -> bool:
    """Whether the words begin within a whole name: "tail lamp" in "tail lamp lit" is no lamp alone."""
    return any(
        h.how == "full" and h.atoms & atoms and not (h.atoms <= atoms or atoms <= h.atoms) for h in work.hits
    )


def _windows(work: Work) -> list[tuple[list[Canon], frozenset[int]]]:
    """Runs of up to eight stems that are free or tell the kind of fact, and each with one left out."""
    usable = [
        c
        for c in work.line.canon
        if all(work.is_free(i) or i in work.call.atoms for i in range(c.first, c.last))
        and not work.line.under[c.first]
        and c.stem not in lexicon().glue
    ]
    found = []
    for begin in range(len(usable)):
        for end in range(begin + 1, min(begin + _WIDEST, len(usable)) + 1):
            run = usable[begin:end]
            found.append((run, _atoms_of(run)))
            if len(run) > 2:
                found += [
                    (kept, _atoms_of(kept))
                    for skip in range(1, len(run) - 1)
                    if (kept := run[:skip] + run[skip + 1 :])
                ]
    return found


def _atoms_of(run: Sequence[Canon]) -> frozenset[int]:
    return frozenset(i for c in run for i in range(c.first, c.last))


def _rank(
    words: Words,
    canon: Sequence[Canon],
    answer: Answerable,
    kinds: set[str],
    atoms: frozenset[int],
    upsets_first: bool,
) -> tuple[float, ...]:
    in_order = words == tuple(c.stem for c in canon)
    fits = bool(answer.kinds & kinds) if kinds else answer.sort == ("upset" if upsets_first else "ask")
    spread = max(atoms) - min(atoms)
    return (
        len(words),
        float(fits),
        float((answer.sort == "upset") == upsets_first),
        float(in_order),
        -spread,
    )


def _alike(work: Work, windows: Sequence[tuple[list[Canon], frozenset[int]]]) -> Answerable | None:
    """A name spelt nearly so, as it was typed."""
    best: tuple[float, Answerable, frozenset[int]] | None = None
    for canon, atoms in windows:
        if len(canon) < 2 or max(atoms) - min(atoms) >= len(canon):
            continue
        said = " ".join(work.words(i, i + 1).lower() for i in sorted(atoms))
        for words, answer in trade().typed.items():
            if len(words) != len(atoms) or words[0][0] != said[0]:
                continue
            likeness = fuzz.ratio(said, " ".join(words))
            if likeness >= _LIKE and (best is None or likeness > best[0]):
                best = (likeness, answer, atoms)
    if best is None:
        return None
    work.doubt("the check is only spelt like this")
    work.placed |= best[2]
    return best[1]
