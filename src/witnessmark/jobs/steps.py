"""One operation at a time: opening, making good, closing, proving a joint."""

from __future__ import annotations

from typing import Any

from witnessmark.jobs.acts import (
    CLOSING,
    IN_ONE_GO,
    MAKING,
    OPENING,
    TIGHTENING,
    hands_to_close,
    hands_to_prove,
)
from witnessmark.jobs.building import Building
from witnessmark.jobs.findings import CLOSING as ON_CLOSING
from witnessmark.jobs.findings import MAKING_GOOD as ON_MAKING_GOOD
from witnessmark.jobs.findings import PROVING as ON_PROVING
from witnessmark.jobs.findings import finding, finding_on_opening
from witnessmark.jobs.minutes import about, share
from witnessmark.jobs.operation import Operation
from witnessmark.owed.debt import Debt, listed
from witnessmark.reach.minutes import CLOSING as CLOSING_SHARE
from witnessmark.reach.minutes import MAKING_GOOD, PROVING
from witnessmark.reach.minutes import OPENING as OPENING_SHARE
from witnessmark.state.closing import own_items
from witnessmark.state.joint_state import LOOSE
from witnessmark.state.parts import AWAY, POST, SCRAPPED
from witnessmark.vehicle.kind import Check

# A part in one of these places must come back, or another must come, before it can go on.
NOT_HERE = frozenset({AWAY, POST, SCRAPPED})

PAID_BY_CLOSING = frozenset({"renew", "close", "record", "bag", "bare"})


def heading(b: Building, joint: str, job: str) -> dict[str, Any]:
    """What every operation on a joint carries."""
    described = b.state.vehicle.joints[joint]
    return {
        "name": joint,
        "job": job,
        "where": described.place or described.side,
        "if_missed": b.if_missed(joint),
        "fights": bool(b.state.joints[joint].fights),
        "cautions": b.kind(joint).cautions,
    }


def open_joint(b: Building, joint: str, job: str) -> Operation:
    """Undo a joint; what it alone still holds comes off with it."""
    kind = b.kind(joint)
    off = [p for p in b.state.vehicle.joints[joint].holds if b.holders(p)[-1] == joint]
    notes = [
        f"{listed(off)} comes off" if off else "",
        "cap the ends" if kind.pipe_open else "",
        f"catch the {kind.fluid}" if kind.fluid and kind.fluid != "grease" else "",
    ]
    return Operation(
        **heading(b, joint, job), id=f"open/{joint}", sort="open", what=OPENING[kind.closed_by].format(joint),
        minutes=share(b.state, joint, OPENING_SHARE), leaves="apart",
        **finding_on_opening(b.state, joint), note="; ".join(n for n in notes if n),
    )  # fmt: skip


def make_good(b: Building, joint: str, job: str, word: str) -> Operation:
    """The work a job is about, on an open joint."""
    times = 2 if word == "refurbish" else 1
    return Operation(
        **heading(b, joint, job), id=f"work/{joint}/{word}", sort="work", what=MAKING[word].format(joint),
        minutes=share(b.state, joint, MAKING_GOOD * times), **finding(b.state, ON_MAKING_GOOD),
    )  # fmt: skip


def mend(b: Building, joint: str, job: str, found: list[Debt]) -> Operation:
    """Put right what was found on a joint."""
    return Operation(
        **heading(b, joint, job), id=f"mend/{joint}", sort="work", minutes=share(b.state, joint, MAKING_GOOD),
        what=f"{listed([d.what for d in found])}: {joint}", pays=b.pay(found),
        **finding(b.state, ON_MAKING_GOOD),
    )  # fmt: skip


def close_joint(b: Building, joint: str, job: str, items: tuple[str, ...]) -> Operation:
    """Bring a joint to tight with new items, and write down what belongs to it: pays what that pays."""
    kind, described = b.kind(joint), b.state.vehicle.joints[joint]
    own = own_items(described, kind)
    paid = [d for d in b.at(joint) if d.sort in PAID_BY_CLOSING or _renewed(d, items, own, b)]
    paid += [d for part in described.holds for d in b.at(part) if d.sort == "bag"]
    away = tuple(p for p in described.holds if p in b.state.parts and b.state.parts[p].where in NOT_HERE)
    numbers = {r.item: r.number for r in kind.renew}
    needs = tuple(item for item in items for _ in range(numbers.get(item, 1)))
    words = TIGHTENING if b.state.joints[joint].position == LOOSE else CLOSING
    what = words[kind.closed_by].format(joint) + (f", with new {listed(list(items))}" if items else "")
    return Operation(
        **heading(b, joint, job), id=f"close/{joint}", sort="close", what=what, leaves="tight",
        minutes=share(b.state, joint, CLOSING_SHARE), **finding(b.state, ON_CLOSING), pays=b.pay(paid),
        needs=needs + away, put_down=kind.closed_by not in IN_ONE_GO, hands=hands_to_close(kind),
    )  # fmt: skip


def _renewed(debt: Debt, items: tuple[str, ...], own: tuple[str, ...], b: Building) -> bool:
    """Whether fitting these items new answers a finding: on the item, or on the joint that the item is."""
    if debt.sort != "finding":
        return False
    found = next((f for f in b.state.joints[debt.joint].findings if f.line == debt.line), None)
    return found is not None and (found.item in items if found.item else bool(set(own) & set(items)))


def renew_in_place(b: Building, joint: str, job: str, owed: list[Debt]) -> Operation:
    """Fit what should have been renewed to a joint that is tight already."""
    numbers = {r.item: r.number for r in b.kind(joint).renew}
    items = [d.item for d in owed]
    return Operation(
        **heading(b, joint, job), id=f"renew/{joint}", sort="work", leaves="tight", pays=b.pay(owed),
        what=f"fit new {listed(items)} to {joint}", minutes=share(b.state, joint, CLOSING_SHARE),
        needs=tuple(item for item in items for _ in range(numbers.get(item, 1))),
        **finding(b.state, ON_CLOSING),
    )  # fmt: skip


def prove(b: Building, joints: list[str], job: str, check: Check) -> Operation:
    """Give one check on one joint, or on all joints that one act proves."""
    first = joints[0]
    kind = b.kind(first)
    each = PROVING / max(1, len(kind.check))
    named = listed(joints) if len(joints) > 1 else first
    owed = [d for joint in joints for d in b.at(joint) if d.sort == "check" and d.item == check.name]
    head = {**heading(b, first, job), "if_missed": min((b.if_missed(j) for j in joints), key=_weight)}
    return Operation(
        **head, id=f"prove/{check.name}/{first}", sort="prove", what=f"prove {check.name}: {named}",
        minutes=share(b.state, first, each, least=3.0), stage=check.stage, pays=b.pay(owed),
        hands=max(hands_to_prove(b.kind(j), check.name) for j in joints), note=check.text,
        **finding(b.state, ON_PROVING),
        leaves="proven" if len(kind.check) == 1 else "",
    )  # fmt: skip


def _weight(if_missed: str) -> int:
    return ("lets_go", "warns_first", "wrecks", "wets", "looks").index(if_missed)


def write_down(b: Building, joint: str, job: str, owed: list[Debt]) -> Operation:
    """Records missing on a joint that is closed."""
    return Operation(
        **heading(b, joint, job), id=f"record/{joint}", sort="record", minutes=about(3 * len(owed)),
        what=f"write down {listed([d.item for d in owed])}: {joint}", pays=b.pay(owed),
    )  # fmt: skip


def look_again(b: Building, joint: str, job: str, owed: list[Debt]) -> Operation:
    """Follow-ups whose time has come."""
    return Operation(
        **heading(b, joint, job), id=f"look/{joint}", sort="prove", minutes=about(5 * len(owed)),
        what=f"look again at {joint}: {listed([d.item for d in owed])}", pays=b.pay(owed),
        **finding(b.state, ON_PROVING),
    )  # fmt: skip
