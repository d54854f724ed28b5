"""What a joint owes since it was opened: to be closed, renewed, checked, recorded; what was found on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from witnessmark.owed.debt import Debt, spoken
from witnessmark.state.joint_state import APART, LOOSE, TIGHT, JointState
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Joint

CLOSING = {
    "tighten": ("put back and tighten to figure", "tighten to figure", "tightened"),
    "set": ("put back and set", "set and lock", "tightened"),
    "connect": ("connect and tighten", "tighten", "tightened"),
    "fit": ("fit", "fit home", "fitted"),
    "fill": ("fill to level", "fill to level", "filled"),
    "weld": ("weld", "weld", "welded"),
    "coat": ("coat", "coat", "coated"),
    "bleed": ("bleed", "bleed", "filled"),
    "place": ("put in place", "put in place", "fitted"),
}


def joint_debts(
    joint: Joint, kind: Kind, state: JointState, neighbours: Iterable[str] = ()
) -> Iterator[Debt]:
    """Everything one joint owes by itself; looks after use are in `owed.looks`.

    neighbours  the other joints of its assembly: what is a joint of its own there is owed there, once
    """
    if state.scrapped:
        return
    base = heading(joint, kind)
    for finding in state.findings:
        thing = finding.item or "it"
        word = f"new {finding.item} to" if finding.item else "new"
        yield Debt(
            **base,
            sort="finding",
            item=f"{finding.condition} {finding.item}".strip(),
            line=finding.line,
            what=f"put right: {finding.item + ' ' if finding.item else ''}found {finding.condition}",
            because=f"{thing} was found {finding.condition}",
            since=finding.day,
            pays=f"fitted {word} {spoken(joint.name)}",
            helper=kind.helper,
        )
    if state.opened_line is None or state.opened_day is None:
        return
    opened: dict[str, Any] = {**base, "line": state.opened_line, "since": state.opened_day}
    yield from _renewals(joint, kind, state, opened, neighbours)
    yield from _closing(joint, kind, state, base)
    yield from _checks(joint, kind, state, opened)
    yield from _records(joint, kind, state, opened)


def heading(joint: Joint, kind: Kind) -> dict[str, Any]:
    """What every debt of a joint carries."""
    return {
        "joint": joint.name,
        "where": joint.place or joint.side,
        "assembly": joint.assembly,
        "if_missed": joint.if_missed or kind.if_missed,
        "system": kind.system,
    }


def _renewals(
    joint: Joint, kind: Kind, state: JointState, opened: dict[str, Any], neighbours: Iterable[str]
) -> Iterator[Debt]:
    due = [r for r in kind.renew if r.always and r.item not in state.renewed]
    own = {parted(name)[0] for name in neighbours if name != joint.name} if due else set()
    for renewal in due:
        if renewal.item not in own:
            yield Debt(
                **opened,
                sort="renew",
                item=renewal.item,
                what=f"new {renewal.item}",
                because="not used twice: renewed whenever this is disturbed",
                pays=f"fitted new {renewal.item} to {spoken(joint.name)}",
            )


def _closing(joint: Joint, kind: Kind, state: JointState, base: dict[str, Any]) -> Iterator[Debt]:
    if state.position not in (APART, LOOSE) or state.line is None or state.since is None:
        return
    from_apart, from_loose, verb = CLOSING[kind.closed_by]
    what = from_apart if state.position == APART else from_loose
    if state.finger_tight:
        what = f"finger-tight: {what}"
    yield Debt(
        **base,
        sort="close",
        item="close",
        what=what,
        line=state.line,
        since=state.since,
        because=f"{state.position}: {kind.lets_go_because}",
        pays=f"{verb} {spoken(joint.name)}",
        helper=kind.helper,
    )


def _checks(joint: Joint, kind: Kind, state: JointState, opened: dict[str, Any]) -> Iterator[Debt]:
    for check in kind.check:
        if check.name not in state.answered:
            yield Debt(
                **opened,
                sort="check",
                item=check.name,
                what=f"{check.name}: {check.text}",
                because=f"tight is not proven: {kind.lets_go_because}"
                if state.position == TIGHT
                else "not proven",
                stage=check.stage,
                pays=f"proved {check.name} {spoken(joint.name)}",
                helper=kind.helper,
            )


# Where the line wants a number of the person's own, it says so.
BLANK = "FIGURE"
RECORD_LINES = {
    "photo": "photo of {}",
    "mark": "marked {}",
    "fluid": "filled {}",
    "coat": "coated {}",
    "figure": f"measured {{}} {BLANK}",
}


def _records(joint: Joint, kind: Kind, state: JointState, opened: dict[str, Any]) -> Iterator[Debt]:
    for record in kind.record:
        if record.name in state.recorded:
            continue
        line = RECORD_LINES.get(record.name, f"measured {record.name} {{}} {BLANK}")
        yield Debt(
            **opened,
            sort="record",
            item=record.name,
            what=f"write down: {record.text or record.name}",
            because="not on the record since it was opened",
            pays=line.format(spoken(joint.name)),
        )
