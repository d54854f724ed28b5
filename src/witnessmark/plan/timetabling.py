"""The plan made: what cannot be laid is left out with its reason, the rest is laid by the engine.

A plan that stood before is kept as far as it goes. Only where a new one brings a gate forward by a week or
more is it taken instead; either way what moved is told, and why.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date, datetime, time, timedelta

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.engines.schedule import Allowed, Spread, schedule
from witnessmark.engines.schedule_model import Answer, Piece, Placed, Schedule, Trouble
from witnessmark.engines.schedule_trouble import troubles_of
from witnessmark.ground.errors import BadInput
from witnessmark.plan.blocks import Block, in_spells
from witnessmark.plan.coming import Coming
from witnessmark.plan.laying import DAY, Asked, Laid, cut_to_usual, laid
from witnessmark.plan.moved import moved_since
from witnessmark.plan.timetable import GateDay, Held, LeftOut, Stint, Timetable, Wait
from witnessmark.state.standing import State

FAR = ("creeping", "road")
ON_THE_ROAD = "done creeping or on the road, not in the garage"
# A plan that stood is given up only for one that brings a gate forward by so many days.
WORTH_CHANGING = 7


class Terms(Struct, frozen=True, kw_only=True):
    """How long and by what chance it is looked for.

    spread  how chains are run; known: where the sessions are known from
    """

    allowed: Allowed | None = None
    seed: int = 0
    spread: Spread = map
    known: str = ""


def timetable(state: State, asked: Asked, terms: Terms, last: Timetable | None = None) -> Timetable:
    """Everything that is to be done, in the sessions that come.

    last  the plan as it stood before, which this one goes on from
    """
    far = (b for b in asked.blocks if any(o.stage in FAR for o in b.operations))
    because = {b.id: LeftOut(what=_said(b), name="", because=ON_THE_ROAD, do="") for b in far}
    asked = replace(asked, blocks=cut_to_usual(state, asked))
    while True:
        problem = laid(state, asked, _with_followers(asked.blocks, because))
        if not problem.blocks:
            return _told(asked, problem, None, because, terms.known, last)
        answer = None
        troubles = troubles_of(problem.problem)
        if not troubles:
            answer = _answered(problem, terms, last)
            troubles = answer.troubles
        if answer is not None and not troubles:
            return _told(asked, problem, answer, because, terms.known, last)
        asked, fresh = _in_the_way(problem, asked, troubles)
        because |= fresh


def _answered(problem: Laid, terms: Terms, last: Timetable | None) -> Answer:
    """The engine's answer; the plan that stood where a new one is not worth the change."""
    if last is None:
        return schedule(problem.problem, terms.allowed, seed=terms.seed, spread=terms.spread)
    before = _as_it_stood(problem, last)
    kept = schedule(problem.problem, last=before)
    better = schedule(problem.problem, terms.allowed, seed=terms.seed, spread=terms.spread, last=before)
    if kept.troubles or _is_worth_it(problem, kept, better):
        return better
    return Answer(
        schedule=kept.schedule, value=kept.value, bound=better.bound, ends=kept.ends, first=kept.first,
        steps=better.steps,
    )  # fmt: skip


def _is_worth_it(problem: Laid, kept: Answer, better: Answer) -> bool:
    """Whether the better plan brings a gate forward by a week, and none back."""
    sooner = [
        before - after
        for gate, before, after in zip(problem.gates, kept.ends, better.ends, strict=True)
        if gate not in ("first", "")
    ]
    return max(sooner, default=0) > (WORTH_CHANGING - 1) * DAY and min(sooner, default=0) >= 0


def _as_it_stood(problem: Laid, last: Timetable) -> Schedule:
    """Where each block began in the plan before; what is new begins with what stands before it in order.

    What the next session's sheet has comes first, wherever it stood.
    """
    begun = {
        s.operation.id: _clock(problem, h.session, s.start) for h in reversed(last.held) for s in h.stints
    }
    placed, now = [], 0
    first = problem.problem.targets[-1].activities if problem.gates[-1] == "first" else ()
    for number, block in enumerate(problem.blocks):
        if number in first:
            placed.append(Placed((Piece(0, 0, 1),)))
            continue
        known = [begun[o.id] for o in block.operations if o.id in begun]
        now = min(known) if known else now
        placed.append(Placed((Piece(0, now, 1),)))
    return Schedule(tuple(placed))


def _clock(problem: Laid, session: Coming, start: int) -> int:
    moment = datetime.combine(session.day, time()) + timedelta(minutes=start)
    return max(0, int((moment - problem.origin).total_seconds() // 60))


# ---- what cannot be laid


def _with_followers(blocks: tuple[Block, ...], because: Mapping[str, LeftOut]) -> frozenset[int]:
    """What is left out, and all that comes after it; blocks stand in an order that works or nearly so."""
    left = {n for n, b in enumerate(blocks) if b.id in because}
    size = -1
    while size != len(left):
        size = len(left)
        left |= {n for n, b in enumerate(blocks) if any(before in left for before in b.before)}
    return frozenset(left)


def _in_the_way(
    problem: Laid, asked: Asked, troubles: tuple[Trouble, ...]
) -> tuple[Asked, dict[str, LeftOut]]:
    """What is too long is cut into spells where it may be; what is in the way else is left out."""
    found = {}
    for trouble in troubles:
        if trouble.kind == "ran_out" and not trouble.activities:
            raise _ran_out(trouble, asked)
        if trouble.kind in ("sessions", "numbers"):
            raise BadInput(
                given="the calendar has no session that can be planned with",
                holds="at least one session with a beginning and a later end, none over another",
                do='Say when, as: write "sessions Saturdays 9-13, not in August".',
            )
        for number in trouble.activities:
            block = problem.blocks[number]
            at = next(n for n, b in enumerate(asked.blocks) if b.id == block.id)
            group = problem.problem.activities[number].group
            room = trouble.there - (problem.problem.set_ups[group] if group >= 0 else 0)
            cut = in_spells(asked.blocks, at, room) if trouble.kind == "too_long" else None
            if cut is None:
                found[block.id] = _left_out(block, trouble)
            else:
                asked = replace(asked, blocks=cut)
    return asked, found


def _left_out(block: Block, trouble: Trouble) -> LeftOut:
    """One trouble in words that name the thing and what would mend it."""
    name = block.operations[0].name
    if trouble.kind == "never_there":
        because, do = "no session that comes has a second pair of hands", "Ask a helper for one of them."
    elif trouble.kind == "too_long":
        because = (
            f"it takes {trouble.needed} minutes in one go, and the longest session that suits has "
            f"{trouble.there} with tools in hand"
        )
        do = "Free a longer session for it, or ask a helper where it takes two."
    else:
        because = "what it waits for is not done or here before the last session that suits it"
        do = "Order it sooner, or arrange sessions beyond."
    return LeftOut(what=_said(block), name=name, because=because, do=do)


def _said(block: Block) -> str:
    first = block.operations[0].what
    more = len(block.operations) - 1
    return first if not more else f"{first}, and {more} step{'s' if more > 1 else ''} with it"


def _ran_out(trouble: Trouble, asked: Asked) -> BadInput:
    return BadInput(
        given=f"the work takes {trouble.needed} minutes and does not fit the {len(asked.sessions)} sessions "
        f"that come, with {trouble.there} minutes with tools in hand",
        holds="the sessions that come hold the work",
        do="Arrange more sessions or longer ones, or leave a job, as: left OPERATION, not this year.",
    )


# ---- what is told


def _told(
    asked: Asked,
    problem: Laid,
    answer: Answer | None,
    because: Mapping[str, LeftOut],
    known: str,
    last: Timetable | None,
) -> Timetable:
    held = tuple(_held(asked, problem, answer)) if answer else ()
    planned = {o.id for b in problem.blocks for o in b.operations}
    plan = Timetable(
        today=asked.now.date(),
        held=held,
        gates=tuple(_gate(gate, ids, planned, held) for gate, ids in asked.gates.items()),
        waits=tuple(_waits(asked, problem, answer)) if answer else (),
        left_out=tuple(one for one in because.values() if one.because != ON_THE_ROAD),
        moved=(),
        gap=answer.gap if answer else 0.0,
        proven=answer.proven if answer else True,
        known=known,
        operations=len(planned),
    )
    return plan if last is None else moved_since(plan, last, asked)


def _held(asked: Asked, problem: Laid, answer: Answer) -> Iterator[Held]:
    stints: dict[int, list[Stint]] = {}
    for block, placed in zip(problem.blocks, answer.schedule.placed, strict=True):
        for at, stint in _stints(block, placed):
            stints.setdefault(at, []).append(stint)
    for number in sorted(stints):
        session = asked.sessions[number]
        assumed = number in problem.assumed
        yield Held(
            session=session,
            stints=tuple(sorted(stints[number], key=lambda s: s.start)),
            helper=session.helper,
            assumed=assumed and any(s.operation.hands > 1 for s in stints[number]),
        )


def _stints(block: Block, placed: Placed) -> Iterator[tuple[int, Stint]]:
    """The pieces of a block cut up among its operations, one after the other; a set-up goes to the first."""
    due = list(block.minutes)
    due[0] += sum(p.minutes for p in placed.pieces) - sum(due)
    spell, spells = block.spell
    at, begun = 0, spell > 1
    for piece in placed.pieces:
        minute, left = piece.start, piece.minutes
        while left:
            taken = min(left, due[at])
            stint = Stint(
                operation=block.operations[at],
                start=minute % DAY,
                minutes=taken,
                goes_on=begun,
                again=taken < due[at] or (spell < spells and block.operations[at].sort != "watch"),
            )
            yield piece.session, stint
            minute, left, begun = minute + taken, left - taken, taken < due[at]
            due[at] -= taken
            at += 0 if due[at] else 1


def _gate(gate: str, ids: frozenset[str], planned: set[str], held: tuple[Held, ...]) -> GateDay:
    missing = len(ids - planned)
    if missing:
        things = "operation that holds it is" if missing == 1 else "operations that hold it are"
        return GateDay(
            gate=gate, session=None, operations=len(ids), because=f"{missing} {things} in no session"
        )
    last = [h.session for h in held if any(s.operation.id in ids for s in h.stints)]
    return GateDay(gate=gate, session=last[-1] if last else None, operations=len(ids))


def _waits(asked: Asked, problem: Laid, answer: Answer) -> Iterator[Wait]:
    """What dries, while something waits for it; and what is in the post."""
    lags = {link.before: link.minutes for link in problem.problem.links if link.minutes}
    for number, minutes in sorted(lags.items()):
        ended = answer.schedule.placed[number].end
        yield Wait(
            what=f"{problem.blocks[number].operations[-1].name} dries",
            first=_day(problem, ended),
            last=_day(problem, ended + minutes),
            sort="dries",
        )
    needed = {n for id, numbers in asked.waits.items() for n in numbers if id in _ids(problem)}
    for number in sorted(needed):
        thing = asked.things[number]
        if thing.due is not None:
            yield Wait(what=f"{thing.what} in the post", first=asked.now.date(), last=thing.due, sort="post")


def _ids(problem: Laid) -> set[str]:
    return {o.id for b in problem.blocks for o in b.operations}


def _day(problem: Laid, minute: int) -> date:
    return (problem.origin + timedelta(minutes=minute)).date()
