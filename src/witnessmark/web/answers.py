"""Pages that answer: the session, what is owed, the gates, needs, the shelf, the vehicle by place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from msgspec.structs import replace

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import paying, shelf_screen, words_on
from witnessmark.restoration.sheet import Asked, gate_screen, make_sheet, owed_screen
from witnessmark.sheets.gate import FULL
from witnessmark.sheets.rows import JointRow, Section, Sheet, Words
from witnessmark.web.asked import hours_of, number_of
from witnessmark.web.going import unhurried
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

GATES = ("start", "roll", "inspection", "road")
COMMAND = {"inspection": "test"}
MOST_ROWS = 40
LENGTHS = (("35 min", "0.58"), ("1 h", "1"), ("2 h", "2"), ("3 h", "3"), ("5 h", "5"))


@require_safe
@unhurried("the session")
@with_record
def session_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What fits, the chance of closing up by packing-up time, where it can be put down."""
    flow = restoration.flow()
    hours, helper = hours_of(request), bool(request.GET.get("helper"))
    sheet = make_sheet(flow, Asked(kind="session", hours=hours, helper=helper))
    return sheet_shown(
        request, flow, sheet, "session.html", hours=f"{hours:g}", helper=helper, lengths=LENGTHS
    )


@require_safe
@with_record
def owed_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What is owed, by what happens if it is missed, the heaviest first."""
    flow = restoration.flow()
    return sheet_shown(request, flow, owed_screen(flow, full=True), "parts.html")


@require_safe
@with_record
def gates_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The four gates, each with its one line."""
    flow = restoration.flow()
    gates = [(name, flow.gate(COMMAND.get(name, name))) for name in GATES]
    return page(request, "gates.html", flow, gates=gates)


@require_safe
@with_record
def gate_page(request: HttpRequest, restoration: Restoration, name: str) -> HttpResponse:
    """What holds one gate, and why, down to the journal line."""
    if name not in GATES:
        raise BadInput(
            given=f"there is no gate {name!r}", holds=f"one of {', '.join(GATES)}", do="Choose one."
        )
    flow = restoration.flow()
    sheet = gate_screen(flow, COMMAND.get(name, name), FULL)
    return sheet_shown(request, flow, sheet, "parts.html", up=("/gate", "All four gates"))


@require_safe
@with_record
def needs_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What to get, what is in the post, what is to hand."""
    flow = restoration.flow()
    wanted = [need for need in flow.needs if need.short > 0]
    posted = [need for need in flow.needs if need.ordered > 0]
    to_hand = [need for need in flow.needs if need.have > 0]
    return page(request, "needs.html", flow, wanted=wanted, posted=posted, to_hand=to_hand)


@require_safe
@with_record
def shelf_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Parts and bags by where they lie."""
    flow = restoration.flow()
    return sheet_shown(request, flow, shelf_screen(flow), "sheet.html")


def sheet_shown(request: HttpRequest, flow: Flow, sheet: Sheet, template: str, **values: Any) -> HttpResponse:
    """A sheet as a page: each thing owed with the line that pays it, each reason with the words behind it.

    A long sheet is shown one section at a time; `part` in the address says which, `past` how many of its
    rows were shown before.
    """
    part = min(number_of(request.GET.get("part", "")), max(0, len(sheet.sections) - 1))
    past = number_of(request.GET.get("past", ""))
    rows = len(sheet.sections[part].rows) if sheet.sections else 0
    values |= {"part": part, "chosen": bool(request.GET.get("part")), "further": 0}
    if template == "parts.html" and rows > past + MOST_ROWS:
        values["further"] = past + MOST_ROWS
    sections = tuple(
        _cut(section, past if template == "parts.html" and n == part else 0, tell=template != "parts.html")
        for n, section in enumerate(sheet.sections)
    )
    sheet = replace(sheet, sections=sections)
    lines = words_on(flow, [line for section in sheet.sections for line in _lines(section)])
    return page(request, template, flow, sheet=sheet, pays=paying(flow), lines=lines, **values)


def _cut(section: Section, past: int, *, tell: bool) -> Section:
    """A section short enough for a page; with `tell` it says how many rows are left for paper."""
    if section.columns:
        return section
    shown = section.rows[past : past + MOST_ROWS]
    more = len(section.rows) - past - len(shown)
    if tell and more > 0:
        shown = (*shown, Words(text=f"and {more} more, on paper", sort="loud"))
    return replace(section, rows=shown)


def _lines(section: Section) -> Iterator[int]:
    for row in section.rows:
        if isinstance(row, JointRow):
            yield from (line for line in (row.line, *(due.line for due in row.dues)) if line)
