"""A job on joints drafted: open by reach, work, close in reverse, prove, put right what it upsets."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from witnessmark.jobs import steps
from witnessmark.jobs.acts import MAKING, opens, shared_checks
from witnessmark.jobs.building import Building
from witnessmark.jobs.garage import refit
from witnessmark.jobs.minutes import about, share
from witnessmark.jobs.operation import Operation
from witnessmark.owed.debt import Debt
from witnessmark.reach.minutes import LIFTING
from witnessmark.reach.way_in import way_in
from witnessmark.state.closing import own_items
from witnessmark.state.joint_state import APART
from witnessmark.vehicle.kind import Check, Upset


class Draft(Struct, kw_only=True):
    """What a job does to joints and parts.

    apart    joints it opens (or bleeds) for their own sake; reach: joints and parts it only has to get at
    touched  joints it closes, proves and writes down, whether it opens them or they stand open
    lifted   operations that take off parts which nothing holds any more
    """

    job: str
    word: str
    apart: list[str]
    reach: list[str]
    touched: list[str]
    lifted: list[str] = []
    opened: tuple[str, ...] = ()
    open_anyway: tuple[str, ...] = ()


def open_way(b: Building, d: Draft) -> Draft:
    """Open what stands in the way and then the joints themselves, but what is open by then.

    All jobs are opened before any is finished: whoever opens a joint closes it.
    """
    targets = list(dict.fromkeys([*d.apart, *d.reach]))
    way = way_in(targets, b.state, debts=b.debts, free=b.free, access=b.access, others=0)
    d.open_anyway = way.open_anyway
    for name in way.remove:
        b.free[name] = None
        if name in b.state.joints:
            _open_one(b, name, d)
        elif not any(h in b.opened for h in b.holders(name)):
            d.lifted.append(b.add(_lift(b, name, d.job)))
    for joint in d.apart:
        if opens(b.kind(joint)) and b.state.joints[joint].position != APART and joint not in b.free:
            b.free[joint] = None
            _open_one(b, joint, d)
    return d


def finish(b: Building, d: Draft) -> None:
    """Work, close, prove and put right; a joint that another job opens is left to that job."""
    for joint in d.apart:
        _work(b, joint, d)
    mine = [j for j in dict.fromkeys([*d.opened, *d.apart, *d.touched]) if _is_mine(b, j, d)]
    for joint in mine:
        _close(b, joint, d, anew=joint in d.opened or (joint in d.apart and not opens(b.kind(joint))))
    for lift in d.lifted:
        b.add(refit(b, b.operations[lift].name, d.job))
    _prove(b, mine, d)
    for joint in mine:
        _put_right(b, joint, d)
        _write(b, joint, d)


def _is_mine(b: Building, joint: str, d: Draft) -> bool:
    return joint not in b.opened or joint in d.opened


# ---- opening


def _open_one(b: Building, joint: str, d: Draft) -> None:
    b.opened[joint] = b.add(steps.open_joint(b, joint, d.job))
    d.opened = (*d.opened, joint)


def _lift(b: Building, part: str, job: str) -> Operation:
    """Take off a part that nothing holds any more."""
    place = b.state.vehicle.place_of(part)
    return Operation(
        id=f"lift/{part}",
        what=f"take off {part}",
        sort="open",
        name=part,
        job=job,
        minutes=about(LIFTING),
        where=place,
    )


# ---- working and closing


def _work(b: Building, joint: str, d: Draft) -> None:
    """The job's own work, and what was found; a finding that a new item answers is left to the closing."""
    if d.word in MAKING:
        b.add(steps.make_good(b, joint, d.job, d.word))
    found = [debt for debt in b.at(joint) if debt.sort == "finding"]
    new = set(_items(b, joint, d, opened=True))
    left = [debt for debt in found if not _by_item(b, debt, new)]
    if left:
        b.add(steps.mend(b, joint, d.job, left))


def _by_item(b: Building, debt: Debt, items: set[str]) -> bool:
    finding = next((f for f in b.state.joints[debt.joint].findings if f.line == debt.line), None)
    own = own_items(b.state.vehicle.joints[debt.joint], b.kind(debt.joint))
    return finding is not None and (finding.item in items if finding.item else bool(own))


def _items(b: Building, joint: str, d: Draft, *, opened: bool) -> tuple[str, ...]:
    """What goes in new: always when opened, else what is still owed; and what was found or is wanted."""
    kind, state = b.kind(joint), b.state.joints[joint]
    due = [r.item for r in kind.renew if r.always and (opened or r.item not in state.renewed)]
    due += [f.item for f in state.findings if f.item]
    if d.word == "renew" and joint in d.apart and not own_items(b.state.vehicle.joints[joint], kind):
        name = set(joint.replace(",", " ").split())
        due += [r.item for r in kind.renew if set(r.item.split()) <= name]
    return tuple(dict.fromkeys(due))


def _close(b: Building, joint: str, d: Draft, *, anew: bool) -> None:
    """Close what is or will be open; renew on what is tight; mend what was found loose."""
    if anew or b.stands_open(joint):
        left = [debt for debt in b.at(joint) if debt.sort == "finding"]
        items = _items(b, joint, d, opened=anew)
        closing = b.add(steps.close_joint(b, joint, d.job, items))
        still = [debt for debt in left if debt in b.at(joint)]
        if still:
            b.first(b.add(steps.mend(b, joint, d.job, still)), closing)
        return
    owed = [debt for debt in b.at(joint) if debt.sort == "renew"]
    if owed:
        b.add(steps.renew_in_place(b, joint, d.job, owed))


# ---- proving


def _prove(b: Building, joints: list[str], d: Draft) -> None:
    """Each check once: one act for all joints of the job that share it, else one a joint."""
    groups: dict[tuple[str, str], list[str]] = {}
    checks: dict[str, Check] = {}
    for joint in joints:
        answered = {} if joint in b.opened else b.state.joints[joint].answered
        owes = joint in b.opened or any(debt.sort == "check" for debt in b.at(joint)) or d.word == "prove"
        for check in b.kind(joint).check:
            if owes and (check.name not in answered or d.word == "prove"):
                alone = "" if check.name in shared_checks() else joint
                groups.setdefault((check.name, alone), []).append(joint)
                checks[check.name] = check
    for (name, _), members in groups.items():
        proof = b.add(steps.prove(b, members, d.job, checks[name]))
        for joint in members:
            b.first(f"close/{joint}", proof)
            b.first(f"renew/{joint}", proof)


# ---- the rest


def _put_right(b: Building, joint: str, d: Draft) -> None:
    """What opening it upsets elsewhere: one operation for each thing upset, whichever jobs upset it."""
    for upset in b.kind(joint).upset:
        owed = [debt for debt in b.at("") if debt.sort == "put_right" and debt.item == upset.name]
        if joint in d.opened or (owed and b.state.joints[joint].opened_line is not None):
            b.add(put_right(b, upset, d.job, owed))


def put_right(b: Building, upset: Upset, job: str, owed: Iterable[Debt]) -> Operation:
    """Put right what was upset. Bleeding takes what the bleeding of its kind takes."""
    bleeding = upset.name.startswith("bleed")
    nipple = next((j for j in b.state.vehicle.joints if bleeding and b.kind(j).closed_by == "bleed"), "")
    minutes = share(b.state, nipple, 1.0) if nipple else about(60 if bleeding else 15)
    return Operation(
        id=f"put_right/{upset.name}", what=f"{upset.name}: {upset.text}", sort="put_right", name=upset.name,
        job=job, minutes=minutes, where="the vehicle", if_missed=upset.if_missed, stage=upset.stage,
        pays=b.pay(owed), put_down=not bleeding, hands=2 if bleeding else 1,
    )  # fmt: skip


def _write(b: Building, joint: str, d: Draft) -> None:
    owed = [debt for debt in b.at(joint) if debt.sort == "record"]
    if owed:
        b.add(steps.write_down(b, joint, d.job, owed))
    again = [debt for debt in b.at(joint) if debt.sort == "look_again"]
    if again:
        b.add(steps.look_again(b, joint, d.job, again))
