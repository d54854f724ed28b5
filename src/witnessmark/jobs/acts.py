"""Words and sorts of the acts on a joint, by what closes its kind."""

from __future__ import annotations

from functools import cache

from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.kind import Kind

OPENING = {
    "tighten": "undo {}, bag and label what comes off",
    "set": "undo {}, bag and label what comes off",
    "connect": "disconnect {}, label both ends",
    "fit": "take out {}",
    "fill": "open {}",
    "weld": "cut out {}",
    "coat": "take {} back to bright metal",
    "place": "take off {}",
}

MAKING = {
    "renew": "clean the faces of {}, try the new part",
    "refurbish": "strip, clean, measure and refurbish {}",
    "make good": "make good {}",
    "coat": "key, clean and mask {}",
}

CLOSING = {
    "tighten": "put back and tighten {}",
    "set": "put back, set and lock {}",
    "connect": "connect and tighten {}",
    "fit": "fit {}",
    "fill": "fill {} to level",
    "weld": "weld {}: short runs, spread about, until they join",
    "coat": "coat {}",
    "bleed": "bleed {}",
    "place": "put {} in place",
}

# The same where the joint is in place and only not to figure yet.
TIGHTENING = CLOSING | {
    "tighten": "tighten {} to figure",
    "set": "set and lock {}",
    "connect": "tighten {}",
    "fit": "press {} home",
}

# What cannot be put down half-way. Common practice, no source.
IN_ONE_GO = frozenset({"fill", "coat", "bleed"})


def opens(kind: Kind) -> bool:
    """Whether a joint of this kind is opened before it is worked on; bleeding opens nothing."""
    return kind.closed_by in OPENING


@cache
def shared_checks() -> frozenset[str]:
    """Names of checks by which one act proves joints of several kinds: pedal hold, wheel rock."""
    seen: set[str] = set()
    shared: set[str] = set()
    for kind in catalogue().values():
        names = {check.name for check in kind.check}
        shared |= names & seen
        seen |= names
    return frozenset(shared)


def hands_to_prove(kind: Kind, check: str) -> int:
    """Pairs of hands for a check: two where the kind needs a helper and the act is holding a pedal."""
    if kind.helper != "needed" or kind.fluid != "brake fluid":
        return 1
    shared = shared_checks()
    return 2 if check in shared or not any(c.name in shared for c in kind.check) else 1


def hands_to_close(kind: Kind) -> int:
    """Pairs of hands for closing: where a helper is needed, and not only to hold a pedal afterwards."""
    for_the_pedal = kind.fluid == "brake fluid" and kind.closed_by != "bleed"
    return 2 if kind.helper == "needed" and not for_the_pedal else 1
