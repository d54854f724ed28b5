"""Rules of closing that several floors ask: what lets go, what is answered singly, what is itself renewed."""

from __future__ import annotations

from witnessmark.journal.facts import Closed, Proved
from witnessmark.state.joint_state import JointState
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Joint


def lets_go(joint: Joint, kind: Kind) -> bool:
    """Whether this one joint letting go is enough."""
    return (joint.if_missed or kind.if_missed) == "lets_go"


def answers_all(joint: Joint, kind: Kind, fact: Proved | Closed) -> bool:
    """Whether a proof that names no check answers every check of its joint.

    What lets go is answered singly, with a figure or "seen"; the rest by its name alone.
    """
    return not lets_go(joint, kind) or fact.seen or bool(fact.figures)


def own_items(joint: Joint, kind: Kind) -> tuple[str, ...]:
    """The renewals that are the joint itself: a new pinion seal renews the seal of the pinion seal joint.

    A renewal is the joint itself when its item's words stand in the joint's name, or when it is
    the only one that is always due.
    """
    always = [r.item for r in kind.renew if r.always]
    name = set(joint.name.replace(",", " ").split())
    itself = tuple(item for item in always if set(item.split()) <= name or item.split()[-1] in name)
    return itself or (tuple(always) if len(always) == 1 and kind.closed_by == "fit" else ())


def named_in(whole: str, names: tuple[str, ...]) -> bool:
    """Whether a joint is among the exceptions, which may be typed without its side."""
    return any(whole == name or whole.startswith(f"{name},") for name in names)


def proven(kind: Kind, state: JointState) -> bool:
    """Whether a tight joint has every closing check answered that can be given before the road.

    A kind without closing checks is proven by a look after it was closed: tight is not proven.
    """
    asked = [check.name for check in kind.check if check.stage != "road"]
    return all(name in state.answered for name in asked) if asked else bool(state.looks)
