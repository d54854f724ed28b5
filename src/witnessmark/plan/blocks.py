"""Operations that must be done in one session, put together into blocks: what is opened and would hang
loose is closed in it, hot work is watched out in it, and whatever must come in between lies in it too."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from math import ceil
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.jobs.operation import Operation
from witnessmark.plan.ranking import Ranked


class Block(Struct, frozen=True, kw_only=True):
    """Operations in their order, done one after the other.

    minutes  to plan each with; before: numbers of blocks that come first
    spell    which spell of how many at it: (1, 1) where it is done in one
    """

    operations: tuple[Operation, ...]
    minutes: tuple[int, ...]
    before: tuple[int, ...]
    spell: tuple[int, int] = (1, 1)

    @property
    def in_one_go(self) -> bool:
        return len(self.operations) > 1 or not self.operations[0].put_down or self.spell[1] > 1

    @property
    def id(self) -> str:
        return f"{self.operations[0].id} {self.spell[0]}/{self.spell[1]}"


def blocks_of(order: Ranked, minutes: Callable[[Operation], int]) -> tuple[Block, ...]:
    """Every operation in one block, with its minutes; blocks in the order of their first operation."""
    arrows = {o.id: set(order.before[o.id]) for o in order.operations}
    for id, bound in order.bound.items():
        for other in bound:
            arrows[id].add(other)
            arrows[other].add(id)
    groups = list(_circles(arrows))
    place = {o.id: n for n, o in enumerate(order.operations)}
    groups.sort(key=lambda group: min(place[id] for id in group))
    number = {id: n for n, group in enumerate(groups) for id in group}
    found = []
    for n, group in enumerate(groups):
        members = tuple(order.operations[p] for p in sorted(place[id] for id in group))
        before = sorted({number[b] for o in members for b in order.before[o.id]} - {n})
        planned = tuple(minutes(o) for o in members)
        found.append(Block(operations=members, minutes=planned, before=tuple(before)))
    return tuple(found)


def in_spells(blocks: tuple[Block, ...], number: int, room: int) -> tuple[Block, ...] | None:
    """The blocks with one of them cut into spells that fit so many minutes; None where it may not be.

    What cannot be put down is never cut. A watch after hot work comes at the end of every spell.
    """
    block = blocks[number]
    watch = sum(m for o, m in zip(block.operations, block.minutes, strict=True) if o.sort == "watch")
    work = sum(block.minutes) - watch
    if (
        room <= watch
        or block.spell[1] > 1
        or not all(o.put_down or o.sort == "watch" for o in block.operations)
    ):
        return None
    count = ceil(work / (room - watch))
    share = ceil(work / count / 5) * 5
    left = [[o, m] for o, m in zip(block.operations, block.minutes, strict=True) if o.sort != "watch"]
    watches = [(o, m) for o, m in zip(block.operations, block.minutes, strict=True) if o.sort == "watch"]
    spells: list[list[tuple[Operation, int]]] = []
    for _ in range(count):
        spells.append([*_cut_off(left, share), *watches])
    shift = count - 1
    cut = [
        Block(
            operations=tuple(o for o, _ in spell),
            minutes=tuple(m for _, m in spell),
            before=(number + n - 1,) if n else block.before,
            spell=(n + 1, count),
        )
        for n, spell in enumerate(spells)
    ]
    shifted = [
        replace(b, before=tuple(p + shift if p >= number else p for p in b.before))
        for b in (*blocks[:number], *cut[:1], *blocks[number + 1 :])
    ]
    return (
        *shifted[:number],
        replace(cut[0], before=shifted[number].before),
        *cut[1:],
        *shifted[number + 1 :],
    )


def _cut_off(left: list[list[Any]], share: int) -> list[tuple[Operation, int]]:
    """Take so many minutes off the front of what is left to do."""
    taken: list[tuple[Operation, int]] = []
    while share and left:
        operation, minutes = left[0]
        some = min(share, minutes)
        taken.append((operation, some))
        share -= some
        left[0][1] -= some
        if not left[0][1]:
            left.pop(0)
    return taken


def _circles(arrows: Mapping[str, Iterable[str]]) -> Iterator[list[str]]:
    """What waits for each other in circles, as groups; what does not is a group by itself."""
    index: dict[str, int] = {}
    low: dict[str, int] = {}
    kept: list[str] = []
    inside: set[str] = set()
    for root in arrows:
        walk: list[tuple[str, Iterator[str]]] = [(root, iter(()))] if root not in index else []
        fresh = bool(walk)
        while walk:
            id, rest = walk[-1]
            if fresh:
                index[id] = low[id] = len(index)
                kept.append(id)
                inside.add(id)
                rest = iter(sorted(arrows[id]))
                walk[-1] = (id, rest)
                fresh = False
            then = next((t for t in rest if t in arrows and (t not in index or t in inside)), None)
            if then is None:
                walk.pop()
                if walk:
                    low[walk[-1][0]] = min(low[walk[-1][0]], low[id])
                if low[id] == index[id]:
                    yield _taken(kept, inside, id)
            elif then in index:
                low[id] = min(low[id], index[then])
            else:
                walk.append((then, iter(())))
                fresh = True


def _taken(kept: list[str], inside: set[str], last: str) -> list[str]:
    group = []
    while True:
        id = kept.pop()
        inside.discard(id)
        group.append(id)
        if id == last:
            return group
