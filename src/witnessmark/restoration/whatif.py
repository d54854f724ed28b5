"""What if: one line about a snag or a change, answered with the five things it asks for."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from datetime import timedelta
from typing import Any

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.errors import BadInput
from witnessmark.jobs.needs import items_of
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.stock import bare
from witnessmark.plan import snags
from witnessmark.plan.arrivals import awaited
from witnessmark.plan.chance import chance_words, simulate
from witnessmark.plan.coming import Coming, Sessions
from witnessmark.plan.next_session import WORK_SHARE, plan_session
from witnessmark.plan.outlook import NO_DELAYS, GateBand, outlook
from witnessmark.plan.overrun import owners_overrun
from witnessmark.plan.session import SessionPlan
from witnessmark.plan.weeks import week_band
from witnessmark.reach.minutes import opening_minutes
from witnessmark.restoration.ahead import gate_operations, order_ahead, sessions_ahead
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.naming import thing_named
from witnessmark.sheets.rows import Sheet
from witnessmark.sheets.whatif import whatif_sheet
from witnessmark.words.snag_line import DOWN, DROP, FREE, LATE, STUCK, Snag, read_snag

SAMPLES = 1_200

# A whole free day: from nine, six hours. Our choice.
DAY_START, DAY_MINUTES = 9 * 60, 6 * 60

# What keeps a welder going, to have in the drawer. Common practice, no source.
WELDER = ("contact tip", "liner", "spool of wire", "drive roll to the wire's size")
CLEARING = "by ease: tip, blow the liner through, roll pressure, spool brake"

HOLDS = (
    '"pinion seal will not come out" · "u-bolt nuts three weeks late" · "welder down" · "two free days" · '
    '"drop clutch plate"'
)


class WhatIf(Struct, frozen=True, kw_only=True):
    """The answer.

    heard   what was understood; said: the answer in a line or two
    five    what else opens, what goes in new, what to order tonight, what swaps in, where to stop safely
    before, after  when the road gate may be reached, in weeks
    """

    heard: str
    said: tuple[str, ...]
    five: snags.FiveThings
    before: str
    after: str


def what_if(flow: Flow, words: str) -> WhatIf:
    """Answer one line; BadInput where it tells no snag, or names what the record does not know."""
    snag = read_snag(words)
    if snag is None:
        raise BadInput(
            given=f"{words!r} tells no snag that can be answered",
            holds=f"a line as: {HOLDS}",
            do="Say what will not come, what is late, what is down, how many days are free, what is dropped.",
        )
    answers = {STUCK: _stuck, LATE: _late, DOWN: _down, FREE: _free, DROP: _drop}
    return answers[snag.sort](flow, snag)


# ---- the five cases


def _stuck(flow: Flow, snag: Snag) -> WhatIf:
    name = thing_named(snag.thing, flow.vehicle)
    further = snags.further_in(flow.state, name)
    opened = snags.opened_besides(flow.state, further)
    job = snags.job_of(flow.jobs, name)
    mine = tuple(o for o in job.operations if o.stage not in ("wheels", "creeping", "road")) if job else ()
    first = next((o for o in mine if o.name == name and o.sort in ("open", "work")), None)
    first = first or next((o for o in mine if o.name == name), None)
    extra = float(sum(opening_minutes(flow.state, n) for n in opened))
    items = snags.renewed_on(flow.state, [name, *opened])
    blocked = snags.waits_for(flow.jobs, [first.id] if first else [])
    changed = {first.id: snags.fought(first, extra)} if first else {}
    post = 14 if snags.short_of(flow.state, items) else 0
    delays = {id: post for id in blocked if id not in changed} if post else {}
    swap = _swapped(flow, frozenset(o.id for o in mine) | blocked)
    return _answer(
        flow,
        heard=f"{name} will not come.",
        said=(
            "Stop at three tries. What is fought for longer is paid for in a scored bore or shaft.",
            _in_one_session(flow, _until_shut(mine, name), changed),
        ),
        five=snags.FiveThings(
            opens=tuple(f"{n}, about {opening_minutes(flow.state, n)} min" for n in opened),
            renew=snags.told_items(items),
            order=snags.short_of(flow.state, items),
            swap=_steps(swap),
            stop=snags.safe_stop(flow.state, name),
        ),
        changed=changed,
        delays=delays,
    )


def _late(flow: Flow, snag: Snag) -> WhatIf:
    things, waits = awaited(flow.state, order_ahead(flow, sessions_ahead(flow)).operations, flow.today)
    wanted = bare(snag.thing)
    numbers = [n for n, thing in enumerate(things) if wanted and wanted <= bare(thing.what)]
    if not numbers:
        raise BadInput(
            given=f"{snag.thing!r} is neither in the post nor still to be ordered",
            holds="a thing that is awaited",
            do="`witnessmark needs` lists them.",
            near=tuple(dict.fromkeys(thing.what for thing in things))[:4],
        )
    day = max(things[n].due or flow.today for n in numbers) + timedelta(days=snag.days)
    held_up = [id for id, mine in waits.items() if set(mine) & set(numbers)]
    blocked = snags.waits_for(flow.jobs, held_up)
    ops = _operations(flow)
    swap = _swapped(flow, blocked)
    name = next((ops[id].name for id in held_up if id in ops), "")
    other = f"ask another supplier for {things[numbers[0]].what}; {_offered(flow, wanted)}"
    return _answer(
        flow,
        heard=f"{things[numbers[0]].what} comes {_days(snag)} late{_guessed(snag)}: not before {day:%d %B}.",
        said=(f"It holds up {len(blocked)} operations: {_named(flow, held_up)}.",),
        five=snags.FiveThings(
            renew=snags.told_items(i for id in held_up if id in ops for i in items_of(flow.state, ops[id])),
            order=(other,),
            swap=_steps(swap),
            stop=snags.safe_stop(flow.state, name) if name else (),
        ),
        delays=dict.fromkeys(held_up, (day - flow.today).days),
    )


def _down(flow: Flow, snag: Snag) -> WhatIf:
    hot = [
        o.id for o in _operations(flow).values() if "fire-watch" in o.cautions and o.sort in ("open", "close")
    ]
    blocked = snags.waits_for(flow.jobs, hot)
    braced = [brace.at for brace in flow.state.counts.braces]
    stop = [
        "the watch runs from the last spark: look for 60 minutes, and once more before locking up",
        *(f"do not take the brace out of {at}" for at in braced),
        "write how much of the seam is done, and where the rest is",
    ]
    return _answer(
        flow,
        heard=f"The welder is down, {_days(snag)}{_guessed(snag)}.",
        said=(
            f"Clear it {CLEARING}. Not running in an hour: change over.",
            f"It holds up {len(blocked)} operations: {_named(flow, hot)}.",
        ),
        five=snags.FiveThings(
            order=WELDER, swap=_steps(_swapped(flow, blocked)), stop=tuple(stop),
        ),
        delays=dict.fromkeys(hot, snag.days),
    )  # fmt: skip


def _free(flow: Flow, snag: Snag) -> WhatIf:
    if not 1 <= snag.days <= 60:
        raise BadInput(given=f"{snag.days} free days", holds="from 1 to 60", do="Say how many are free.")
    ahead = sessions_ahead(flow)
    first = max(flow.today + timedelta(days=1), ahead.coming[0].day + timedelta(days=1))
    free = [Coming(first + timedelta(days=n), DAY_START, DAY_MINUTES) for n in range(snag.days)]
    plan = flow.session(DAY_MINUTES / 60)
    return _answer(
        flow,
        heard=f"{_days(snag)} free, from {first:%d %B}; as a guess six hours each.",
        said=(f"All that is named for one such day done by packing-up time: {plan.chance_words}.",),
        five=snags.FiveThings(
            opens=tuple(o.name for o in plan.operations if o.sort == "open"),
            renew=tuple(dict.fromkeys(what for o in plan.operations for what in o.needs)),
            order=plan.order[: snags.SWAPPED],
            swap=_steps(plan),
            stop=tuple(stop.what for stop in plan.safe_stops if stop.after),
        ),
        sessions=Sessions(coming=tuple(sorted({*ahead.coming, *free})), known=ahead.known),
    )


def _drop(flow: Flow, snag: Snag) -> WhatIf:
    name = thing_named(snag.thing, flow.vehicle)
    job = snags.job_of(flow.jobs, name)
    if job is None:
        raise BadInput(
            given=f"no job works on {name}", holds="a thing that is wanted or owed", do="See: session."
        )
    ids = frozenset(o.id for o in job.operations)
    left = [o for o in job.operations if o.pays]
    stop = snags.safe_stop(flow.state, name)
    if left:
        stop = (f"still owed, dropped or not: {len(left)} operations that pay for what was opened", *stop)
    return _answer(
        flow,
        heard=f"Without {job.job} {job.name}.",
        said=(
            f"{len(ids)} operations fewer.",
            f"To keep the no with its reason, write: left {job.name}, and why.",
        ),
        five=snags.FiveThings(
            opens=tuple(f"stays shut: {n}" for n in job.opens),
            order=tuple(
                f"not needed now: {w}" for w in dict.fromkeys(w for o in job.operations for w in o.needs)
            ),
            swap=_steps(_swapped(flow, ids)),
            stop=stop,
        ),
        dropped=ids,
    )


def _until_shut(mine: Sequence[Operation], name: str) -> tuple[Operation, ...]:
    """Of a job, what is done to one thing, and what must be done before that is shut again."""
    every = {o.id: o for o in mine}
    todo = [o.id for o in mine if o.name == name and o.sort in ("open", "work", "close")]
    found: set[str] = set()
    while todo:
        id = todo.pop()
        if id in every and id not in found:
            found.add(id)
            todo += every[id].after
    return tuple(o for o in mine if o.id in found)


# ---- pieces of an answer


def _answer(
    flow: Flow,
    *,
    heard: str,
    said: Sequence[str],
    five: snags.FiveThings,
    changed: Mapping[str, Operation] | None = None,
    delays: Mapping[str, int] = NO_DELAYS,
    sessions: Sessions | None = None,
    dropped: frozenset[str] = frozenset(),
) -> WhatIf:
    before = _road(flow, flow.jobs, sessions_ahead(flow))
    jobs = snags.without(_with(flow.jobs, changed or {}), dropped)
    after = _road(flow, jobs, sessions or sessions_ahead(flow), delays)
    return WhatIf(
        heard=heard,
        said=tuple(words for words in said if words),
        five=five,
        before=week_band(before.likely, before.high, flow.today),
        after=week_band(after.likely, after.high, flow.today),
    )


def _road(
    flow: Flow, jobs: Sequence[Job], sessions: Sessions, delays: Mapping[str, int] = NO_DELAYS
) -> GateBand:
    """The road gate's band, with the same luck each time."""
    order = order_ahead(flow, sessions_ahead(flow), jobs)
    seen = outlook(
        flow.state,
        order,
        {"road": gate_operations(flow, "road", order)},
        sessions.coming,
        sessions.known,
        now=flow.now,
        sources=[np.random.default_rng(flow.seed)],
        samples=SAMPLES,
        delays={id: days for id, days in delays.items() if id in order.before},
    )
    return seen.gates[0]


def _with(jobs: Sequence[Job], changed: Mapping[str, Operation]) -> Sequence[Job]:
    if not changed:
        return jobs
    return tuple(replace(j, operations=tuple(changed.get(o.id, o) for o in j.operations)) for j in jobs)


def _operations(flow: Flow) -> dict[str, Operation]:
    return {o.id: o for job in flow.jobs for o in job.operations}


def _swapped(flow: Flow, blocked: frozenset[str]) -> SessionPlan:
    """The next session without what is held up."""
    first = sessions_ahead(flow).coming[0]
    left = snags.without(flow.jobs, blocked)
    owed = tuple(flow.owed)
    return plan_session(
        flow.state, owed, left, hours=first.minutes / 60, helper=first.helper, draw=random.Random(flow.seed),
        now=flow.now,
    )  # fmt: skip


def _steps(plan: SessionPlan) -> tuple[str, ...]:
    return tuple(o.what for o in plan.operations[: snags.SWAPPED])


def _in_one_session(flow: Flow, mine: Sequence[Operation], changed: Mapping[str, Operation]) -> str:
    """The chance of closing that job up in one session, before and now."""
    if not mine or not changed:
        return ""
    first = sessions_ahead(flow).coming[0]
    minutes, overrun = first.minutes * WORK_SHARE, owners_overrun(flow.state)
    was = simulate(mine, minutes, overrun, random.Random(flow.seed)).chance
    now = simulate([changed.get(o.id, o) for o in mine], minutes, overrun, random.Random(flow.seed)).chance
    return f"That job closed up within one session: it was {chance_words(was)}, now {chance_words(now)}."


def _named(flow: Flow, ids: Sequence[str]) -> str:
    operations = _operations(flow)
    names = dict.fromkeys(operations[id].name for id in ids if id in operations)
    return " · ".join([*names][: snags.SWAPPED]) or "nothing"


def _offered(flow: Flow, wanted: frozenset[str]) -> str:
    offers = [line.fact for line in flow.state.supply.offered if wanted <= bare(line.fact.item)]
    named = dict.fromkeys(offer.supplier for offer in offers if offer.supplier)
    return f"offered by {' and '.join(named)}" if named else "no other offer is known"


def _days(snag: Snag) -> str:
    if snag.days % 7 == 0 and snag.days:
        weeks = snag.days // 7
        return "a week" if weeks == 1 else f"{weeks} weeks"
    return "a day" if snag.days == 1 else f"{snag.days} days"


def _guessed(snag: Snag) -> str:
    return "" if snag.told else " (a guess)"


def whatif_screen(flow: Flow, answer: WhatIf) -> Sheet:
    """The answer as a sheet."""
    return whatif_sheet(
        answer.heard, answer.said, answer.five, (answer.before, answer.after),
        vehicle=flow.vehicle.name, today=flow.today, line=flow.line,
    )  # fmt: skip


def whatif_plain(answer: WhatIf) -> dict[str, Any]:
    """The answer as plain values."""
    five = {key: list(getattr(answer.five, key)) for key in snags.FiveThings.__struct_fields__}
    road = {"before": answer.before, "after": answer.after}
    return {"heard": answer.heard, "said": list(answer.said), **five, "road": road}
