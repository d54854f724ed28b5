"""A row of each sheet becomes what it says: parts, joints, jobs, stock; what is offered stands by itself."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from msgspec.structs import replace

from witnessmark.exchange.cells import (
    Names,
    read_amount,
    read_band,
    read_if_missed,
    read_job,
    read_kind,
    read_minutes,
    read_side,
    read_standing,
    read_whole,
    read_with_unit,
)
from witnessmark.exchange.grid import Row
from witnessmark.exchange.offers_in import offer_in, supplier_in
from witnessmark.exchange.row_read import Read
from witnessmark.ground.errors import BadInput
from witnessmark.ground.pedigree import rank
from witnessmark.journal.facts import AnyFact, Described, Guessed, Owned, Wanted
from witnessmark.vehicle.sides import parted, whole_name
from witnessmark.vehicle.things import Figure, Joint, Part, Routes, Vehicle

NONE: tuple[str, ...] = ()
NO_WAY: Routes = ()
RowReader = Callable[[Row, Vehicle, frozenset[str]], Read]


def name_in(row: Row, vehicle: Vehicle) -> tuple[str, str]:
    """The whole name and the side of the thing a row describes; a name may carry its side itself."""
    side = row.read("side", lambda text: read_side(text, vehicle.country), "")
    plain, own = parted(whole_name(row.text("name")))
    return whole_name(plain, side or own), side or own


def assembly_in(row: Row) -> str:
    """The assembly a row names, as the record writes it."""
    return whole_name(row.text("part of"))


def part_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """A part. An empty cell leaves what the record knew."""
    name, side = name_in(row, vehicle)
    before = vehicle.parts.get(name, Part(name=name))
    part = replace(
        before,
        side=side or before.side,
        place=row.text("place") or before.place,
        assembly=assembly_in(row) or before.assembly,
        number=row.read("number", read_whole, before.number),
        where=row.text("where") or before.where,
        note=row.text("note") or before.note,
    )
    return Read(row=row, facts=(Described(parts=(part,)),))


def joint_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """A joint. An empty cell leaves what the record knew."""
    name, side = name_in(row, vehicle)
    before = vehicle.joints.get(name, Joint(name=name))
    names = Names(known - {name}, side)
    holds = row.read("holds", names.several, NONE)
    behind = row.read("behind", names.routes, NO_WAY)
    joint = replace(
        before,
        side=side or before.side,
        place=row.text("place") or before.place,
        assembly=assembly_in(row) or before.assembly,
        kind=row.read("kind", read_kind, before.kind),
        holds=holds or before.holds,
        behind=behind or before.behind,
        number=row.read("number", read_whole, before.number),
        figure=_figure_in(row, before.figure),
        thread=row.text("thread") or before.thread,
        grade=row.text("grade") or before.grade,
        fluid=row.text("fluid") or before.fluid,
        quantity=row.read("quantity", read_with_unit, before.quantity),
        size=row.text("size") or before.size,
        if_missed=row.read("if missed", read_if_missed, before.if_missed),
        note=row.text("note") or before.note,
    )
    leans = [("holds", one) for one in holds] + [("behind", one) for way in behind for one in way]
    return Read(row=row, facts=(Described(joints=(joint,)),), leans_on=tuple(leans))


def _figure_in(row: Row, before: Figure | None) -> Figure | None:
    """The figure with its source; one of lower standing does not take the place of a better one."""
    figure = row.read("figure", read_band, None)
    standing = row.read("source", read_standing, "guess")
    if figure is None:
        for heading in ("source", "where"):
            if row.text(heading) and not row.text("figure"):
                row.note(heading, _no_figure(row.text(heading)))
        return before
    figure = replace(figure, standing=standing, where=row.text("where"))
    if before and rank(standing) > rank(before.standing):
        row.note("figure", _lower(figure, before))
    return figure


def _no_figure(text: str) -> BadInput:
    return BadInput(
        given=f"{text!r} is a source without a figure",
        holds="a figure beside it, as 47 N·m",
        do="Fill in the figure, or empty the cell.",
    )


def _lower(figure: Figure, before: Figure) -> BadInput:
    return BadInput(
        given=f"{figure.typed} is a figure from {figure.standing}; the record holds {before.typed}, "
        f"{before.standing}",
        holds=f"a figure that stands at least as high as {before.standing}",
        do="Say where the new figure comes from, or empty the cell.",
    )


def job_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """A job wanted, with the owner's three guesses where they are given."""
    job = row.read("job", read_job, "")
    thing = row.read("thing", Names(known).one, "")
    guesses = [row.read(heading, read_minutes, 0.0) for heading in ("well", "likely", "if it fights")]
    facts: list[AnyFact] = [Wanted(at=(thing,), job=job)]
    if any(row.text(heading) for heading in ("well", "likely", "if it fights")):
        low, likely, high = guesses
        if not row.troubles and not 0 < low <= likely <= high:
            row.note("likely", _three_guesses())
        facts.append(Guessed(at=(thing,), job=job, low=low, likely=likely, high=high))
    return Read(row=row, facts=tuple(facts), leans_on=(("thing", thing),) if thing else ())


def _three_guesses() -> BadInput:
    return BadInput(
        given="the three guesses are not all there, or not in order",
        holds="well, likely and if it fights, each at least as long as the one before",
        do="Fill in all three, or none.",
    )


def stock_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """Something in the box or on the shelf."""
    number = row.read("number", read_amount, 1.0)
    return Read(row=row, facts=(Owned(item=row.text("item"), number=number, size=row.text("size")),))


READERS: Mapping[str, RowReader] = MappingProxyType(
    {
        "parts": part_in,
        "joints": joint_in,
        "jobs": job_in,
        "stock": stock_in,
        "offers": offer_in,
        "suppliers": supplier_in,
    }
)
