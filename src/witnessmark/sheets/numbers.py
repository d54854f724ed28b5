"""The numbers of a joint as they are printed, each with its standing; a gap where none is known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from witnessmark.jobs.operation import Operation
from witnessmark.sheets.rows import Number, number
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Joint

NUT_RULES = {
    "figure": "Slotted nut to a figure: on to the next slot, never back.",
    "setting": "Slotted nut that sets a bearing: back to the nearest slot that leaves the book's end float, "
    "never tighter.",
}
NO_FIGURE = "not in this record: read it in your book"
AS_WRITTEN = "as written in this record"
_TO_A_FIGURE = frozenset({"tighten", "set", "connect"})
_CLOSING = frozenset({"close", "prove"})


def figure_of(joint: Joint, kind: Kind | None) -> Number | None:
    """The figure a joint closes at; a gap to fill where it is closed to one and none is known."""
    if joint.figure:
        return number("figure", joint.figure.typed, joint.figure.standing, joint.figure.where)
    if kind is None or kind.closed_by in _TO_A_FIGURE:
        return Number(label="figure", value="", where=NO_FIGURE)
    return None


def sizes_of(joint: Joint) -> Iterator[Number]:
    """Thread, size, fluid and quantity, as they were written into the record."""
    thread = " ".join(part for part in (joint.thread, joint.grade) if part)
    many = f"{joint.number} off" if joint.number > 1 else ""
    if thread or many:
        yield _written("thread" if thread else "fasteners", thread, many)
    if joint.size:
        yield _written("size", joint.size)
    if joint.fluid:
        yield _written("fluid", joint.fluid, joint.quantity.typed if joint.quantity else "")


def _written(label: str, *values: str) -> Number:
    return Number(label=label, value=", ".join(v for v in values if v), where=AS_WRITTEN)


def nut_rule(kind: Kind | None) -> str:
    """How a slotted nut of this kind meets its pin; "" where there is none."""
    return NUT_RULES.get(kind.nut_rule, "") if kind else ""


def numbers_of(
    operation: Operation, joint: Joint | None, catalogue: Mapping[str, Kind]
) -> tuple[Number, ...]:
    """The numbers one operation needs: the figure where it closes or proves, sizes always."""
    if joint is None:
        return ()
    kind = catalogue.get(joint.kind)
    figure = figure_of(joint, kind) if operation.sort in _CLOSING else None
    return (*((figure,) if figure else ()), *sizes_of(joint))
