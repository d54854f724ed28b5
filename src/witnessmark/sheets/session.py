"""The session sheet: operations with their numbers, where to stop, the chance, what to bring and order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from witnessmark.jobs.operation import Operation
from witnessmark.plan.session import SafeStop, SessionPlan
from witnessmark.sheets.numbers import numbers_of
from witnessmark.sheets.phrases import band_words, in_ten, minutes_words, sheet_code, where_words
from witnessmark.sheets.rows import Box, JointRow, Row, Section, Sheet, Step, Words
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Vehicle


def session_sheet(
    plan: SessionPlan,
    vehicle: Vehicle,
    catalogue: Mapping[str, Kind],
    *,
    day: date,
    line: int,
    cautions: Mapping[str, str],
) -> Sheet:
    """One session on paper.

    catalogue  every kind of joint by its key
    day        the day of the session; line: the last journal line the plan knew
    cautions   the usual cautions by key; a caution that is no key is shown as it stands
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
                rows=tuple(_steps(plan, vehicle, catalogue)),
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
            Section(heading="waits for another day", rows=tuple(_waits(plan))),
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


def _steps(plan: SessionPlan, vehicle: Vehicle, catalogue: Mapping[str, Kind]) -> Iterator[Row]:
    stops = {stop.after: stop for stop in plan.safe_stops}
    if 0 in stops and plan.operations:
        yield _stop(stops[0])
    for n, operation in enumerate(plan.operations, start=1):
        yield Step(
            number=n,
            text=operation.what,
            minutes=band_words(operation.minutes),
            place=where_words(operation.name, operation.where),
            numbers=numbers_of(operation, vehicle.joints.get(operation.name), catalogue),
            notes=tuple(_remarks(operation)),
            left=operation.leaves,
        )
        if n in stops:
            yield _stop(stops[n])


def _stop(stop: SafeStop) -> Words:
    reached = f" Reached in time: {in_ten(stop.chance)}." if stop.after else ""
    return Words(label="safe stop", text=f"{stop.what}.{reached}", sort="stop")


def _remarks(operation: Operation) -> Iterator[str]:
    if operation.hands > 1:
        yield "two pairs of hands"
    if operation.fights:
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


def _waits(plan: SessionPlan) -> Iterator[Words]:
    for one in plan.waiting:
        yield Words(text=f"{one.what}: {one.because}", label=one.name)


def _notes(plan: SessionPlan, cautions: Mapping[str, str]) -> tuple[str, ...]:
    keys = [*plan.cautions, *(c for operation in plan.operations for c in operation.cautions)]
    return tuple(dict.fromkeys(cautions.get(key, key) for key in keys))
