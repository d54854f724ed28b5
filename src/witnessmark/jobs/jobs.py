"""Jobs wanted, and what is owed besides, as operations in an order that works."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from witnessmark.jobs.building import Building
from witnessmark.jobs.drafting import Draft, finish, open_way, put_right
from witnessmark.jobs.garage import garage_operation, part_work, refit
from witnessmark.jobs.geometry import order_by_access
from witnessmark.jobs.operation import Job
from witnessmark.jobs.rules import order_by_trade
from witnessmark.jobs.wishes import APART_FOR, Wish, wishes_of
from witnessmark.owed.debt import Debt, listed
from witnessmark.state.closing import own_items
from witnessmark.state.standing import State
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.kind import Upset
from witnessmark.vehicle.sides import other_side

CLOSE = "close"

# Debts that belong to no joint's opening and closing.
OF_THE_GARAGE = frozenset({"bag", "blank", "fluid", "turn", "bare", "recoat"})


def jobs_of(state: State, debts: Iterable[Debt]) -> tuple[Job, ...]:
    """Every job: wanted ones, then what is only owed, by assembly. One operation pays each debt."""
    b = Building(state, debts)
    drafts: list[tuple[Wish | None, Draft]] = [(w, open_way(b, _wanted(b, w))) for w in wishes_of(state)]
    taken_up = {j for _, d in drafts for j in (*d.opened, *d.apart, *d.touched) if not _left_over(b, j, d)}
    drafts += [(None, open_way(b, _owed(b, *group))) for group in _groups(b, taken_up)]
    for wish, d in drafts:
        finish(b, d)
        if wish is not None:
            _parts(b, wish)
    for debt in list(b.unpaid()):
        _garage(b, debt)
    order_by_access(b)
    order_by_trade(b)
    found = [_job(b, d, wish) for wish, d in drafts]
    rest = sorted({o.job for o in b.operations.values()} - {j.id for j in found})
    found += [Job(id=id, job=CLOSE, name=id.partition("/")[2], operations=b.finished(id)) for id in rest]
    return tuple(job for job in found if job.operations)


def _job(b: Building, d: Draft, wish: Wish | None) -> Job:
    return Job(
        id=d.job,
        job=wish.job if wish else CLOSE,
        name=d.job.partition("/")[2],
        operations=b.finished(d.job),
        wanted=wish.line if wish else None,
        opens=d.opened,
        open_anyway=tuple(dict.fromkeys([*d.open_anyway, *(_other_sides(b, d.apart) if wish else ())])),
        because=f"wanted, line {wish.line}" if wish else f"owed on {listed(d.touched)}",
    )


# ---- wanted


def _wanted(b: Building, wish: Wish) -> Draft:
    """A wish as a draft: its joints, and its parts with the joints that hold them."""
    joints = [t for t in wish.targets if t in b.state.joints]
    parts = [t for t in wish.targets if t not in b.state.joints]
    apart = wish.job in APART_FOR
    return Draft(
        job=wish.id,
        word=wish.job,
        apart=list(joints) if apart else [],
        reach=[p for p in parts if apart and p in b.access.numbers],
        touched=[*joints, *(h for p in parts for h in b.holders(p))],
    )


def _parts(b: Building, wish: Wish) -> None:
    """What a wish does to its parts themselves; what no joint holds is put back by itself."""
    for part in wish.targets:
        if part in b.state.joints:
            continue
        if wish.job in APART_FOR:
            b.add(part_work(b, part, wish.id, wish.job))
        if any(debt.sort == "refit" for debt in b.at(part)):
            b.add(refit(b, part, wish.id))


def _other_sides(b: Building, joints: list[str]) -> Iterator[str]:
    """Brakes: the same joint on the other side of the axle is asked about together."""
    for joint in joints:
        other = other_side(joint)
        if other is not None and other in b.state.joints and b.kind(joint).system == "brakes":
            yield other


# ---- only owed


def _groups(b: Building, taken_up: set[str]) -> list[tuple[str, list[str]]]:
    """Joints with something owed that no wanted job takes up, by assembly, else each by itself."""
    groups: dict[str, list[str]] = {}
    for debt in b.unpaid():
        if debt.joint in b.state.joints and debt.sort not in (
            "bag",
            "blank",
            "fluid",
            "turn",
            "bare",
            "recoat",
        ):
            members = groups.setdefault(debt.assembly or debt.joint, [])
            if debt.joint not in members:
                members.append(debt.joint)
    return list(groups.items())


def _owed(b: Building, thing: str, joints: list[str]) -> Draft:
    """What is owed on joints: close what stands open, open again what was found bad or not renewed."""
    again = [j for j in joints if not b.stands_open(j) and _must_open(b, j)]
    reach = [j for j in joints if not b.stands_open(j) and any(d.sort == "renew" for d in b.at(j))]
    return Draft(job=f"{CLOSE}/{thing}", word=CLOSE, apart=again, reach=reach, touched=joints)


def _left_over(b: Building, joint: str, d: Draft) -> bool:
    """Whether a wish only proves or refits a joint that must first be opened for what is owed on it."""
    opened = joint in d.opened or joint in d.apart or b.stands_open(joint)
    return not opened and any(debt.sort in ("finding", "renew") for debt in b.at(joint))


def _must_open(b: Building, joint: str) -> bool:
    """A finding is put right, and a joint that is itself renewed is renewed, with the joint apart."""
    own = own_items(b.state.vehicle.joints[joint], b.kind(joint))
    found = any(not condition(f.condition).loosens for f in b.state.joints[joint].findings)
    return found or any(d.sort == "renew" and d.item in own for d in b.at(joint))


def _garage(b: Building, debt: Debt) -> None:
    """What belongs to no joint's opening and closing, in the job of its assembly or of its own."""
    thing = debt.joint or debt.part
    job = f"{CLOSE}/{debt.assembly or b.assembly_of(thing) or thing or debt.where or debt.item}"
    if debt.sort == "put_right":
        upset = Upset(name=debt.item, text=debt.what, if_missed=debt.if_missed, stage=debt.stage)
        b.add(put_right(b, upset, job, [debt]))
    elif debt.part and debt.sort == "refit":
        b.add(refit(b, debt.part, job))
    elif debt.part and debt.sort == "finding":
        b.add(part_work(b, debt.part, job, "renew"))
    else:
        b.add(garage_operation(b, debt, job))
