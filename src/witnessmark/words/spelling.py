"""Slips of spelling mended towards the words of this vehicle and of the trade, and no further."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace
from rapidfuzz import process
from rapidfuzz.distance import OSA

from witnessmark.words.lexicon import hint, lexicon, stem
from witnessmark.words.shortforms import full_form
from witnessmark.words.tokens import Token
from witnessmark.words.verbs import verb_words
from witnessmark.words.vocabulary import SHORTEST_MENDED, Vocabulary

_LONG = 8


class Mended(Struct, frozen=True):
    """A token after mending; `shaky` where another word lies as near, or the word turns what is meant."""

    token: Token
    mended: bool = False
    shaky: bool = False


def mend(token: Token, vocabulary: Vocabulary) -> Mended:
    """The token with its spelling mended, or as it is.

    A word is mended when it is of five letters or more, is known nowhere, and one known word with
    the same first letter lies one slip away (two from eight letters on). One of four letters is
    mended only to a word of the vehicle's own names, and doubted. Short forms come before slips.
    """
    low = lexicon().shorthand.get(token.low, token.low)
    if low != token.low:
        return Mended(replace(token, low=low), mended=True)
    if token.sort == "word" and low.isalpha() and not _is_known(low, vocabulary):
        whole = full_form(low, vocabulary)
        if whole is not None:
            return Mended(replace(token, low=whole[0]), mended=True, shaky=whole[1])
    short = len(low) < SHORTEST_MENDED
    if (
        token.sort != "word"
        or len(low) < SHORTEST_MENDED - 1
        or not low.isalpha()
        or _is_known(low, vocabulary)
    ):
        return Mended(token)
    slips = 2 if len(low) >= _LONG else 1
    near = process.extract(
        low, vocabulary.mends.get(low[0], ()), scorer=OSA.distance, score_cutoff=slips, limit=6
    )
    near = [found for found in near if _may_be(low, found[0], vocabulary)]
    if not near:
        return Mended(token)
    past = low.endswith("d")
    ranked = sorted(
        near,
        key=lambda found: (
            found[1],
            found[0] not in vocabulary.words,
            past and not found[0].endswith("ed"),
            found[0],
        ),
    )
    best, slip, _ = ranked[0]
    rivals = [w for w, s, _ in ranked[1:] if s == slip and stem(w) != stem(best)]
    own = best in vocabulary.words
    strange = not own and best not in verb_words()
    shaky = short or strange or any(own == (w in vocabulary.words) for w in rivals) or best in hint("turning")
    return Mended(replace(token, low=best), mended=True, shaky=shaky)


def _may_be(typed: str, word: str, vocabulary: Vocabulary) -> bool:
    """Whether a slip may be that word: "washed" is no washer, and short words are only the vehicle's own."""
    if not all(typed.endswith(ending) == word.endswith(ending) for ending in ("ed", "ing")):
        return False
    return len(typed) >= SHORTEST_MENDED or (word in vocabulary.words and len(word) == len(typed))


def _is_known(low: str, vocabulary: Vocabulary) -> bool:
    known = lexicon()
    if low in known.every or low in vocabulary.words or low in verb_words():
        return True
    return stem(low) in known.every or stem(low) in vocabulary.by_stem
