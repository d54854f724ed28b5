"""What follows from a line: how its things then stand, what they owe, what it paid."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from witnessmark.journal.facts import (
    AnyFact,
    AtFact,
    Closed,
    NippedUp,
    Opened,
    Slackened,
    Struck,
    Tightened,
    TookOff,
)
from witnessmark.owed.debt import Debt
from witnessmark.restoration.flow import Flow

SHOWN = 4
TURNED = (TookOff, Opened, Slackened, NippedUp, Tightened, Closed)


class Following(Struct, frozen=True, kw_only=True):
    """The difference a line makes.

    stands     joint -> its word afterwards, for the things the line names
    owes       debts that were not there before; pays: debts that are gone
    fasteners  thread and grade of what the line took a spanner to, where the record has one thread for it
    """

    stands: dict[str, str]
    owes: tuple[Debt, ...]
    pays: tuple[Debt, ...]
    fasteners: str = ""

    def sentence(self) -> str:
        """The words that go behind what was understood: "Now apart. Owes: new split pin, proof." """
        said = []
        words = list(dict.fromkeys(self.stands.values()))
        if words:
            said.append(f"Now {' and '.join(words)}.")
        if self.owes:
            said.append(f"Owes: {_few([short(d) for d in self.owes])}.")
        if self.pays:
            said.append(f"Pays: {_few([short(d) for d in self.pays])}.")
        return " ".join(said)


def following(before: Flow, after: Flow, facts: Iterable[AnyFact]) -> Following:
    """What a line's facts change between the record without and with it."""
    facts = tuple(facts)
    had = {debt.key: debt for debt in before.owed}
    have = {debt.key: debt for debt in after.owed}
    return Following(
        stands={name: after.word(name) for name in _named(facts) if name in after.state.joints},
        fasteners=_fasteners(after, facts),
        owes=tuple(debt for key, debt in have.items() if key not in had),
        pays=tuple(debt for key, debt in had.items() if key not in have),
    )


def short(debt: Debt) -> str:
    """A debt in two or three words, for a read-back sentence."""
    if debt.sort in ("check", "look_again"):
        return debt.item
    if debt.sort == "record":
        return f"{debt.item} written down"
    if debt.sort == "put_right":
        return debt.item
    return debt.what


def _named(facts: Iterable[AnyFact]) -> Sequence[str]:
    names: dict[str, None] = {}
    for fact in facts:
        inner = fact.instead if isinstance(fact, Struck) else fact
        if isinstance(inner, AtFact):
            names.update(dict.fromkeys(inner.at))
    return list(names)


def _fasteners(after: Flow, facts: Sequence[AnyFact]) -> str:
    turned = _named(fact for fact in facts if isinstance(fact, TURNED))
    joints = [after.vehicle.joints[name] for name in turned if name in after.vehicle.joints]
    told = {joint.fasteners for joint in joints if joint.thread}
    return told.pop() if len(told) == 1 else ""


def _few(words: list[str]) -> str:
    kept = list(dict.fromkeys(words))
    if len(kept) <= SHOWN:
        return ", ".join(kept)
    return f"{', '.join(kept[:SHOWN])} and {len(kept) - SHOWN} more"
