"""Debts of the garage: parts not back, bags, blanking plugs, braces, empty cases, aged fluid, stores."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from witnessmark.ground.missed import if_missed
from witnessmark.owed.debt import Debt, spoken
from witnessmark.state.joint_state import APART
from witnessmark.state.parts import AWAY, SCRAPPED, SHELF, PartState
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

# A stored assembly is turned every thirty days: common practice, no source.
TURN_DAYS = 30
# Brake fluid is renewed at 18 to 24 months: advice read as an excerpt; the earlier end is taken.
BRAKE_FLUID_DAYS = 548
# An opened tin of brake fluid is not kept for bleeding: common practice, no source.
TIN_DAYS = 30

TURNING_KINDS = frozenset(
    {
        "shaft-seal",
        "pinion-seal",
        "half-shaft-seal",
        "taper-roller-bearing",
        "sealed-wheel-bearing",
        "stored-assembly",
        "gearbox-to-engine",
        "steering-box",
    }
)


def garage_debts(state: State, today: date) -> Iterator[Debt]:
    yield from _parts(state, today)
    yield from _bags(state)
    yield from _blanks(state)
    yield from _braces(state)
    yield from _drained(state)
    yield from _fluids(state, today)
    yield from _turns(state, today)


def heaviest_of(state: State, names: Iterable[str], otherwise: str) -> str:
    """What happens if the heaviest of these joints is missed; `otherwise` where none is a joint."""
    found = [
        state.vehicle.joints[n].if_missed or kind_of(state.vehicle.joints[n].kind).if_missed
        for n in names
        if n in state.vehicle.joints
    ]
    return min(found, key=if_missed, default=otherwise)


def holders(state: State) -> dict[str, list[str]]:
    """For each part the joints that hold it."""
    found: dict[str, list[str]] = {}
    for joint in state.vehicle.joints.values():
        for part in dict.fromkeys(joint.holds):
            found.setdefault(part, []).append(joint.name)
    return found


def _parts(state: State, today: date) -> Iterator[Debt]:
    every = holders(state)
    for name, part in state.parts.items():
        held_by = every.get(name, [])
        if part.bad and part.bad_line is not None and part.where != SCRAPPED:
            yield Debt(
                sort="finding",
                what=f"put right: found {part.bad}",
                part=name,
                where=state.vehicle.place_of(name),
                assembly=state.vehicle.parts[name].assembly,
                item=part.bad,
                line=part.bad_line,
                if_missed=heaviest_of(state, held_by, "warns_first"),
                because=f"it was found {part.bad}",
                since=part.since or today,
                pays=f"fitted new {spoken(name)}",
            )
        waits = any(state.joints[j].position == APART for j in held_by)
        if part.off_line is not None and part.off_day is not None and not waits:
            yield _refit(state, part, held_by)
        if (
            part.where == AWAY
            and part.due_back
            and part.line is not None
            and part.due_back <= today.isoformat()
        ):
            yield Debt(
                sort="back",
                what=f"get back from {part.with_whom or 'where it went'}",
                part=name,
                item="back",
                where=state.vehicle.place_of(name),
                if_missed="looks",
                line=part.line,
                since=part.since or today,
                because=f"it was due back {part.due_back}",
                due=part.due_back,
                pays=f"{spoken(name)} came back",
            )


def _refit(state: State, part: PartState, held_by: list[str]) -> Debt:
    gone = part.where == SCRAPPED
    assert part.off_line is not None
    assert part.off_day is not None
    return Debt(
        sort="refit",
        what="find another and fit it" if gone else "refit",
        part=part.name,
        item="refit",
        where=state.vehicle.place_of(part.name),
        assembly=state.vehicle.parts[part.name].assembly,
        if_missed=heaviest_of(state, held_by, "looks"),
        line=part.off_line,
        since=part.off_day,
        because="scrapped, and nothing is in its place" if gone else f"came off and is {part.where}",
        pays=f"fitted {spoken(part.name)}",
    )


def _bags(state: State) -> Iterator[Debt]:
    for bag in state.counts.bags:
        count = f"{bag.number} pieces" if bag.number else "not counted"
        yield Debt(
            sort="bag",
            what=f"empty the bag: {bag.what}",
            where=bag.where,
            item=f"bag of line {bag.line}",
            joint=next((n for n in bag.at if n in state.vehicle.joints), ""),
            part=next((n for n in bag.at if n in state.vehicle.parts), ""),
            if_missed=heaviest_of(state, bag.at, "looks"),
            line=bag.line,
            since=bag.day,
            because=f"bagged when it came off ({count}); a bag left over is a question",
            pays=f"unbagged {spoken(bag.at[0]) if bag.at else bag.what}",
        )


def _blanks(state: State) -> Iterator[Debt]:
    for tally in state.counts.blanks:
        yield Debt(
            sort="blank",
            what=f"take out {tally.number} blanking plug{'s' if tally.number > 1 else ''}",
            where=state.vehicle.place_of(tally.at),
            joint=tally.at if tally.at in state.vehicle.joints else "",
            part=tally.at if tally.at in state.vehicle.parts else "",
            item=f"blanks {tally.at}",
            if_missed=heaviest_of(state, [tally.at], "wrecks"),
            line=tally.line,
            since=tally.day,
            because=f"{tally.number} went in at {tally.at} and did not come out",
            pays=f"took {tally.number} blanks out of {spoken(tally.at)}",
        )


def _braces(state: State) -> Iterator[Debt]:
    for tally in state.counts.braces:
        yield Debt(
            sort="brace",
            what="brace off, then measure again",
            where=tally.at,
            item=f"brace {tally.at}",
            if_missed="warns_first",
            line=tally.line,
            since=tally.day,
            because=f"a brace stands at {tally.at}",
            pays=f"unbraced {spoken(tally.at)}",
        )


def _drained(state: State) -> Iterator[Debt]:
    for tally in state.counts.drained:
        yield Debt(
            sort="fluid",
            what="fill; until then tag it EMPTY",
            where=state.vehicle.place_of(tally.at),
            joint=tally.at if tally.at in state.vehicle.joints else "",
            part=tally.at if tally.at in state.vehicle.parts else "",
            item=f"fill {tally.at}",
            if_missed=heaviest_of(state, [tally.at], "wrecks"),
            line=tally.line,
            since=tally.day,
            because=f"{tally.at} was drained",
            pays=f"filled {spoken(tally.at)}",
        )


def _fluids(state: State, today: date) -> Iterator[Debt]:
    bled = state.answers.put_right.get("bleed brakes")
    if bled is not None:
        due = bled.day + timedelta(days=BRAKE_FLUID_DAYS)
        yield Debt(
            sort="fluid",
            what="renew the brake fluid",
            where="the vehicle",
            item="brake fluid age",
            if_missed="warns_first",
            line=bled.line,
            since=bled.day,
            due=f"by {due.isoformat()}",
            due_day=due,
            overdue=today >= due,
            because=f"bled at line {bled.line}; it takes up water with age",
            pays="bled brakes",
        )
    for tin in state.counts.tins.values():
        due = tin.day + timedelta(days=TIN_DAYS)
        if today >= due:
            yield Debt(
                sort="fluid",
                what=f"open a sealed tin of {tin.at}; get rid of the old one",
                where="workbench",
                item=f"tin of {tin.at}",
                if_missed="warns_first",
                line=tin.line,
                since=tin.day,
                because=f"the tin was opened {tin.day.isoformat()}",
                due=f"after {due.isoformat()}",
                due_day=due,
                pays=f"opened {tin.at} tin",
            )


def _turns(state: State, today: date) -> Iterator[Debt]:
    seen: set[str] = set()
    for name, part in state.parts.items():
        assembly = state.vehicle.parts[name].assembly
        thing = assembly or name
        if part.where != SHELF or thing in seen or part.stored_day is None or part.line is None:
            continue
        kinds = (
            {state.vehicle.joints[j].kind for j in state.vehicle.in_assembly(assembly)} if assembly else set()
        )
        if not kinds & TURNING_KINDS:
            continue
        seen.add(thing)
        last = max(part.stored_day, part.turned_day or part.stored_day)
        due = last + timedelta(days=TURN_DAYS)
        yield Debt(
            sort="turn",
            what="turn five times by hand, look for rust at the filler",
            part=name,
            assembly=assembly,
            where=part.place or "the shelf",
            item=f"turn {thing}",
            if_missed="wrecks",
            line=part.line,
            since=last,
            because=f"{thing} stands on the shelf since {part.stored_day.isoformat()}; seals dry standing",
            due=f"on {due.isoformat()}",
            due_day=due,
            overdue=today >= due,
            pays=f"turned {spoken(thing)}",
        )
