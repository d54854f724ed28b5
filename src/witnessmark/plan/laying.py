"""Blocks of operations and sessions that come, as one scheduling problem in whole minutes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from math import ceil
from statistics import median_low

from msgspec import Struct

from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target
from witnessmark.jobs.operation import Operation
from witnessmark.plan.arrivals import POST, Thing
from witnessmark.plan.blocks import Block, in_spells
from witnessmark.plan.coming import Coming
from witnessmark.plan.estimate import planned
from witnessmark.plan.overrun import Overrun
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

# Minutes are planned in steps of so many: nobody works to the minute.
STEP = 5
DAY = 24 * 60
# Of a session's length the part with tools in hand, as for the session sheet.
WORK_SHARE = 2 / 3
# When the post has come, on its day.
POST_COMES = 18 * 60

# The single places, beside the hands; whether each stays set up over the week until the owner says otherwise.
HANDS, BENCH, WELDER, SPRAY = range(4)
PLACES = ("workbench", "welder corner", "spray corner")
STAYS = {"workbench": True, "welder corner": False, "spray corner": False}
# Setting up to weld, and to spray, once a session. Common practice, no source.
SET_UPS = (20, 25)
# Until a coat may be worked over, where no product sheet tells: overnight. Common practice, no source.
DRIES = 16 * 60

# What a day later costs at each gate, in relation to the others, and for all the rest. Our choice.
WEIGHTS = {"start": 2, "roll": 2, "test": 3, "road": 4}
REST = 1
# What the next session's sheet says comes first: so many times all the rest together. Our choice.
FIRST = 10


class Laid(Struct, frozen=True, kw_only=True):
    """The problem, with what its numbers stand for.

    blocks   those that are laid; gates: names of the targets, "" the rest and "first" the next session
    assumed  sessions in which a helper is counted on without a promise
    origin   the moment of clock minute 0
    """

    problem: Problem
    blocks: tuple[Block, ...]
    gates: tuple[str, ...]
    assumed: frozenset[int]
    origin: datetime


class Asked(Struct, frozen=True, kw_only=True):
    """What a plan is asked of.

    gates     for each gate the ids of the operations that hold it
    first     ids of what the next session's sheet has
    things, waits  what is awaited, and for each operation the numbers of those it waits for
    helped    how often a helper comes where nobody promised, as a part
    """

    blocks: tuple[Block, ...]
    sessions: Sequence[Coming]
    gates: Mapping[str, frozenset[str]]
    first: frozenset[str]
    things: Sequence[Thing]
    waits: Mapping[str, tuple[int, ...]]
    helped: float
    now: datetime


def laid(state: State, asked: Asked, left: frozenset[int]) -> Laid:
    """The problem of all blocks but those left out; what comes after one left out must be left out too."""
    numbers = [n for n in range(len(asked.blocks)) if n not in left]
    place = {n: at for at, n in enumerate(numbers)}
    blocks = tuple(asked.blocks[n] for n in numbers)
    origin = datetime.combine(asked.now.date(), datetime.min.time())
    assumed = helpers_assumed(asked)
    gates, targets = _targets(asked, blocks)
    links = [
        Link(place[b], place[n], _dries(state, asked.blocks[b]))
        for n in numbers
        for b in asked.blocks[n].before
    ]
    return Laid(
        problem=Problem(
            activities=tuple(_activity(state, asked, block, origin) for block in blocks),
            sessions=tuple(_session(asked, n, assumed, origin) for n in range(len(asked.sessions))),
            held_over=(True, *(state.calendar.stays.get(p, STAYS[p]) for p in PLACES)),
            targets=targets,
            links=tuple(links),
            set_ups=SET_UPS,
        ),
        blocks=blocks,
        gates=gates,
        assumed=assumed,
        origin=origin,
    )


def helpers_assumed(asked: Asked) -> frozenset[int]:
    """After the last session somebody promised to come to, each so-many-th, as often as one came so far."""
    promised = [n for n, session in enumerate(asked.sessions) if session.helper]
    every = max(1, round(1 / max(0.02, asked.helped)))
    first = promised[-1] + every if promised else every - 1
    return frozenset(range(first, len(asked.sessions), every))


def cut_to_usual(state: State, asked: Asked) -> tuple[Block, ...]:
    """The blocks, those cut into spells that would else need one of a few long sessions.

    What goes in one go, takes two or needs a place that does not stay set up is laid into single sessions:
    it is cut to the usual one that suits it, where it may be put down at all.
    """
    blocks, assumed = asked.blocks, helpers_assumed(asked)
    work = [max(STEP, int(session.minutes * WORK_SHARE) // STEP * STEP) for session in asked.sessions]
    helped = [m for n, m in enumerate(work) if asked.sessions[n].helper or n in assumed]
    at = 0
    while at < len(blocks):
        block = blocks[at]
        two = any(o.hands > 1 for o in block.operations)
        places = {_place(state, o) for o in block.operations} & {WELDER, SPRAY}
        suits = helped if two else work
        room = median_low(suits) - max((SET_UPS[p - WELDER] for p in places), default=0) if suits else 0
        single = two or block.in_one_go or bool(places)
        cut = in_spells(blocks, at, room) if single and sum(block.minutes) > room > 0 else None
        blocks = cut or blocks
        at += cut[at].spell[1] if cut else 1
    return blocks


def minutes_of(operation: Operation, overrun: Overrun) -> int:
    """Minutes to plan an operation with, in steps."""
    return max(STEP, ceil(planned(operation, overrun.factor, most=120) / STEP) * STEP)


def _session(asked: Asked, number: int, assumed: frozenset[int], origin: datetime) -> Session:
    """Tools in hand between setting up and tidying."""
    coming = asked.sessions[number]
    work = max(STEP, int(coming.minutes * WORK_SHARE) // STEP * STEP)
    begins = int((coming.moment - origin).total_seconds() // 60) + (coming.minutes - work) // 2 // STEP * STEP
    hands = 2 if coming.helper or number in assumed else 1
    return Session(start=max(0, begins), minutes=work, capacities=(hands, 1, 1, 1))


def _activity(state: State, asked: Asked, block: Block, origin: datetime) -> Activity:
    places = {_place(state, o) for o in block.operations} - {HANDS}
    return Activity(
        minutes=sum(block.minutes),
        demands=(
            max(o.hands for o in block.operations),
            *(int(p in places) for p in (BENCH, WELDER, SPRAY)),
        ),
        in_one_go=block.in_one_go,
        earliest=max(_arrives(asked, o, origin) for o in block.operations),
        group=0 if WELDER in places else 1 if SPRAY in places else -1,
    )


def _place(state: State, operation: Operation) -> int:
    joint = state.vehicle.joints.get(operation.name)
    if operation.sort in ("close", "protect") and joint is not None:
        closed = kind_of(joint.kind).closed_by
        if closed in ("weld", "coat"):
            return WELDER if closed == "weld" else SPRAY
    return BENCH if operation.where == "workbench" else HANDS


def _arrives(asked: Asked, operation: Operation, origin: datetime) -> int:
    """When the last thing it waits for is here; what must still be ordered comes as nine in ten do."""
    days = [
        (asked.things[n].due or asked.now.date() + timedelta(days=ceil(POST.high)))
        for n in asked.waits.get(operation.id, ())
    ]
    return max(((day - origin.date()).days * DAY + POST_COMES for day in days), default=0)


def _dries(state: State, block: Block) -> int:
    """Minutes on the clock after a block until what follows may begin."""
    lags = [0]
    for operation in block.operations:
        if _place(state, operation) == SPRAY:
            surface = state.surfaces.get(operation.name)
            hours = surface.recoat_from_hours if surface is not None else None
            lags.append(ceil(hours * 60 / STEP) * STEP if hours else DRIES)
    return max(lags)


def _targets(asked: Asked, blocks: tuple[Block, ...]) -> tuple[tuple[str, ...], tuple[Target, ...]]:
    """The gates that something laid holds, the next session's sheet, and all the rest."""
    found: list[tuple[str, Target]] = []
    for gate, ids in asked.gates.items():
        found += _aim(gate, ids, blocks, WEIGHTS.get(gate, REST))
    every = frozenset(o.id for b in blocks for o in b.operations)
    found += _aim("", every, blocks, REST)
    found += _aim("first", asked.first, blocks, FIRST * sum(t.weight for _, t in found))
    return tuple(name for name, _ in found), tuple(target for _, target in found)


def _aim(name: str, ids: frozenset[str], blocks: tuple[Block, ...], weight: int) -> list[tuple[str, Target]]:
    numbers = tuple(n for n, b in enumerate(blocks) if any(o.id in ids for o in b.operations))
    return [(name, Target(activities=numbers, weight=weight))] if numbers else []
