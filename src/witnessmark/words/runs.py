"""Stems of a name found in a line: in order, run together, or the last of them first."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.words.atoms import Canon
from witnessmark.words.lexicon import hint
from witnessmark.words.line import Line
from witnessmark.words.verbs import verb_words

_SKIPPED = frozenset({"the", "of", "a"})
_WIDEST_LINK = 5


def sequences(line: Line, words: Sequence[str]) -> list[list[Canon]]:
    """Every place where these stems stand in order, sides and articles between them passed over."""
    found = []
    for at, canon in enumerate(line.canon):
        if canon.stem == words[0]:
            run = _follow(line, at, words)
            if run:
                found.append(run)
    return found


def _follow(line: Line, at: int, words: Sequence[str]) -> list[Canon]:
    run = [line.canon[at]]
    at += 1
    for word in words[1:]:
        while at < len(line.canon) and line.canon[at].stem != word and _passed_over(line, at, run[-1]):
            at += 1
        if at >= len(line.canon) or line.canon[at].stem != word or not _adjoin(line, run[-1], line.canon[at]):
            return []
        run.append(line.canon[at])
        at += 1
    return run


def _passed_over(line: Line, at: int, before: Canon) -> bool:
    canon = line.canon[at]
    if canon.stem in hint("positions") and _adjoin(line, before, canon):
        return True
    return _adjoin(line, before, canon) and (line.atoms[canon.first].sort == "side" or canon.stem in _SKIPPED)


def _adjoin(line: Line, a: Canon, b: Canon) -> bool:
    """No mark or figure between two stems."""
    return all(line.atoms[i].sort in ("word", "side") for i in range(a.last, b.first))


def run_together(line: Line, stems: Sequence[str]) -> list[list[Canon]]:
    whole = "".join(stems)
    return [[c] for c in line.canon if len(stems) > 1 and c.stem == whole]


def is_led(line: Line, first: int, last: int) -> int:
    """1 where a preposition leads from one run to another, 2 where a verb stands there too, else 0."""
    between = line.atoms[first:last]
    if not 0 < len(between) <= _WIDEST_LINK or any(a.sort not in ("word", "side") for a in between):
        return 0
    lows = [a.low for a in between if a.sort == "word"]
    verbs = [low for low in lows if low not in hint("ties") and low not in hint("passed_over")]
    if (
        not any(low in hint("ties") for low in lows)
        or len(verbs) > 1
        or any(v not in verb_words() for v in verbs)
    ):
        return 0
    return 2 if verbs else 1
