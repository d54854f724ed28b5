"""The session sheet: operations with their numbers, where to stop, the chance, what to bring and order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from witnessmark.jobs.operation import Operation
from witnessmark.plan.session import SafeStop, SessionPlan
from witnessmark.sheets.numbers import Lines
from witnessmark.sheets.phrases import band_words, in_ten, minutes_words, sheet_code, where_words
from witnessmark.sheets.rows import Box, JointRow, Row, Section, Sheet, Step, Words
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Vehicle

Numbered = tuple[int, Operation]
ANSWERS = ("prove", "record")


def session_sheet(
    plan: SessionPlan,
    vehicle: Vehicle,
    catalogue: Mapping[str, Kind],
    *,
    day: date,
    line: int,
    cautions: Mapping[str, str],
    numbers: Lines,
    full: bool = True,
) -> Sheet:
    """One session on paper.

    catalogue  every kind of joint by its key
    day        the day of the session; line: the last journal line the plan knew
    cautions   the usual cautions by key; a caution that is no key is shown as it stands
    numbers    the lines of numbers under an operation
    full       everything that waits by itself; else what waits for the same thing together
    """
    name = vehicle.name or "the vehicle"
    return Sheet(
        kind="session",
        title="Session sheet",
        vehicle=name,
        date=day,
        line=line,
        code=sheet_code("session", "", name, day, line),
        headline=_headline(plan),
        sections=(
            Section(
                heading="operations",
                rows=tuple(_steps(plan, vehicle, numbers)),
                note=_hours(plan),
                empty="Nothing fits this session.",
            ),
            Section(heading="bring", rows=tuple(Box(text=item) for item in plan.bring)),
            Section(heading="order tonight", rows=tuple(Box(text=item) for item in plan.order)),
            Section(
                heading="left loose at the end",
                rows=tuple(_loose(plan, vehicle, catalogue)),
                empty="Nothing, if it ends as planned.",
            ),
            Section(heading="waits for another day", rows=tuple(_waits(plan, full))),
        ),
        notes=_notes(plan, cautions),
        footer=("Figures are those of this record. Your own book comes first.",),
    )


def _headline(plan: SessionPlan) -> str:
    return f"All of it done by packing-up time: {plan.chance_words}." if plan.operations else ""


def _hours(plan: SessionPlan) -> str:
    low, likely, high = (minutes_words(m) for m in plan.minutes)
    hands = "with the helper" if plan.helper else "on your own"
    said = [
        f"{minutes_words(plan.hours * 60)} {hands}",
        f"{minutes_words(plan.work_minutes)} of it with tools in hand",
    ]
    if plan.operations:
        said.append(f"the work takes about {likely} ({low} to {high})")
    if plan.factor_words:
        said.append(plan.factor_words)
    return "; ".join(said)


def _steps(plan: SessionPlan, vehicle: Vehicle, numbers: Lines) -> Iterator[Row]:
    stops = {stop.after: stop for stop in plan.safe_stops}
    if 0 in stops and plan.operations:
        yield _stop(stops[0])
    for run in _runs(plan.operations, stops):
        first_number, first = run[0]
        rest = run[1:]
        yield Step(
            number=first_number,
            text=first.what,
            minutes=band_words(first.minutes),
            place=where_words(first.name, first.where),
            numbers=numbers(first.sort, vehicle.joints.get(first.name)),
            notes=(*_remarks(first), *(_then(n, operation) for n, operation in rest)),
            left=next((o.leaves for _, o in reversed(run) if o.leaves), ""),
        )
        if run[-1][0] in stops:
            yield _stop(stops[run[-1][0]])


def _runs(operations: Sequence[Operation], stops: Mapping[int, SafeStop]) -> Iterator[list[Numbered]]:
    """The operations in order; what is proved and written down on a thing goes with the step before it."""
    run: list[Numbered] = []
    for n, operation in enumerate(operations, start=1):
        joins = operation.sort in ANSWERS and run and operation.name == run[-1][1].name and n - 1 not in stops
        if run and not joins:
            yield run
            run = []
        run.append((n, operation))
    if run:
        yield run


def _then(number: int, operation: Operation) -> str:
    remarks = "; ".join(_remarks(operation, known=True))
    said = f"{number}. {operation.what}, {band_words(operation.minutes)}"
    return f"{said}: {remarks}" if remarks else said


def _stop(stop: SafeStop) -> Words:
    reached = f" Reached in time: {in_ten(stop.chance)}." if stop.after else ""
    return Words(label="safe stop", text=f"{stop.what}.{reached}", sort="stop")


def _remarks(operation: Operation, *, known: bool = False) -> Iterator[str]:
    """What to know before it; `known` leaves out what its thing's first operation said."""
    if operation.hands > 1:
        yield "two pairs of hands"
    if operation.fights and not known:
        yield "will not come easily"
    if not operation.put_down:
        yield "once begun, finish it"
    if operation.note:
        yield operation.note


def _loose(plan: SessionPlan, vehicle: Vehicle, catalogue: Mapping[str, Kind]) -> Iterator[JointRow]:
    for name in plan.left_loose:
        joint = vehicle.joints.get(name)
        kind = catalogue.get(joint.kind) if joint else None
        missed = (joint.if_missed if joint else "") or (kind.if_missed if kind else "")
        yield JointRow(name=name, state="loose", if_missed=missed.replace("_", " "))


def _waits(plan: SessionPlan, full: bool) -> Iterator[Words]:
    if full:
        for one in plan.waiting:
            yield Words(text=f"{one.what}: {one.because}", label=one.name)
        return
    for because in dict.fromkeys(one.because for one in plan.waiting):
        names = dict.fromkeys(one.name for one in plan.waiting if one.because == because)
        yield Words(text=" · ".join(names), label=because)


def _notes(plan: SessionPlan, cautions: Mapping[str, str]) -> tuple[str, ...]:
    keys = [*plan.cautions, *(c for operation in plan.operations for c in operation.cautions)]
    return tuple(dict.fromkeys(cautions.get(key, key) for key in keys))
