"""Tables of the history file: figures with their standing, parts with their sources, findings, kept noes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import Came, Fitted, Found, Measured, Ordered, Proved, ReadFigure, Tightened
from witnessmark.sheets.phrases import short_day
from witnessmark.sheets.rows import Cells, Section, Words
from witnessmark.state.standing import State
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.lexicon import stems

NOT_SAID = "not said"
AT_THE_WRENCH = "as set at the wrench"


def figures(entries: Sequence[Entry], vehicle: Vehicle) -> Section:
    """Every figure that was read, measured or set, with where it comes from."""
    rows: list[Cells] = []
    for entry in entries:
        match entry.fact:
            case ReadFigure(at=at, figure=figure) if figure is not None:
                where = f"{figure.standing}, {figure.where}" if figure.where else figure.standing
                rows += [_figure(name, "to close at", figure.typed, where, entry) for name in at]
            case Measured(at=at, what=what, figures=typed) | Proved(at=at, check=what, figures=typed):
                rows += [
                    _figure(name, what or "measured", quantity.typed, "measured", entry)
                    for name in at
                    for quantity in typed
                ]
            case Tightened(at=at, figures=typed):
                rows += [
                    _figure(name, "tightened", quantity.typed, AT_THE_WRENCH, entry)
                    for name in at
                    for quantity in typed
                ]
            case _:
                continue
    read = {row.cells[0] for row in rows if row.cells[1] == "to close at"}
    for joint in vehicle.joints.values():
        if joint.figure and joint.name not in read:
            where = ", ".join(part for part in (joint.figure.standing, joint.figure.where) if part)
            rows.append(Cells(cells=(joint.name, "to close at", joint.figure.typed, where, "", "")))
    return Section(
        heading="figures, with their standing",
        columns=("part", "of what", "figure", "standing", "day", "line"),
        rows=tuple(rows),
        empty="No figure is in this record.",
    )


def _figure(name: str, what: str, typed: str, standing: str, entry: Entry) -> Cells:
    return Cells(cells=(name, what, typed, standing, short_day(entry.day), f"{entry.line}"))


def parts(entries: Sequence[Entry]) -> Section:
    """What was fitted new, and where it came from; no price is told."""
    sources: dict[tuple[str, ...], str] = {}
    rows = []
    for entry in entries:
        fact = entry.fact
        if isinstance(fact, Ordered | Came):
            if fact.supplier:
                sources[_stems(fact.item)] = fact.supplier
        elif isinstance(fact, Fitted) and (fact.new or fact.item):
            for name in fact.at:
                item = fact.item or parted(name)[0]
                source = sources.get(_stems(item), NOT_SAID) if fact.new else fact.why_not_new or "not new"
                rows.append(Cells(cells=(item, name, source, short_day(entry.day), f"{entry.line}")))
    return Section(
        heading="parts, with their sources",
        columns=("part", "at", "from", "fitted", "line"),
        rows=tuple(rows),
        empty="No new part is in this record.",
    )


@lru_cache(maxsize=2000)
def _stems(item: str) -> tuple[str, ...]:
    """What an item is compared by; the same few hundred come again and again."""
    return stems(item)


def findings(entries: Sequence[Entry], state: State) -> Section:
    """What was found wrong, and whether it still stands so."""
    still = {(name, found.line) for name, joint in state.joints.items() for found in joint.findings}
    rows = []
    for entry in entries:
        fact = entry.fact
        if isinstance(fact, Found) and condition(fact.condition).bad:
            for name in fact.at:
                what = f"{fact.item} {fact.condition}".strip()
                now = _now(state, name, (name, entry.line) in still)
                rows.append(Cells(cells=(name, what, short_day(entry.day), f"{entry.line}", now)))
    return Section(
        heading="what was found",
        columns=("part", "found", "day", "line", "now"),
        rows=tuple(rows),
        empty="Nothing wrong was found and written down.",
    )


def _now(state: State, name: str, still: bool) -> str:
    if name not in state.joints:
        return ""
    return "still so" if still else "put right"


def kept_noes(state: State) -> Iterator[Section]:
    """What was left as it is, and why."""
    rows = tuple(
        Words(label=short_day(one.day), text=f"{', '.join(one.fact.at)}: {one.fact.why} (line {one.line})")
        for one in state.supply.left
    )
    if rows:
        yield Section(heading="left as it is, and why", rows=rows)
