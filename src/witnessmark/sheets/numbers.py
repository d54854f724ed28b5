"""The numbers of a joint as they are printed, each with its standing; a gap where none is known."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from witnessmark.sheets.rows import Number, number
from witnessmark.state.sizes import SizeFound, Sizes
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.things import Joint

Lines = Callable[[str, Joint | None], tuple[Number, ...]]
"""The lines of numbers an operation of some sort needs on a joint, at most three."""

NUT_RULES = {
    "figure": "Slotted nut to a figure: on to the next slot, never back.",
    "setting": "Slotted nut that sets a bearing: back to the nearest slot that leaves the book's end float, "
    "never tighter.",
}
NO_FIGURE = "not in this record: read it in your book"
AS_WRITTEN = "as written in this record"
LITRES = "L"
_TO_A_FIGURE = frozenset({"tighten", "set", "connect"})


def figure_of(joint: Joint, kind: Kind | None, plausibility: str = "") -> Number | None:
    """The figure a joint closes at; a gap to fill where it is closed to one and none is known.

    plausibility  how it stands beside what the fastener bears, in a few words
    """
    if joint.figure:
        label = "level" if joint.figure.unit == LITRES else "figure"
        told = number(label, joint.figure.typed, joint.figure.standing, joint.figure.where)
        return told.judged(plausibility)
    if kind is None or kind.closed_by in _TO_A_FIGURE:
        return Number(label="figure", value="", where=NO_FIGURE)
    return None


def fasteners_of(joint: Joint) -> Iterator[Number]:
    """Thread, grade and how many, as they were written into the record."""
    if joint.fasteners:
        yield Number(label="thread" if joint.thread else "fasteners", value=joint.fasteners, where=AS_WRITTEN)


def sizes_of(joint: Joint, sizes: Sizes) -> Iterator[Number]:
    """The size as described, else as found or measured; then those of the things renewed in it."""
    label = "ring" if is_ring(joint) else "size"
    if joint.size:
        yield Number(label=label, value=joint.size, where=AS_WRITTEN)
    elif found := sizes.of.get((joint.name, "")):
        yield _measured(label, found)
    for (name, item), found in sizes.of.items():
        if name == joint.name and item:
            yield _measured(item, found)


def _measured(label: str, found: SizeFound) -> Number:
    return number(label, found.text, "measured", f"line {found.line}")


def is_ring(joint: Joint) -> bool:
    """Whether a joint is an O-ring, by its kind or its name."""
    return joint.kind == "o-ring" or "o-ring" in joint.name


def fluid_of(joint: Joint) -> Iterator[Number]:
    """Fluid and quantity, as they were written into the record."""
    if joint.fluid:
        quantity = f", {joint.quantity.typed}" if joint.quantity else ""
        yield Number(label="fluid", value=joint.fluid + quantity, where=AS_WRITTEN)


def nut_rule(kind: Kind | None) -> str:
    """How a slotted nut of this kind meets its pin; "" where there is none."""
    return NUT_RULES.get(kind.nut_rule, "") if kind else ""
