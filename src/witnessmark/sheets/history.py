"""The history file: the whole restoration for an inspector or a buyer, out of the record and nothing else.

Structure with its photos before paint, what lets go, figures with their standing, parts with their sources,
what was found and what became of it, and what still stands open. It vouches for nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date

from msgspec import Struct

from witnessmark.gate.answer import GateAnswer
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AtFact,
    Came,
    Closed,
    Coated,
    Fitted,
    Guessed,
    Offered,
    Ordered,
    Photographed,
    Tightened,
    Welded,
)
from witnessmark.sheets.history_tables import figures, findings, kept_noes, parts
from witnessmark.sheets.phrases import counted, missed_words, sheet_code, short_day
from witnessmark.sheets.rows import Cells, JointRow, Picture, Pictures, Row, Section, Sheet, Words
from witnessmark.state.closing import lets_go
from witnessmark.state.photos import Pair, Taken
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.things import Joint, Vehicle

STRUCTURE = "structure"
_NO_WORK = (Photographed, Ordered, Came, Offered, Guessed)
_MOST_LINES = 14
_MOST_PHOTOS = 6
_MOST_PAIRS = 24
_MOST_OPEN = 40
NOTES = (
    "This file was put together from the owner's own record. It is no inspection, no certificate and no "
    "valuation, and it vouches for nothing.",
    "Structure, brakes, steering and restraint are for somebody licensed to judge, at the vehicle itself. "
    "The vehicle's manual and the authority of the place stand above every figure here.",
)
FOOTER = ("What was never written down is not in here.",)


class History(Struct, frozen=True, kw_only=True):
    """What a history is made of.

    entries  what stands in the record, in reading order
    struck   how many lines were struck; they stay to be read in the journal
    words    the word for each joint's state
    """

    entries: tuple[Entry, ...]
    struck: int
    state: State
    photos: tuple[Taken, ...]
    pairs: tuple[Pair, ...]
    road: GateAnswer
    words: Mapping[str, str]

    @property
    def vehicle(self) -> Vehicle:
        return self.state.vehicle


def history_sheet(of: History, *, today: date) -> Sheet:
    """The whole restoration as one sheet."""
    vehicle = of.vehicle.name or "the vehicle"
    line = of.state.last_line
    return Sheet(
        kind="history",
        title="History of a restoration",
        vehicle=vehicle,
        date=today,
        line=line,
        code=sheet_code("history", "", vehicle, today, line),
        sections=(
            _about(of),
            _structure(of),
            _letting_go(of),
            figures(of.entries, of.vehicle),
            parts(of.entries),
            findings(of.entries, of.state),
            *_pairs(of),
            _open(of),
            *kept_noes(of.state),
        ),
        notes=NOTES,
        footer=FOOTER,
    )


def _about(of: History) -> Section:
    days = [entry.day for entry in of.entries]
    span = f", done from {short_day(min(days))} to {short_day(max(days))}" if days else ""
    rows = [Words(text=f"{counted(len(of.entries), 'line')} of work and notes{span}.")]
    rows.append(Words(text=f"{counted(len(of.photos), 'photo')}, each kept as it was first put in."))
    if of.struck:
        struck = counted(of.struck, "line")
        rows.append(Words(text=f"{struck} struck as wrong: left out here, still to be read in the journal."))
    return Section(heading="what this is", rows=tuple(rows))


# ---- structure, before paint


def _structure(of: History) -> Section:
    rows: list[Row] = []
    lines = _by_name(of.entries)
    coats = [entry for entry in of.entries if isinstance(entry.fact, Coated)]
    for joint in of.vehicle.joints.values():
        if kind_of(joint.kind).system == STRUCTURE and joint.kind != "unsaid":
            rows += _repair(of, joint, lines, coats)
    return Section(
        heading="structure",
        note="each repair with what was written, and its photos before paint",
        rows=tuple(rows),
        empty="This record says nothing of any structure being repaired or opened.",
    )


def _by_name(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    """The lines of work about each thing, in reading order; those about buying stay out."""
    found: dict[str, list[Entry]] = {}
    for entry in entries:
        if isinstance(entry.fact, AtFact) and not isinstance(entry.fact, _NO_WORK):
            for name in entry.fact.at:
                found.setdefault(name, []).append(entry)
    return found


def _repair(
    of: History, joint: Joint, lines: Mapping[str, list[Entry]], coats: Sequence[Entry]
) -> Iterator[Row]:
    names = {joint.name, *joint.holds}
    own = sorted({e.line: e for name in names for e in lines.get(name, ())}.values(), key=lambda e: e.place)
    photos = [one for one in of.photos if names.intersection(one.at)]
    if not own and not photos:
        return
    state = of.state.joints[joint.name]
    missed = missed_words(joint.if_missed or kind_of(joint.kind).if_missed)
    yield JointRow(name=joint.name, state=of.words[joint.name], if_missed=missed, line=state.line)
    for entry in own[:_MOST_LINES]:
        yield Words(label=short_day(entry.day), text=f"{entry.words} (line {entry.line}, {entry.who})")
    if len(own) > _MOST_LINES:
        yield Words(text=f"and {counted(len(own) - _MOST_LINES, 'line')} more in the journal", sort="aside")
    paint = _paint(of.vehicle, joint, own, coats)
    before = [one for one in photos if paint is None or (one.day, one.line) < (paint.day, paint.line)]
    yield _shown("before paint", before) if before else Words(text="No photo before paint in this record.")
    after = [one for one in photos if one not in before]
    if after:
        yield _shown("afterwards", after)
    painted = f"Painted {short_day(paint.day)}, line {paint.line}." if paint else "No paint in this record."
    yield Words(text=painted, sort="aside")


def _paint(vehicle: Vehicle, joint: Joint, own: Sequence[Entry], coats: Sequence[Entry]) -> Entry | None:
    """The first coat on the joint, or on a thing of its assembly and side, once it was last closed."""
    closed = [e.place for e in own if isinstance(e.fact, Welded | Fitted | Tightened | Closed)]
    for coat in coats if closed else ():
        names = coat.fact.at if isinstance(coat.fact, Coated) else ()
        if coat.place >= closed[-1] and any(_is_beside(vehicle, joint, name) for name in names):
            return coat
    return None


def _is_beside(vehicle: Vehicle, joint: Joint, name: str) -> bool:
    return name == joint.name or bool(joint.assembly and vehicle.assembly_of(name) == joint.assembly)


def _shown(label: str, photos: Sequence[Taken]) -> Pictures:
    few = photos if len(photos) <= _MOST_PHOTOS else [*photos[: _MOST_PHOTOS - 2], *photos[-2:]]
    return Pictures(label=label, pictures=tuple(_picture(one) for one in few))


def _picture(one: Taken, led: str = "") -> Picture:
    return Picture(file=one.name, caption=f"{led}{short_day(one.day)}, line {one.line}: {one.words}")


# ---- what lets go, before and after, what stands open


def _letting_go(of: History) -> Section:
    rows, untouched = [], 0
    for joint in of.vehicle.joints.values():
        state = of.state.joints[joint.name]
        if not lets_go(joint, kind_of(joint.kind)) or state.scrapped:
            continue
        if state.opened_line is None and state.closed_line is None:
            untouched += 1
            continue
        proved = sorted({*state.answered.values()})
        closed = f"{short_day(state.closed_day)}, line {state.closed_line}" if state.closed_day else ""
        lines = ", ".join(f"{line}" for line in proved)
        rows.append(Cells(cells=(joint.name, of.words[joint.name], closed, lines)))
    return Section(
        heading="what lets go",
        note=f"as found, never touched: {untouched}; of these the record does not say how they hold"
        if untouched
        else "",
        columns=("part", "state", "made tight", "proved by lines"),
        rows=tuple(rows),
        empty="Nothing that lets go was opened or closed in this record.",
    )


def _pairs(of: History) -> Iterator[Section]:
    if of.pairs:
        rows = tuple(
            Pictures(label=p.thing, pictures=(_picture(p.before, "Before, "), _picture(p.after, "After, ")))
            for p in of.pairs[-_MOST_PAIRS:]
        )
        yield Section(heading="before and after", rows=rows)


def _open(of: History) -> Section:
    holds = _few(f"{hold.name}: {hold.what}" if hold.name else hold.what for hold in of.road.holds)
    unknown = _few(one.name for one in of.road.not_known)
    return Section(
        heading="what stands open",
        note=of.road.headline(),
        rows=(
            *(Words(text=words) for words in holds),
            *(Words(label="not known to this record", text=words) for words in unknown),
        ),
        empty="Nothing known to this record. This is not a release.",
    )


def _few(words: Iterable[str]) -> list[str]:
    every = list(dict.fromkeys(words))
    rest = len(every) - _MOST_OPEN
    return every[:_MOST_OPEN] + ([f"and {counted(rest, 'thing')} more"] if rest > 0 else [])
