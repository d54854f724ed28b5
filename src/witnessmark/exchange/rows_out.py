"""Parts and joints as rows under the same headings they are read by."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from witnessmark.exchange.cells import read_band, read_with_unit
from witnessmark.exchange.columns import OWED_HEADINGS, plain_heading
from witnessmark.ground.errors import BadInput
from witnessmark.ground.missed import if_missed
from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Figure, Joint, Part, Routes, Vehicle

OutRow = Mapping[str, str | int]  # by heading; what is missing is an empty cell


def part_rows(vehicle: Vehicle) -> list[OutRow]:
    """A row for each part, in the order they were described."""
    return [_part(part) for part in vehicle.parts.values()]


def joint_rows(vehicle: Vehicle) -> list[OutRow]:
    """A row for each joint, in the order they were described."""
    return [_joint(joint) for joint in vehicle.joints.values()]


def owed_rows(rows: Iterable[Mapping[str, object]]) -> list[OutRow]:
    """What is owed, as it is asked for by other programs, under headings to be read by a person."""
    shown: list[OutRow] = []
    for row in rows:
        said = {plain_heading(key): value for key, value in row.items()}
        shown.append({heading: _shown(said.get(heading)) for heading in OWED_HEADINGS})
    return shown


def _shown(value: object) -> str | int:
    if value is None:
        return ""
    return value if isinstance(value, int) else str(value).replace("_", " ")


def _part(part: Part) -> OutRow:
    name, side = parted(part.name)
    return {
        "name": name,
        "side": side,
        "place": part.place,
        "part of": part.assembly,
        "number": part.number,
        "where": part.where,
        "note": part.note,
    }


def _joint(joint: Joint) -> OutRow:
    name, side = parted(joint.name)
    figure = joint.figure
    return {
        "name": name,
        "side": side,
        "place": joint.place,
        "part of": joint.assembly,
        "kind": joint.kind,
        "holds": "; ".join(joint.holds),
        "behind": ways_in(joint.behind),
        "number": joint.number,
        "figure": figure_text(figure) if figure else "",
        "source": figure.standing if figure else "",
        "where": figure.where if figure else "",
        "thread": joint.thread,
        "grade": joint.grade,
        "fluid": joint.fluid,
        "quantity": quantity_text(joint.quantity) if joint.quantity else "",
        "size": joint.size,
        "if missed": if_missed(joint.if_missed).words if joint.if_missed else "",
        "note": joint.note,
    }


def ways_in(routes: Routes) -> str:
    """Routes as they are typed.

    >>> ways_in((("wheel", "brake drum"), ("axle cover",)))
    'wheel; brake drum or axle cover'
    """
    return " or ".join("; ".join(way) for way in routes)


def figure_text(figure: Figure) -> str:
    """The figure as typed, where that reads back as the same band; else its band in the inside unit.

    >>> figure_text(Figure(low=45.0, high=50.0, unit="N·m", typed="a bit under fifty"))
    '45 to 50 N·m'
    """
    try:
        read = read_band(figure.typed)
    except BadInput:
        read = None
    if read and (read.low, read.high, read.unit) == (figure.low, figure.high, figure.unit):
        return figure.typed
    low, high = _number(figure.low), _number(figure.high)
    return f"{low} {figure.unit}" if low == high else f"{low} to {high} {figure.unit}"


def quantity_text(quantity: Quantity) -> str:
    """The quantity as typed, where that reads back as the same; else its value in the inside unit."""
    try:
        read = read_with_unit(quantity.typed)
    except BadInput:
        read = None
    if read and (read.value, read.unit) == (quantity.value, quantity.unit):
        return quantity.typed
    return f"{_number(quantity.value)} {quantity.unit}"


def _number(value: float) -> str:
    return str(int(value)) if value == int(value) else repr(value)
