"""What a snag asks for at once: what else opens, goes in new, is ordered, swaps in, and where to stop."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.jobs.operation import Job, Minutes, Operation
from witnessmark.owed.debt import listed
from witnessmark.owed.needs import needs_from, renewal_item
from witnessmark.owed.stock import Item
from witnessmark.plan.estimate import FINDING
from witnessmark.reach.minutes import opening_minutes
from witnessmark.reach.way_in import way_in
from witnessmark.state.closing import lets_go
from witnessmark.state.joint_state import APART, LOOSE
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

# So many operations are named that could be done instead; the session sheet has them all.
SWAPPED = 5

# So many joints further in are named as the next to open.
FURTHER = 2


class FiveThings(Struct, frozen=True, kw_only=True):
    """The five answers, each in lines of plain words; empty where there is nothing of it."""

    opens: tuple[str, ...] = ()
    renew: tuple[str, ...] = ()
    order: tuple[str, ...] = ()
    swap: tuple[str, ...] = ()
    stop: tuple[str, ...] = ()


def job_of(jobs: Iterable[Job], name: str) -> Job | None:
    """The job that works on a joint or part: the wanted one first."""
    found = [job for job in jobs if any(o.name == name for o in job.operations)]
    return min(found, key=lambda job: job.wanted is None, default=None)


def waits_for(jobs: Iterable[Job], first: Iterable[str]) -> frozenset[str]:
    """These operations, and all that come after them."""
    after: dict[str, list[str]] = {}
    for job in jobs:
        for operation in job.operations:
            for before in operation.after:
                after.setdefault(before, []).append(operation.id)
    found: set[str] = set()
    todo = list(first)
    while todo:
        id = todo.pop()
        if id not in found:
            found.add(id)
            todo += after.get(id, ())
    return frozenset(found)


def without(jobs: Iterable[Job], ids: frozenset[str]) -> tuple[Job, ...]:
    """The jobs without these operations."""
    left = (replace(job, operations=tuple(o for o in job.operations if o.id not in ids)) for job in jobs)
    return tuple(job for job in left if job.operations)


def further_in(state: State, name: str) -> tuple[str, ...]:
    """The next joints to open where a thing will not come: of its own assembly, shut, with fewest minutes."""
    thing = state.vehicle.joints.get(name) or state.vehicle.parts.get(name)
    if thing is None or not thing.assembly:
        return ()
    holding = [
        j.name
        for j in state.vehicle.joints.values()
        if j.assembly == thing.assembly
        and j.name != name
        and state.joints[j.name].position != APART
        and kind_of(j.kind).closed_by in ("tighten", "set", "connect")
        and name not in {n for way in j.behind for n in way}
    ]
    near = sorted(holding, key=lambda n: (not _same_side(name, n), opening_minutes(state, n)))
    return tuple(near[:FURTHER])


def _same_side(name: str, other: str) -> bool:
    return name.partition(", ")[2] == other.partition(", ")[2]


def opened_besides(state: State, names: Sequence[str]) -> tuple[str, ...]:
    """What must come off to get at these, and they themselves."""
    if not names:
        return ()
    return tuple(dict.fromkeys([*way_in(names, state, debts=(), others=0).remove, *names]))


def renewed_on(state: State, joints: Iterable[str]) -> tuple[Item, ...]:
    """What goes in new on these joints, always."""
    return tuple(
        renewal_item(state, name, renewal.item)
        for name in joints
        if name in state.vehicle.joints
        for renewal in kind_of(state.vehicle.joints[name].kind).renew
        if renewal.always
    )


def told_items(items: Iterable[Item]) -> tuple[str, ...]:
    """Things with what they are for.

    >>> told_items([Item(what="split pin", for_="hub nut, left rear", quantity=2)])
    ('2 × split pin, for hub nut, left rear',)
    """
    rows = []
    for item in items:
        number = f"{item.quantity:g} × " if item.quantity != 1 else ""
        size = f" {item.size}" if item.size else ""
        rows.append(f"{number}{item.what}{size}, for {item.for_}")
    return tuple(dict.fromkeys(rows))


def short_of(state: State, items: Iterable[Item]) -> tuple[str, ...]:
    """Of these things, what is neither here nor in the post."""
    return tuple(
        " ".join(p for p in (f"{need.short:g} ×", need.what, need.size) if p)
        + f" ({listed(list(need.for_))})"
        for need in needs_from((), state, items)
        if need.short > 0
    )


def safe_stop(state: State, name: str) -> tuple[str, ...]:
    """How to leave the assembly of a thing: what must not stay loose, what to cover, what to tag."""
    thing = state.vehicle.joints.get(name) or state.vehicle.parts.get(name)
    assembly = thing.assembly if thing else ""
    near = [
        j for j in state.vehicle.joints.values() if j.name == name or (assembly and j.assembly == assembly)
    ]
    loose = [j.name for j in near if state.joints[j.name].position == LOOSE and lets_go(j, kind_of(j.kind))]
    apart = [j for j in near if state.joints[j.name].position == APART]
    said = []
    if loose:
        said.append(f"not yet: {listed(loose)} must first be tight to figure, or off and bagged")
    if any(kind_of(j.kind).pipe_open for j in apart):
        said.append("cap every open pipe end")
    if apart:
        said.append(f"cover what is open ({listed([j.name for j in apart])}), bag and label what is off")
    filled = [j for j in near if kind_of(j.kind).closed_by == "fill" or j.name == name]
    fluids = sorted({j.fluid or kind_of(j.kind).fluid for j in filled} - {"", "grease"})
    if fluids and (apart or name in state.vehicle.joints):
        said.append(f'hang a tag on it: "EMPTY, NO {listed(fluids).upper()}" until it is filled and proven')
    said.append("write: downed tools, and what is finger-tight")
    return tuple(said)


def fought(operation: Operation, extra: float) -> Operation:
    """An operation that will not come: what a finding takes is certain now, further opening comes on top."""
    own = operation.minutes
    minutes = Minutes(
        own.low + FINDING.low + extra * 0.6,
        own.likely + FINDING.likely + extra,
        own.high + FINDING.high + extra * 2,
    )
    return replace(operation, minutes=minutes, finding=0.0, turns_up="")
