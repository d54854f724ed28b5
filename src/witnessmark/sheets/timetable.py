"""The plan as a sheet: the gates, the next sessions in full, the later ones in short, what moved and why."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from datetime import date

from witnessmark.plan.timetable import GateDay, Held, Moved, Stint, Timetable
from witnessmark.plan.weeks import week_band
from witnessmark.sheets.phrases import counted, day_words, minutes_words, sheet_code, short_day
from witnessmark.sheets.rows import Row, Section, Sheet, Step, Words

# So many sessions are shown with all that is done in them; so many more by their jobs.
IN_FULL, IN_SHORT = 4, 16
MOST_MOVED = 12

WHAT_IT_IS = (
    "An order of work on planned minutes, no forecast: findings, late parcels and lost sessions come on top. "
    "The command chance tells the band. A reached gate is not a release."
)


def timetable_sheet(plan: Timetable, names: Mapping[str, str], *, vehicle: str, line: int) -> Sheet:
    """One plan; `names` are those of the gates on screens."""
    name = vehicle or "the vehicle"
    return Sheet(
        kind="plan",
        title="The plan",
        vehicle=name,
        date=plan.today,
        line=line,
        code=sheet_code("plan", "", name, plan.today, line),
        headline=_headline(plan, names),
        sections=(
            Section(heading="when the plan comes to each gate", rows=tuple(_gates(plan, names))),
            *_moved(plan),
            *(_in_full(held) for held in plan.held[:IN_FULL]),
            *_later(plan),
            *_left_out(plan),
        ),
        footer=(WHAT_IT_IS, _how_good(plan)),
    )


def _headline(plan: Timetable, names: Mapping[str, str]) -> str:
    last = plan.gates[-1] if plan.gates else None
    if not plan.held:
        return "Nothing is left to plan."
    if last is None or last.session is None:
        return f"{counted(plan.operations, 'operation')} in {counted(len(plan.held), 'session')}."
    week = week_band(last.session, last.session, plan.today)
    gate = names.get(last.gate, last.gate)
    return (
        f"By this order of work the {gate} gate is asked after the {week}; {len(plan.held)} sessions in all."
    )


def _gates(plan: Timetable, names: Mapping[str, str]) -> Iterator[Words]:
    for gate in plan.gates:
        yield Words(label=names.get(gate.gate, gate.gate), text=_gate(gate, plan))


def _gate(gate: GateDay, plan: Timetable) -> str:
    if gate.because:
        return f"not by this plan: {gate.because}"
    if gate.session is None:
        return "nothing known holds it that is done in the garage"
    week = week_band(gate.session, gate.session, plan.today)
    return f"{week}, {counted(gate.operations, 'operation')} before it"


def _in_full(held: Held) -> Section:
    return Section(
        heading=_when(held),
        rows=tuple(_step(number, stint) for number, stint in enumerate(held.stints, 1)),
    )


def _when(held: Held) -> str:
    hands = ", with the helper" if held.helper else ", a helper counted on" if held.assumed else ""
    return f"{day_words(held.session.day)}, {held.session.moment:%H:%M}{hands}"


def _step(number: int, stint: Stint) -> Step:
    notes = ["goes on in a later session"] if stint.again else []
    notes += ["takes two pairs of hands"] if stint.operation.hands > 1 else []
    return Step(
        number=number,
        text=f"on with: {stint.operation.what}" if stint.goes_on else stint.operation.what,
        minutes=minutes_words(stint.minutes),
        place=stint.operation.where,
        notes=tuple(notes),
    )


def _later(plan: Timetable) -> Iterator[Section]:
    later = plan.held[IN_FULL : IN_FULL + IN_SHORT]
    rows: list[Row] = [Words(label=short_day(held.session.day), text=_jobs(held)) for held in later]
    rest = len(plan.held) - IN_FULL - len(later)
    if rest > 0:
        rows.append(Words(text=f"and {counted(rest, 'session')} after these", sort="aside"))
    if rows:
        yield Section(heading="the sessions after that", rows=tuple(rows))


def _jobs(held: Held) -> str:
    """The jobs of a session, the longest first."""
    minutes: Counter[str] = Counter()
    for stint in held.stints:
        minutes[job_words(stint)] += stint.minutes
    shown = [job for job, _ in minutes.most_common(3)]
    more = len(minutes) - len(shown)
    hands = "; a helper counted on" if held.assumed else "; with the helper" if held.helper else ""
    return ", ".join(shown) + (f" and {more} more" if more else "") + hands


def job_words(stint: Stint) -> str:
    """What a stint belongs to: the job's word and thing.

    >>> from witnessmark.jobs.operation import Minutes, Operation
    >>> def stint(job):
    ...     one = Operation(id="a", what="", sort="open", name="hub", job=job, minutes=Minutes(1, 2, 3))
    ...     return Stint(operation=one, start=0, minutes=5)
    >>> job_words(stint("renew/pinion seal")), job_words(stint("close/rear axle"))
    ('renew pinion seal', 'close up rear axle')
    """
    word, _, thing = stint.operation.job.partition("/")
    return f"{'close up' if word == 'close' else word} {thing}".strip()


def _moved(plan: Timetable) -> Iterator[Section]:
    """What changed in the sessions shown in full; what is further off is only counted."""
    if not plan.moved:
        return
    days = [held.session.day for held in plan.held[: IN_FULL + 1]]
    until = days[IN_FULL] if len(days) > IN_FULL else date.max
    near = [m for m in plan.moved if min(d for d in (m.before, m.now) if d is not None) < until]
    shown = near[:MOST_MOVED]
    rows: list[Row] = [Words(label=_from_to(one), text=f"{one.what}: {one.because}") for one in shown]
    if len(plan.moved) > len(shown):
        rows.append(Words(text=f"and {len(plan.moved) - len(shown)} more, most further off", sort="aside"))
    yield Section(heading="what changed since the plan before", rows=tuple(rows))


def _from_to(one: Moved) -> str:
    if one.before is None and one.now is not None:
        return f"new, {short_day(one.now)}"
    if one.now is None and one.before is not None:
        return f"out, was {short_day(one.before)}"
    assert one.before is not None
    assert one.now is not None
    return f"{short_day(one.before)} to {short_day(one.now)}"


def _left_out(plan: Timetable) -> Iterator[Section]:
    if plan.left_out:
        yield Section(
            heading="in no session of this plan",
            rows=tuple(Words(text=f"{one.what}: {one.because}. {one.do}".strip()) for one in plan.left_out),
        )


def _how_good(plan: Timetable) -> str:
    sessions = f"Sessions {plan.known}." if plan.known else ""
    if plan.proven:
        return f"No order of work comes to the gates sooner on these minutes. {sessions}".strip()
    per_hundred = max(1, round(plan.gap * 100))
    return (
        f"A better order could come sooner by at most {per_hundred} in 100 of the weighted days to the "
        f"gates; the guesses are wider than that. {sessions}".strip()
    )
