"""A what-if as a sheet: the answer on top, then the five things, then what it does to the road."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from witnessmark.plan.snags import FiveThings
from witnessmark.sheets.phrases import sheet_code
from witnessmark.sheets.rows import Section, Sheet, Words

HEADINGS = (
    ("opens", "what else opens"),
    ("renew", "goes in new on the way in"),
    ("order", "order tonight"),
    ("swap", "swaps in"),
    ("stop", "where to stop safely"),
)


def whatif_sheet(
    heard: str,
    said: Sequence[str],
    five: FiveThings,
    road: tuple[str, str],
    *,
    vehicle: str,
    today: date,
    line: int,
) -> Sheet:
    """One answer.

    heard  what was understood; said: the answer in a line or two
    road   the road gate's band of weeks, before and after
    """
    name = vehicle or "the vehicle"
    before, after = road
    moved = f"Road: {before}, as before." if before == after else f"Road: it was {before}; now {after}."
    return Sheet(
        kind="what if",
        title="What if",
        vehicle=name,
        date=today,
        line=line,
        code=sheet_code("what if", "", name, today, line),
        headline=heard[:1].upper() + heard[1:],
        sections=(
            Section(heading="the answer", rows=tuple(Words(text=words) for words in (*said, moved))),
            *(
                Section(heading=heading, rows=tuple(Words(text=words) for words in getattr(five, key)))
                for key, heading in HEADINGS
            ),
        ),
        footer=("Nothing was written. Your own book comes first; a reached gate is not a release.",),
    )
