"""The kinds of fact a line may be, in the order that the rules and the likelihood give them together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cached_property

from witnessmark.words.likelihood import likelihoods, telling
from witnessmark.words.line import Line
from witnessmark.words.matching import Call, calls
from witnessmark.words.naming import Hit

# What one point of a phrase is worth beside the logarithm of a likelihood: tuned on lists left out.
RULES_COUNT = 0.5
# By how much, in natural logarithms, the kind must outweigh every other where a reading is to be sure;
# less where a whole phrase at its usual place tells it.
CLEAR, CLEAR_BY_PHRASE = 2.0, 0.5
WHOLE_PHRASE = 3.4
# The record's own word at the head of a line counts so much more; such a call scores so high, and no other.
_OWN_WORD = 4.0
_DECISIVE = 4.05
_LEAST = 0.85
_NEAR = 2.5
_MOST = 5
REMARKED = "remarked"
# What pays a debt is never told by the company of words alone: some word must say it.
_SPOKEN = frozenset({"proved", "put_right", "watched_fire", "closed"})


class Choice:
    """What may be told, weighed.

    ranked  the calls of the rules alone, best first
    likely  the logarithm of the likelihood of every kind
    learned  the kinds that lines were learned from; of the others the rules alone tell
    """

    def __init__(self, line: Line, hits: tuple[Hit, ...]) -> None:
        self.line, self.hits = line, hits
        self.ranked = [c for c in calls(line, hits) if c.score >= _LEAST and c.tag != "struck"]
        self._called = {call.tag: call for call in self.ranked}
        learned = likelihoods(line, hits)
        self.learned = frozenset(learned)
        self.likely: Mapping[str, float] = _with_unlearned(learned, self._called)

    def weight(self, tag: str) -> float:
        """The likelihood of a kind and what the rules say for it, as one number."""
        called = self._called.get(tag)
        own = _OWN_WORD if called and called.score >= _DECISIVE else 0.0
        return self.likely.get(tag, -99.0) + (RULES_COUNT * called.score if called else 0.0) + own

    def call(self, tag: str) -> Call:
        """The rules' call of a kind; where no phrase tells it, the words that speak for it."""
        if tag in self._called:
            return self._called[tag]
        atoms = frozenset() if tag == REMARKED else telling(self.line, self.hits, tag)
        return Call(tag, 0.0, atoms)

    @cached_property
    def order(self) -> tuple[str, ...]:
        """The few kinds that come near the best, best first."""
        if not self.line.atoms:
            return (REMARKED,)
        told = [tag for tag in {*self.likely, *self._called} if tag not in _SPOKEN or self._is_spoken(tag)]
        kinds = sorted(told, key=lambda tag: (-self.weight(tag), tag))
        least = self.weight(kinds[0]) - _NEAR
        return tuple(tag for tag in kinds[:_MOST] if self.weight(tag) >= least)

    def _is_spoken(self, tag: str) -> bool:
        """Whether a phrase or a word tells it."""
        return tag in self._called or bool(telling(self.line, self.hits, tag))

    @property
    def first_by_rules(self) -> str:
        return self.ranked[0].tag if self.ranked else REMARKED

    def lead(self, tag: str, alike: frozenset[str] = frozenset()) -> float:
        """By how much a kind, with those like it, outweighs the best of the others."""
        own = max(self.weight(kind) for kind in {tag, *alike})
        return own - max(self.weight(kind) for kind in {*self.likely, *self._called} - {tag, *alike})


def _with_unlearned(learned: Mapping[str, float], called: Iterable[str]) -> Mapping[str, float]:
    """A kind that no line was learned from is held as likely as the likeliest: the rules decide."""
    top = max(learned.values())
    return {**{tag: top for tag in called if tag not in learned}, **learned}
