"""An assembly meant by the last words of its name, or by the words its starting list goes by."""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.words.lexicon import Words, hint, stems
from witnessmark.words.naming import FULL, Hit
from witnessmark.words.runs import sequences
from witnessmark.words.vocabulary import Named
from witnessmark.words.work import Work

_FEWEST = 2
_SCORE = 100.0


def assembly_meant(work: Work) -> Hit | None:
    """The assembly a line means, where its kind of fact is told of whole assemblies.

    It takes two words or more, and more of them than any part or joint named in the same place.
    """
    if work.call.tag not in hint("of_assemblies"):
        return None
    best: Hit | None = None
    for named in work.vocabulary.names:
        if named.sort != "assembly":
            continue
        for words in _answers_to(named):
            for run in sequences(work.line, words):
                atoms = frozenset(i for c in run for i in range(c.first, c.last))
                if (best is None or len(atoms) > len(best.atoms)) and _is_best(work, atoms):
                    score = _SCORE + len(atoms)
                    best = Hit(min(atoms), max(atoms) + 1, named, FULL, score, atoms)
    return best


def _answers_to(named: Named) -> Iterator[Words]:
    """Runs of stems that stand for an assembly: tails of its name, and the words of its list."""
    size = len(named.stems)
    yield from (named.stems[size - kept :] for kept in range(_FEWEST, size + 1))
    for row in starting_lists().values():
        if row.name == named.plain:
            yield from (words for text in row.words if len(words := stems(text)) >= _FEWEST)


def _is_best(work: Work, atoms: frozenset[int]) -> bool:
    return all(
        len(h.atoms) < len(atoms) for h in work.hits if h.how == FULL and h.atoms & atoms
    ) and atoms.isdisjoint(work.call.atoms)
