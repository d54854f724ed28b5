"""A second reading of a session's plan by plain rules that share nothing with what made it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from witnessmark.ground.errors import WitnessMarkError
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.debt import Debt
from witnessmark.plan.session import SessionPlan
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of


class PlanFault(WitnessMarkError):
    """A plan did not stand its second reading: it is not shown."""


def checked(plan: SessionPlan, state: State, debts: Iterable[Debt], jobs: Sequence[Job]) -> SessionPlan:
    """The plan itself, where nothing is wrong with it."""
    wrong = faults_of(plan, state, debts, jobs)
    if wrong:
        raise PlanFault(f"the session's plan did not stand its second reading: {'; '.join(wrong)}")
    return plan


def faults_of(plan: SessionPlan, state: State, debts: Iterable[Debt], jobs: Sequence[Job]) -> tuple[str, ...]:
    """What is wrong with a plan, each in one line; nothing when it holds."""
    known = {o.id: o for job in jobs for o in job.operations}
    return (
        *_order(plan, known),
        *_hands_and_stages(plan),
        *_debts(plan, debts),
        *_hand(plan, state),
        *_loose(plan, state),
        *_fire(plan, state),
        *_closed_over(plan, state),
        *_short(plan, state),
        *_figures(plan),
    )


def _order(plan: SessionPlan, known: dict[str, Operation]) -> Iterator[str]:
    """Everything once; everything after what comes before it, and that in the plan too."""
    seen: set[str] = set()
    planned = {o.id for o in plan.operations}
    for operation in plan.operations:
        if operation.id in seen:
            yield f"{operation.id} is planned twice"
        if operation.id not in known and operation.sort != "garage":
            yield f"{operation.id} belongs to no job"
        for before in operation.after:
            if before in known and before not in seen:
                yield f"{operation.id} comes before {before}"
        for before in operation.follows:
            if before in planned and before not in seen:
                yield f"{operation.id} comes before {before}"
        seen.add(operation.id)


def _hands_and_stages(plan: SessionPlan) -> Iterator[str]:
    for operation in plan.operations:
        if operation.hands > 1 and not plan.helper:
            yield f"{operation.id} takes two pairs of hands"
        if operation.stage in ("creeping", "road"):
            yield f"{operation.id} is not done in the garage"


def _debts(plan: SessionPlan, debts: Iterable[Debt]) -> Iterator[str]:
    owed = {d.id for d in debts}
    for code, times in Counter(code for o in plan.operations for code in o.pays).items():
        if code not in owed:
            yield f"{code} is paid and not owed"
        if times > 1:
            yield f"{code} is paid {times} times"


def _hand(plan: SessionPlan, state: State) -> Iterator[str]:
    """No more things go in than were ever owned or came."""
    got = sum(line.fact.number for line in (*state.supply.owned, *state.supply.came))
    needed = sum(len(o.needs) for o in plan.operations)
    if needed > got:
        yield f"{needed} things go in and {got:g} were ever had"


def _loose(plan: SessionPlan, state: State) -> Iterator[str]:
    """No joint that lets go is loose at the end that was not loose before; all that are loose are told."""
    loose = {n for n, joint in state.joints.items() if joint.position == "loose" and not joint.scrapped}
    before = set(loose)
    for operation in plan.operations:
        if operation.id.startswith("fit/"):
            loose |= {j.name for j in state.vehicle.joints.values() if operation.name in j.holds} & {
                n for n, joint in state.joints.items() if joint.position == "apart"
            }
        if operation.leaves in ("apart", "tight") and operation.name in state.joints:
            loose.discard(operation.name)
    for name in sorted(loose - before):
        joint = state.vehicle.joints[name]
        if (joint.if_missed or kind_of(joint.kind).if_missed) == "lets_go":
            yield f"{name} would be left loose"
    if loose != set(plan.left_loose):
        yield "the joints said to be left loose are others"


def _fire(plan: SessionPlan, state: State) -> Iterator[str]:
    """Hot work is watched out after its last spark, in the same session."""
    for number, operation in enumerate(plan.operations):
        joint = state.vehicle.joints.get(operation.name)
        hot = joint is not None and kind_of(joint.kind).hot_work and operation.leaves in ("apart", "tight")
        watches = (o for o in plan.operations[number + 1 :] if o.sort == "watch")
        if hot and not any(operation.id in o.follows for o in watches):
            yield f"{operation.id} is hot work and is not watched out"


def _closed_over(plan: SessionPlan, state: State) -> Iterator[str]:
    """What the plan opens and leaves apart can still be reached at the end: nothing was closed over it."""
    apart = {n for n, joint in state.joints.items() if joint.position == "apart" or joint.scrapped}
    opened: set[str] = set()
    for operation in plan.operations:
        if operation.leaves == "apart":
            apart.add(operation.name)
            opened.add(operation.name)
        elif operation.leaves == "tight":
            apart.discard(operation.name)
    off = {n for n, part in state.parts.items() if part.where != "on the vehicle"}
    off |= {p for name in apart if name in state.vehicle.joints for p in state.vehicle.joints[name].holds}
    for name in sorted(opened & apart):
        ways = state.vehicle.joints[name].behind
        if ways and not any(set(way) <= apart | off for way in ways):
            yield f"{name} is left apart and closed over"


def _short(plan: SessionPlan, state: State) -> Iterator[str]:
    """A session under an hour opens nothing that lets go and begins nothing that cannot be put down."""
    for operation in plan.operations if plan.hours < 1 else ():
        joint = state.vehicle.joints.get(operation.name)
        heavy = joint is not None and (joint.if_missed or kind_of(joint.kind).if_missed) == "lets_go"
        if not operation.put_down or (operation.sort == "open" and heavy):
            yield f"{operation.id} is not for a short session"


def _figures(plan: SessionPlan) -> Iterator[str]:
    if not 0 <= plan.chance <= 1 or list(plan.minutes) != sorted(plan.minutes):
        yield "chance or minutes are no figures"
    stops = [stop.after for stop in plan.safe_stops]
    if stops != sorted(set(stops)) or any(not 0 <= n <= len(plan.operations) for n in stops):
        yield "a safe stop lies outside the plan"
    if list(plan.safe_stops) != sorted(plan.safe_stops, key=lambda s: -s.chance):
        yield "a later stop is reached more surely than an earlier one"
