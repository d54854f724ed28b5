"""The order in which work is rather done: the next session as its sheet has it, then by what is at stake.

After the first session, jobs come by the worst that can happen if they are missed, each carried on as
far as it goes. That is the rule of `plan.choosing` without its exact filling of one session.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from heapq import heappop, heappush

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.jobs.operation import Job, Operation
from witnessmark.plan.loosening import loosened_by
from witnessmark.state.standing import State

AGAIN = " again, "


class Ranked(Struct, frozen=True):
    """Operations in their order, with the ids of what comes before each, and of what is bound to it."""

    operations: tuple[Operation, ...]
    before: Mapping[str, tuple[str, ...]]
    bound: Mapping[str, tuple[str, ...]]


def ranked(state: State, jobs: Sequence[Job], first: Iterable[str], last: Iterable[Operation] = ()) -> Ranked:
    """Every operation of these jobs in its order.

    first  ids in the order of the next session's sheet; last: operations that come behind all jobs
    """
    behind = tuple(last)
    every = {o.id: o for job in jobs for o in job.operations} | {o.id: o for o in behind}
    every = {o.id: o for operation in every.values() for o in _each_watch(operation, every)}
    sheet = tuple(first)
    keys = _keys(jobs, sheet, behind, every)
    bound = {id: tuple(b for b in _bound(state, o, every) if b in every) for id, o in every.items()}
    hard = {id: {b for b in (*o.after, *o.follows) if b in every} for id, o in every.items()}
    soft = {id: set(_closings(o, every)) - {id} for id, o in every.items()}
    for id, followers in bound.items():
        for follower in followers:
            soft[follower].add(id)
    for id in set(sheet) & set(every):
        hard[id] = {b for b in hard[id] if b in every[id].after or b in sheet}
        soft[id] &= set(sheet)
    order = tuple(_sorted(every, keys, hard, soft))
    place = {id: n for n, id in enumerate(order)}
    before = {
        id: tuple(b for b in {*every[id].after, *soft[id]} if b in every and place[b] < place[id])
        for id in order
    }
    return Ranked(tuple(every[id] for id in order), before, bound)


def _keys(
    jobs: Sequence[Job], first: Iterable[str], behind: Sequence[Operation], every: Iterable[str]
) -> dict[str, tuple[int, int, int]]:
    keys = {o.id: (2, 0, n) for n, o in enumerate(behind)}
    stakes = {job.id: _stake(job) for job in jobs}
    order = sorted(range(len(jobs)), key=lambda n: (stakes[jobs[n].id], n))
    for rank, number in enumerate(order):
        keys |= {o.id: (1, rank, n) for n, o in enumerate(jobs[number].operations)}
    keys |= {id: keys[id.partition(AGAIN)[0]] for id in every if AGAIN in id}
    return keys | {id: (0, 0, n) for n, id in enumerate(first) if id in keys}


def _each_watch(operation: Operation, every: Mapping[str, Operation]) -> Iterator[Operation]:
    """A fire watch for each piece of hot work it follows: they may fall on different days."""
    hot = [id for id in operation.follows if id in every and _is_hot(every[id])]
    if operation.sort != "watch" or not hot:
        yield operation
        return
    yield replace(operation, follows=tuple(hot[:1]))
    for number, id in enumerate(hot[1:], 2):
        yield replace(operation, id=f"{operation.id}{AGAIN}{number}", follows=(id,), pays=())


def _is_hot(operation: Operation) -> bool:
    return "fire-watch" in operation.cautions and operation.sort in ("open", "close")


def _stake(job: Job) -> int:
    """The worst that can happen if what a job pays, or works on, is missed."""
    found = [if_missed(o.if_missed) for o in job.operations if o.pays or o.sort == "work"]
    return min(found, default=IfMissed.LOOKS)


def _bound(state: State, operation: Operation, every: Mapping[str, Operation]) -> Iterator[str]:
    """What must be done in the same session: closings of what would hang loose, the watch after hot work."""
    yield from loosened_by(state, operation)
    if _is_hot(operation):
        yield from (o.id for o in every.values() if o.sort == "watch" and operation.id in o.follows)


def _closings(operation: Operation, every: Mapping[str, Operation]) -> Iterator[str]:
    """What is inside is closed before what lies over it."""
    if not operation.id.startswith(("close/", "fit/")):
        return
    for inner in operation.follows:
        closing = inner.replace("open/", "close/", 1).replace("lift/", "fit/", 1)
        if closing in every and inner in every:
            yield closing


def _sorted(
    every: Mapping[str, Operation],
    keys: Mapping[str, tuple[int, int, int]],
    hard: Mapping[str, set[str]],
    soft: dict[str, set[str]],
) -> Iterator[str]:
    """By key, each after what comes before it; where what is only wished runs in a circle, it gives way."""
    after: dict[str, list[str]] = {}
    count = {id: len(hard[id] | soft[id]) for id in every}
    for id in every:
        for before in hard[id] | soft[id]:
            after.setdefault(before, []).append(id)
    ready: list[tuple[tuple[int, int, int], str]] = []
    left = set(every)
    for id in every:
        if count[id] == 0:
            heappush(ready, (keys[id], id))
    while left:
        if not ready:
            stuck = min((id for id in left if not hard[id] & left), key=keys.__getitem__)
            soft[stuck] -= left
            heappush(ready, (keys[stuck], stuck))
        _, id = heappop(ready)
        if id not in left:
            continue
        left.remove(id)
        yield id
        for then in after.get(id, ()):
            count[then] -= 1
            if count[then] == 0:
                heappush(ready, (keys[then], then))
