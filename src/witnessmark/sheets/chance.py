"""The chance as a sheet: closing up in time, when each gate may be reached, what drives it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from witnessmark.plan.learning import Taught
from witnessmark.plan.outlook import Bought, Outlook
from witnessmark.plan.session import SessionPlan
from witnessmark.plan.weeks import week_band
from witnessmark.sheets.phrases import sheet_code
from witnessmark.sheets.rows import Section, Sheet, Words

HOW = (
    "From the session by which it is as likely as not, to the one by which nine of ten such futures are "
    "there. A reached gate is not a release."
)


def chance_sheet(
    seen: Outlook,
    plan: SessionPlan,
    taught: Sequence[Taught],
    names: Mapping[str, str],
    *,
    vehicle: str,
    line: int,
) -> Sheet:
    """One look ahead.

    plan   the next session; taught: what the guesses have taught
    names  of the gates, as screens call them
    """
    name = vehicle or "the vehicle"
    return Sheet(
        kind="chance",
        title="Looking ahead",
        vehicle=name,
        date=seen.today,
        line=line,
        code=sheet_code("chance", "", name, seen.today, line),
        headline=f"All of the next session done by packing-up time: {plan.chance_words}.",
        sections=(
            Section(
                heading="when each gate may be reached",
                note=HOW,
                rows=tuple(
                    Words(
                        label=names.get(band.gate, band.gate),
                        text=week_band(band.likely, band.high, seen.today),
                    )
                    for band in seen.gates
                ),
            ),
            Section(
                heading="what drives it, the most first",
                rows=tuple(Words(text=f"{n}. {one.says}") for n, one in enumerate(seen.drivers, 1)),
                empty="Nothing stands out.",
            ),
            Section(heading="what more would bring", rows=tuple(Words(text=_brings(b)) for b in seen.bought)),
            Section(heading="what your own log has taught", rows=tuple(Words(text=t.says) for t in taught)),
            *_wants_longer(seen),
        ),
        footer=(_from(seen),),
    )


def _brings(bought: Bought) -> str:
    weeks = "1 week" if bought.weeks == 1 else f"{bought.weeks} weeks"
    return f"{bought.what}: about {weeks} sooner" if bought.weeks else f"{bought.what}: hardly anything"


def _wants_longer(seen: Outlook) -> Iterator[Section]:
    if seen.too_long:
        yield Section(
            heading="wants a longer session than the usual one",
            rows=tuple(Words(text=what) for what in seen.too_long),
        )


def _from(seen: Outlook) -> str:
    return (
        f"{seen.operations} operations through {seen.samples:,} futures; sessions {seen.known}; "
        f"who comes and what is called off from {seen.counted} sessions. What nobody has found yet is drawn "
        "from what openings turned up so far."
    )
