"""A line as understood, and what would follow from writing it. Nothing is written yet."""

from __future__ import annotations

from datetime import date
from typing import Any

from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import AnyFact
from witnessmark.restoration.following import Following, short
from witnessmark.restoration.plausibility import Plausible, plausible_plain
from witnessmark.words.understood import Understood, as_json


class Heard(Struct, frozen=True, kw_only=True):
    """What was heard. `last_line` is the line the record stood at: writing expects it still does.

    plausible  how the torque figures in it stand beside what their fasteners bear; it never blocks
    """

    words: str
    understood: Understood
    facts: tuple[AnyFact, ...]
    day: date
    time: str
    follows: Following
    last_line: int
    plausible: tuple[Plausible, ...] = ()

    @property
    def sure(self) -> bool:
        """May be written without asking back."""
        return self.understood.best.sure and self.understood.ask is None

    def sentence(self) -> str:
        """One full sentence of what was understood, what follows, and whether a figure in it can be right.

        Where no figure is judged, thread and grade of what was turned are said instead.
        """
        fasteners = f"Thread: {self.follows.fasteners}." if self.follows.fasteners else ""
        judged = " ".join(one.sentence for one in self.plausible)
        said = (self.understood.best.sentence, self.follows.sentence(), judged or fasteners)
        return " ".join(part for part in said if part)

    def unsure(self) -> BadInput:
        """The trouble of a line that may not be written as it was read."""
        question = self.understood.ask
        if question is not None:
            kinds = ", ".join(key for key, _ in question.choices)
            return BadInput(
                given=f"{question.thing} is new to this record; nothing was written",
                holds=f"its kind: {kinds}, or another of the catalogue's",
                do=f"Write the line again with --kind, as: --kind {question.choices[0][0]}.",
            )
        if self.sure:
            return BadInput(
                given=f"{self.words!r} was read, and not written",
                holds="a yes",
                do="Give the same line again with --yes.",
            )
        return BadInput(
            given=f"{self.words!r} was not understood without doubt; nothing was written",
            holds="a verb of the trade and a name the record knows",
            do="Write it a little more plainly, or answer at the terminal which reading is meant.",
            near=tuple(r.sentence for r in (self.understood.best, *self.understood.others)),
        )


def heard_plain(heard: Heard, line: int | None) -> dict[str, Any]:
    """The reading as plain values, in the fixed names that scripts rely on."""
    plain = as_json(heard.understood, line, tuple(short(d) for d in heard.follows.owes))
    question = heard.understood.ask
    asks = {"thing": question.thing, "choices": [key for key, _ in question.choices]} if question else None
    return {
        **plain,
        "follows": heard.follows.sentence(),
        "sure": heard.sure,
        "asks": asks,
        "plausible": plausible_plain(heard.plausible),
    }
