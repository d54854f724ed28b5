"""The order sheet and the list of needs: what to get, for what, by when, what is to hand or in the post."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any, Protocol

from witnessmark.sheets.phrases import sheet_code, short_day
from witnessmark.sheets.rows import Box, Cells, Section, Sheet


class NeedLike(Protocol):
    """What a sheet asks of a need.

    for_  what it is for: a name, or several; by: the day it is needed, or None
    have, ordered  how many are to hand, and how many are in the post
    """

    @property
    def what(self) -> str: ...
    @property
    def size(self) -> str: ...
    @property
    def quantity(self) -> float: ...
    @property
    def for_(self) -> Any: ...
    @property
    def by(self) -> Any: ...
    @property
    def have(self) -> float: ...
    @property
    def ordered(self) -> float: ...


def order_sheet(needs: Sequence[NeedLike], *, vehicle: str, today: date, line: int) -> Sheet:
    """What to order, with a box each; then what is in the post; then what is to hand already."""
    wanted = [need for need in needs if _short(need) > 0]
    posted = [need for need in needs if _short(need) <= 0 and need.ordered > 0]
    to_hand = [need for need in needs if _short(need) <= 0 and need.ordered <= 0]
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


def needs_sheet(needs: Sequence[NeedLike], *, vehicle: str, today: date, line: int) -> Sheet:
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


def _short(need: NeedLike) -> float:
    """How many are neither to hand nor in the post."""
    return need.quantity - need.have - need.ordered


def _wanted(need: NeedLike) -> Box:
    by = _by(need)
    aside = "; ".join(part for part in (_for(need), f"by {by}" if by else "") if part)
    return Box(text=_named(need, _short(need)), aside=f"for {aside}" if _for(need) else aside)


def _held(need: NeedLike, number: float, answered: str) -> Box:
    return Box(text=_named(need, number), aside=f"for {_for(need)}" if _for(need) else "", answered=answered)


def _named(need: NeedLike, number: float) -> str:
    return " ".join(part for part in (f"{number:g} ×", need.what, need.size) if part)


def _for(need: NeedLike) -> str:
    return need.for_ if isinstance(need.for_, str) else ", ".join(str(name) for name in need.for_ or ())


def _by(need: NeedLike) -> str:
    return short_day(need.by) if isinstance(need.by, date) else str(need.by or "")
