"""Tonight's order as a page: the basket as parcels, each line with the line that orders it."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from markupsafe import Markup

from witnessmark.restoration.buying import buy_picture, buy_screen, order_lines, worth_typed
from witnessmark.restoration.countdown import countdown
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

SECONDS = 3.0


@require_safe
@with_record
def buy_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What to order tonight, from whom, and what a lost session would save."""
    flow = restoration.flow()
    typed = request.GET.get("worth", "")[:20]
    answer = flow.buy(worth=worth_typed(typed, flow.currency), left=countdown(SECONDS))
    return page(
        request,
        "buy.html",
        flow,
        sheet=buy_screen(flow, answer),
        parcels=order_lines(answer),
        broad=Markup(buy_picture(answer)),
        narrow=Markup(buy_picture(answer, narrow=True)),
        worth=typed,
    )
