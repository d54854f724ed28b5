"""The way in to something, as a sheet."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from witnessmark.reach.way_in import WayIn
from witnessmark.sheets.phrases import counted, minutes_words, sheet_code
from witnessmark.sheets.rows import Section, Sheet, Step, Words


def reach_sheet(targets: Sequence[str], way: WayIn, *, vehicle: str, today: date, line: int) -> Sheet:
    """What comes off first, what else that opens, and the next best ways."""
    wanted = " and ".join(targets)
    steps = tuple(Step(number=n, text=name) for n, name in enumerate(way.remove, 1))
    sections = [
        Section(heading="Off first, outermost first", rows=steps, empty="Nothing: it can be reached.")
    ]
    if way.joints_opened:
        rows = tuple(Words(text=name) for name in way.joints_opened)
        sections.append(Section(heading="Opened on the way: each will owe its closing", rows=rows))
    if way.open_anyway:
        rows = tuple(Words(text=name) for name in way.open_anyway)
        sections.append(Section(heading="Open anyway, and wanted or owed", rows=rows))
    if way.alternatives:
        rows = tuple(
            Words(text=f"{', '.join(a.remove)} ({minutes_words(a.minutes)})") for a in way.alternatives
        )
        sections.append(Section(heading="Next best ways", rows=rows))
    best = "" if way.proven else " A better way may exist: the search was cut short."
    return Sheet(
        kind="reach",
        title=f"Way in: {wanted}",
        vehicle=vehicle,
        date=today,
        line=line,
        code=sheet_code("reach", wanted, vehicle, today, line),
        headline=f"{counted(len(way.remove), 'thing')} off first, about {minutes_words(way.minutes)}.{best}",
        sections=tuple(sections),
    )
