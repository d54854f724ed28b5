"""The order sheet and the list of needs: what to get, for what, by when, what is to hand or in the post."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from witnessmark.owed.needs import Need
from witnessmark.sheets.phrases import sheet_code, short_day
from witnessmark.sheets.rows import Box, Cells, Section, Sheet


def order_sheet(needs: Sequence[Need], *, vehicle: str, today: date, line: int) -> Sheet:
    """What to order, with a box each; then what is in the post; then what is to hand already."""
    wanted = [need for need in needs if need.short > 0]
    posted = [need for need in needs if need.ordered > 0]
    to_hand = [need for need in needs if need.have > 0]
    return Sheet(
        kind="order",
        title="Order sheet",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("order", "", vehicle, today, line),
        sections=(
            Section(
                heading="to order", rows=tuple(_wanted(need) for need in wanted), empty="Nothing to order."
            ),
            Section(
                heading="in the post", rows=tuple(_held(need, need.ordered, "ordered") for need in posted)
            ),
            Section(heading="to hand", rows=tuple(_held(need, need.have, "to hand") for need in to_hand)),
        ),
        footer=("Measure before you order: a size from memory is tried on first.",),
    )


def needs_sheet(needs: Sequence[Need], *, vehicle: str, today: date, line: int) -> Sheet:
    """Every need in one table."""
    rows = tuple(
        Cells(cells=(n.what, n.size, f"{n.quantity:g}", f"{n.have:g}", f"{n.ordered:g}", _by(n), _for(n)))
        for n in needs
    )
    columns = ("what", "size", "need", "have", "ordered", "by", "for")
    return Sheet(
        kind="needs",
        title="Needs",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("needs", "", vehicle, today, line),
        sections=(Section(heading="everything needed", rows=rows, columns=columns, empty="Nothing needed."),),
    )


def _wanted(need: Need) -> Box:
    told = (f"for {_for(need)}" if need.for_ else "", f"by {_by(need)}" if need.by else "")
    return Box(text=_named(need, need.short), aside="; ".join(part for part in told if part))


def _held(need: Need, number: float, answered: str) -> Box:
    return Box(text=_named(need, number), aside=f"for {_for(need)}" if need.for_ else "", answered=answered)


def _named(need: Need, number: float) -> str:
    return " ".join(part for part in (f"{number:g} ×", need.what, need.size) if part)


def _for(need: Need) -> str:
    return "; ".join(need.for_)


def _by(need: Need) -> str:
    """The session's day, short; other words as they are."""
    try:
        return short_day(date.fromisoformat(need.by))[:-5]
    except ValueError:
        return need.by
