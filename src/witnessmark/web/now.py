"""The first page: what is loose, what fits today, one line to write. And the list of all pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from witnessmark.restoration.devices import new_id
from witnessmark.restoration.downing import interrupted
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import front
from witnessmark.sheets.phrases import minutes_words
from witnessmark.web.asked import hours_of
from witnessmark.web.going import unhurried
from witnessmark.web.record import with_record
from witnessmark.web.showing import page


@require_safe
@unhurried("today’s session")
@with_record
def now_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What is loose in the largest letters, then the session, then what not to forget."""
    flow = restoration.flow()
    hours, helper = hours_of(request), bool(request.GET.get("helper"))
    shown = front(flow, hours=hours, helper=helper)
    return page(
        request,
        "now.html",
        flow,
        front=shown,
        hours_words=minutes_words(hours * 60),
        broken_off=interrupted(flow),
        new_id=new_id(),
    )


@require_safe
@with_record
def every_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """All pages by name, for hands that need large ones."""
    return page(request, "pages.html", restoration.flow())


@require_safe
def here(request: HttpRequest) -> HttpResponse:
    """An empty answer: the connection stands."""
    return HttpResponse(status=204)
