"""What was understood of a line: plain values to show, to ask by, and to write."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import AnyFact


class Reading(Struct, frozen=True, kw_only=True):
    """One way a line can be read.

    facts     to be written in order; a description comes first where a thing is new
    sentence  one full sentence in the past tense, which reads back as the same fact
    verb      the kind of fact, as the journal tags it
    part, joint, side  the first thing named, without its side; and the side
    remark    every word that found no other place, in order
    unplaced  spans of those words in the line, for underlining
    sure      nothing about it is doubtful
    doubts    why it is not, each a few words
    day, time told in the line; None where they were not
    """

    facts: tuple[AnyFact, ...]
    sentence: str
    verb: str
    part: str | None = None
    joint: str | None = None
    side: str | None = None
    figures: tuple[Quantity, ...] = ()
    remark: str = ""
    unplaced: tuple[tuple[int, int], ...] = ()
    sure: bool = False
    doubts: tuple[str, ...] = ()
    day: date | None = None
    time: str | None = None

    @property
    def fact(self) -> AnyFact:
        """The fact itself: the last, where a description comes first."""
        return self.facts[-1]


class Question(Struct, frozen=True):
    """The one thing worth asking.

    asks     "kind"
    thing    what it is about, "swarf guard"
    choices  up to five (key, name), the likeliest first
    """

    asks: str
    thing: str
    choices: tuple[tuple[str, str], ...] = ()


class Understood(Struct, frozen=True):
    """The best reading, at most two others where it is not sure, and the question that would settle it."""

    best: Reading
    others: tuple[Reading, ...] = ()
    ask: Question | None = None


def as_json(understood: Understood, line: int | None = None, owes: Sequence[str] = ()) -> dict[str, Any]:
    """The reading as plain values, under the names that scripts rely on.

    line is the number it was written under, None before; owes says what it leaves to be done.
    """
    best = understood.best
    return {
        "reading": best.sentence,
        "verb": best.verb,
        "part": best.part,
        "joint": best.joint,
        "side": best.side,
        "figures": [{"typed": q.typed, "value": q.value, "unit": q.unit} for q in best.figures],
        "remark": best.remark,
        "sure": best.sure,
        "others": [other.sentence for other in understood.others],
        "line": line,
        "owes": list(owes),
    }
