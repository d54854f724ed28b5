"""What a gate answers: what holds it, and what this record does not know. It never releases anything."""

from __future__ import annotations

from datetime import date

from msgspec import Struct


class Hold(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One known thing in a gate's way.

    what       what is owed; name: the joint, part or place it is owed on
    state      apart, loose, tight, as found or "" where no joint is meant
    line       the journal line behind it; days: how long it has stood open
    pays       a line which, typed, would pay it; code: four characters for paper
    """

    if_missed: str
    what: str
    name: str
    joint: str
    state: str
    because: str
    line: int
    days: int
    pays: str
    code: str
    sort: str
    stage: str = ""


class Unknown(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """An ask of a gate that this record never answered (or answered before its system was opened again)."""

    id: str
    name: str
    text: str
    how: str
    system: str
    if_missed: str
    because: str
    pays: str
    code: str
    limits: tuple[str, ...] = ()
    helper: str = "no"


class GateAnswer(Struct, frozen=True, kw_only=True):
    """One gate asked on one day. `gate` is its command name, `screen_name` the word on screens."""

    gate: str
    screen_name: str
    note: str
    asked_on: date
    holds: tuple[Hold, ...]
    not_known: tuple[Unknown, ...]

    @property
    def empty(self) -> bool:
        """Nothing known holds and nothing is unknown; still no release."""
        return not self.holds and not self.not_known

    def headline(self) -> str:
        """The one line on top: what holds, or that nothing known does; never a release.

        >>> GateAnswer(gate="road", screen_name="road", note="", asked_on=date(2026, 1, 1), holds=(),
        ...     not_known=()).headline()
        'Road: nothing known holds. This is not a release.'
        """
        word = self.screen_name.capitalize()
        if self.empty:
            return f"{word}: nothing known holds. This is not a release."
        number = len(self.holds)
        held = f"{number} thing{'s' if number != 1 else ''} hold{'s' if number == 1 else ''}"
        unknown = f"{len(self.not_known)} not known to this record" if self.not_known else ""
        return f"{word}: " + ", ".join(p for p in (held if number else "", unknown) if p) + "."
