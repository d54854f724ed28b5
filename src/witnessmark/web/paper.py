"""Sheets as pages and as paper: the same value both ways. A printed sheet is a line of the record."""

from __future__ import annotations

from typing import Literal
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods, require_safe

from witnessmark.ground.errors import BadInput
from witnessmark.press.printing import to_pdf
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.sheet import KINDS, Asked, keep_printed, make_sheet
from witnessmark.web.answers import COMMAND, sheet_shown
from witnessmark.web.asked import hours_of
from witnessmark.web.going import go_on, unhurried
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

# What each sheet is for, in the order they are used in a session.
FOR = (
    ("wall", "Wall sheet", "what lets go and is apart or loose, today's three, what not to forget"),
    ("session", "Session sheet", "what fits, with its numbers, and where it can be put down"),
    ("helper", "Helper's sheet", "what takes four hands, by where they stand"),
    ("order", "Order sheet", "what to get tonight"),
    ("labels", "Labels", "one for each bag and each part that is off"),
    ("gate", "Gate sheet", "what holds the road gate"),
)


@require_safe
@with_record
def sheets_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Every sheet there is; closing sheets by assembly, those with something open first."""
    flow = restoration.flow()
    open_now = {d.assembly for d in flow.owed if d.assembly and d.sort in ("close", "renew", "check")}
    assemblies = sorted(flow.vehicle.assemblies, key=lambda name: (name not in open_now, name))
    return page(request, "sheets.html", flow, kinds=FOR, assemblies=assemblies, open_now=open_now)


@require_http_methods(["GET", "HEAD", "POST"])
@unhurried("the sheet")
@with_record
def sheet_page(request: HttpRequest, restoration: Restoration, kind: str) -> HttpResponse:
    """One sheet: read here, or printed as PDF, which the record then says."""
    if kind not in KINDS:
        raise BadInput(
            given=f"there is no {kind!r} sheet", holds=f"one of {', '.join(KINDS)}", do="Choose one."
        )
    flow = restoration.flow()
    sheet = make_sheet(flow, _asked(request, kind))
    if request.method == "POST":
        return _printed(restoration, flow, request, kind)
    same = urlencode(
        {key: value for key, value in request.GET.items() if key in ("of", "gate", "hours", "helper")}
    )
    return sheet_shown(request, flow, sheet, "paper.html", same=same)


def _asked(request: HttpRequest, kind: str) -> Asked:
    gate = request.GET.get("gate", "road")
    return Asked(
        kind=kind,
        gate=COMMAND.get(gate, gate),
        assembly=request.GET.get("of", ""),
        hours=hours_of(request),
        helper=bool(request.GET.get("helper")),
    )


def _printed(restoration: Restoration, flow: Flow, request: HttpRequest, kind: str) -> HttpResponse:
    sheet = make_sheet(flow, _asked(request, kind))
    paper: Literal["a4", "us-letter"] = "us-letter" if request.POST.get("paper") == "letter" else "a4"
    go_on(request)
    made = to_pdf(sheet, paper=paper, single=bool(request.POST.get("single")))
    go_on(request, final=True)
    keep_printed(restoration, sheet)
    return HttpResponse(
        made,
        content_type="application/pdf",
        headers={"Content-Disposition": f'attachment; filename="{kind}-{sheet.code}.pdf"'},
    )
