"""How likely each kind of fact is by the words of a line: a linear model learned from invented lines.

The model is multinomial logistic regression over the telltales of a line. It is learned by
scripts/learn_likelihood.py; here its weights are only added up.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import exp, log

from witnessmark.tables.weights import read_weights
from witnessmark.words.line import Line
from witnessmark.words.naming import Hit, is_noun
from witnessmark.words.telltales import telltales, words_alone

WEIGHTS = "words/likelihood"
_SPEAKS = 0.8


def likelihoods(line: Line, hits: Sequence[Hit]) -> Mapping[str, float]:
    """The natural logarithm of the likelihood of each kind of fact; their exponentials add up to one."""
    weights = read_weights(WEIGHTS)
    scores = weights.scores(telltales(line, hits))
    top = max(scores)
    total = top + log(sum(exp(score - top) for score in scores))
    return {kind: score - total for kind, score in zip(weights.kinds, scores, strict=True)}


def telling(line: Line, hits: Sequence[Hit], kind: str) -> frozenset[int]:
    """The plain words of a line that speak for a kind, where no phrase of the rules tells which they are."""
    weights = read_weights(WEIGHTS)
    named = {at for hit in hits for at in hit.atoms}
    return frozenset(
        at
        for at, atom in enumerate(line.atoms)
        if atom.sort == "word"
        and at not in named
        and not is_noun(atom.low)
        and sum(weights.speaks(telltale, kind) for telltale in words_alone(line, atom)) > _SPEAKS
    )
