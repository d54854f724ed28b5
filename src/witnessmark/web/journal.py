"""The journal: every line as it was typed, looked through; one line, what hangs on it, and its strike."""

from __future__ import annotations

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods, require_safe

from witnessmark.restoration.devices import new_id, usable_id, write_once, written_as
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import line_shown, lines_found
from witnessmark.web.asked import number_of, words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page
from witnessmark.words.striking import Strike

A_PAGE = 40
REASONS = ("that was the other side", "not done after all", "written twice")


@require_safe
@with_record
def journal_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """Lines, latest done first, forty at a time; only those that are looked for."""
    flow = restoration.flow()
    find = words_of(request.GET.get("find", ""))
    about = words_of(request.GET.get("about", ""))
    past = number_of(request.GET.get("past", ""))
    found = lines_found(flow, find, about)
    shown = found[past : past + A_PAGE]
    asked = urlencode({"find": find, "about": about, "past": past + A_PAGE})
    older = f"?{asked}" if len(found) > past + A_PAGE else ""
    names = sorted({*flow.vehicle.parts, *flow.vehicle.joints, *flow.vehicle.assemblies})
    return page(
        request,
        "journal.html",
        flow,
        find=find,
        about=about,
        found=len(found),
        shown=shown,
        past=past,
        older=older,
        names=names,
    )


@require_safe
@with_record
def entry_page(request: HttpRequest, restoration: Restoration, number: int) -> HttpResponse:
    """One line: who, when, in which words, and what is still owed because of it."""
    flow = restoration.flow()
    return page(request, "entry.html", flow, shown=line_shown(flow, number), new_id=new_id())


@require_http_methods(["GET", "HEAD", "POST"])
@with_record
def strike_page(request: HttpRequest, restoration: Restoration, number: int) -> HttpResponse:
    """Strike a line, with the reason; later lines that speak of what it described are shown first."""
    flow = restoration.flow()
    shown = line_shown(flow, number)
    if request.method == "POST":
        why = words_of(request.POST.get("words", "")) or words_of(request.POST.get("reason", ""))
        instead = words_of(request.POST.get("instead", ""))
        if instead and why:
            asked = urlencode({"words": f"strike {number}, {why}; {instead}"})
            return HttpResponse(status=303, headers={"Location": f"/line?{asked}"})
        line = _struck(restoration, number, why, usable_id(request.POST.get("id", "")))
        return HttpResponse(status=303, headers={"Location": f"/line?written={line}"})
    orphans = restoration.orphaned_by(number)
    return page(request, "strike.html", flow, shown=shown, orphans=orphans, reasons=REASONS, new_id=new_id())


def _struck(restoration: Restoration, number: int, why: str, device_id: str) -> int:
    """Strike a line once, however often it is sent; the number of the strike's own line."""
    words = f"strike {number}, {why}"
    before = written_as(restoration.entries, device_id, words)
    if before:
        return before[-1].line
    heard = restoration.hear_strike(Strike(number, why, ""), words=words)
    return write_once(restoration, heard, device_id)[-1].line
