"""Names of people and firms in a line: words with a capital of which one at least is known nowhere."""

from __future__ import annotations

from witnessmark.words.lexicon import lexicon, stem
from witnessmark.words.line import Line
from witnessmark.words.verbs import verb_words
from witnessmark.words.vocabulary import Vocabulary

_SHORTEST = 3


def proper_runs(line: Line, vocabulary: Vocabulary) -> tuple[tuple[int, int], ...]:
    """Spans of atoms, last excluded. At the head of a line, where any word has a capital, two are needed."""
    runs: list[tuple[int, int]] = []
    at = 0
    while at < len(line.atoms):
        last = at
        while last < len(line.atoms) and _is_capital(line, last) and not _is_parted(line, at, last):
            last += 1
        if last > at:
            if any(is_unknown(line, i, vocabulary) for i in range(at, last)) and (
                _follows(line, at) or last - at > 1
            ):
                runs.append((at, last))
            at = last
        else:
            at += 1
    return tuple(runs)


def is_unknown(line: Line, at: int, vocabulary: Vocabulary) -> bool:
    """Whether a word, as it was typed, is none of the trade, of the vehicle or of plain English."""
    atom = line.atoms[at]
    low = line.words(at, at + 1).lower().replace("'", "").replace("’", "")
    if atom.sort != "word" or len(low) < _SHORTEST or not low.isalpha():
        return False
    known = lexicon()
    return not (
        low in known.every
        or stem(low) in known.every
        or low in verb_words()
        or low in vocabulary.words
        or stem(low) in vocabulary.by_stem
    )


def _is_capital(line: Line, at: int) -> bool:
    text = line.words(at, at + 1)
    return line.atoms[at].sort == "word" and text[:1].isupper() and not text.isupper()


def _is_parted(line: Line, first: int, at: int) -> bool:
    return at > first and line.atoms[at].start > line.atoms[at - 1].end + 1


def _follows(line: Line, at: int) -> bool:
    """Whether it stands within a sentence, where a capital says something."""
    return at > 0 and line.atoms[at - 1].low not in (".", "!", "?")
