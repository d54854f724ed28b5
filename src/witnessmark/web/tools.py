"""Down tools, and back again: the few seconds before and after an interruption."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods

from witnessmark.restoration.devices import new_id, usable_id
from witnessmark.restoration.downing import come_back, down_tools, interrupted, offered_loose
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.asked import number_of, words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page
from witnessmark.web.uploads import photos_sent


@require_http_methods(["GET", "HEAD", "POST"])
def down_page(request: HttpRequest) -> HttpResponse:
    """What is finger-tight, a photo, one line, done."""
    return _down(request, photos=photos_sent(request) if request.method == "POST" else ())


@with_record
def _down(request: HttpRequest, restoration: Restoration, photos: tuple[str, ...]) -> HttpResponse:
    flow = restoration.flow()
    if request.method == "POST":
        at = [name for name in request.POST.getlist("at") if name in flow.state.joints]
        remark = words_of(request.POST.get("words", ""))
        down_tools(restoration, at, remark, usable_id(request.POST.get("id", "")), photos)
        return HttpResponse(status=303, headers={"Location": "/"})
    offered = [(name, flow.word(name)) for name in offered_loose(flow)]
    return page(request, "down.html", flow, offered=offered, new_id=new_id())


@require_http_methods(["GET", "HEAD", "POST"])
@with_record
def back_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The last three done lines to prove again, and what the time away has done."""
    if request.method == "POST":
        lines = [number_of(typed) for typed in request.POST.getlist("line")]
        come_back(restoration, lines, usable_id(request.POST.get("id", "")))
        return HttpResponse(status=303, headers={"Location": "/"})
    flow = restoration.flow()
    return page(request, "back.html", flow, broken_off=interrupted(flow), new_id=new_id())
