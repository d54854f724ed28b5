"""Short forms as a cold thumb types them: "cvr", "hngr", "turnd", "missin", "eng"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from witnessmark.words.lexicon import lexicon, stem
from witnessmark.words.verbs import verb_words
from witnessmark.words.vocabulary import Vocabulary

_SHORTEST = 3
_CUT_OFF = 3
_VOWELS = frozenset("aeiouy")


def full_form(low: str, vocabulary: Vocabulary) -> tuple[str, bool] | None:
    """The word a short form stands for, and whether it may be another; None where it stands for none.

    A clipped ending counts where the whole word is known, letters left out where one word of the
    vehicle's own names has the rest of them in order between the same first and last, and the
    beginning of one where nothing else begins so. Letters left out of a word of the trade, and a
    beginning, are never sure.
    """
    clipped = next((w for w in _unclipped(low) if _is_spelt(w)), None)
    if clipped:
        return clipped, False
    if len(low) < _SHORTEST:
        return None
    own = _one(w for w in vocabulary.words if _is_left_out(low, w))
    if own:
        return own, False
    begun = _one(w for w in vocabulary.words if w.startswith(low) and len(w) >= len(low) + _CUT_OFF)
    if begun:
        return begun, True
    if not _VOWELS & set(low):
        known = lexicon()
        nouns = {w for words in (*known.parts, *known.heads) for w in words}
        trade = _one(w for w in nouns if _is_left_out(low.removesuffix("s"), w))
        return (trade, True) if trade else None
    return None


def _unclipped(low: str) -> Iterator[str]:
    if low.endswith("in"):
        yield low + "g"
    if low.endswith("d") and len(low) > _SHORTEST and low[-2] not in _VOWELS:
        yield low[:-1] + "ed"
        yield low[:-1] + low[-2] + "ed"


def _is_spelt(word: str) -> bool:
    known = lexicon()
    return word in verb_words() or word in known.every


def _is_left_out(low: str, word: str) -> bool:
    """Whether a word has these letters in order, the first and the last among them.

    >>> _is_left_out("hngr", "hanger"), _is_left_out("cvr", "cover"), _is_left_out("cvr", "carver")
    (True, True, False)
    """
    word = word if low.endswith("s") or not word.endswith("s") else stem(word)
    if len(word) <= len(low) or len(word) > 2 * len(low) + 1 or word[0] != low[0] or word[-1] != low[-1]:
        return False
    left = iter(word)
    spare = 1 if len(low) > _SHORTEST else 0
    return all(letter in left for letter in low) and _consonants(word) <= _consonants(low) + spare


def _consonants(word: str) -> int:
    """How many consonants a word has, doubled ones once."""
    return sum(a not in _VOWELS and a != b for a, b in zip(word, " " + word, strict=False))


def _one(words: Iterable[str]) -> str:
    """The only one of these words, singular and plural being one; "" where there are more or none."""
    found = sorted(set(words))
    return found[0] if found and len({stem(w) for w in found}) == 1 else ""
