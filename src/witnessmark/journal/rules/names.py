"""Which things a fact describes, and which it only names."""

from __future__ import annotations

from witnessmark.journal.facts import (
    AnyFact,
    AtFact,
    CameBack,
    Closed,
    CutOut,
    Described,
    DryFitted,
    Fitted,
    FoundBehind,
    Guessed,
    Marked,
    NippedUp,
    Opened,
    Proved,
    ReadFigure,
    Scrapped,
    SentAway,
    Slackened,
    Stored,
    Tightened,
    TookOff,
    Turned,
    Wanted,
)
from witnessmark.vehicle.things import Joint, Part

# Facts that do nothing unless the record knows the thing. The others may name a mere place: the cab
# floor was bared, the rear was lifted.
ABOUT_THINGS = (
    CameBack,
    Closed,
    CutOut,
    DryFitted,
    Fitted,
    FoundBehind,
    Guessed,
    Marked,
    NippedUp,
    Opened,
    Proved,
    ReadFigure,
    Scrapped,
    SentAway,
    Slackened,
    Stored,
    Tightened,
    TookOff,
    Turned,
    Wanted,
)


def described_in(fact: AnyFact | None) -> frozenset[str]:
    """The parts, joints and assemblies a fact describes."""
    if not isinstance(fact, Described):
        return frozenset()
    things: tuple[Part | Joint, ...] = (*fact.parts, *fact.joints)
    return frozenset(name for thing in things for name in (thing.name, thing.assembly) if name)


def named_in(fact: AnyFact) -> tuple[str, ...]:
    """Every name a fact is about."""
    if isinstance(fact, Closed):
        return fact.at + fact.but
    return fact.at if isinstance(fact, AtFact) else ()


def must_be_described(fact: AnyFact) -> tuple[str, ...]:
    """The names a fact is about which the record has to know for the fact to have an effect."""
    return named_in(fact) if isinstance(fact, ABOUT_THINGS) else ()
