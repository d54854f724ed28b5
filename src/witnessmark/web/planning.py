"""The plan as a page: the strip of sessions, when it comes to each gate, what changed and why."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from markupsafe import Markup

from witnessmark.restoration.countdown import countdown
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

SECONDS = 2.0


@require_safe
@with_record
def plan_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What is done in each session to come."""
    from witnessmark.restoration.timetable import plan_ahead, timetable_picture, timetable_screen

    flow = restoration.flow()
    plan = plan_ahead(flow, left=countdown(SECONDS))
    return page(
        request,
        "plan.html",
        flow,
        sheet=timetable_screen(flow, plan),
        broad=_inline(timetable_picture(plan)),
        narrow=_inline(timetable_picture(plan, narrow=True)),
    )


def _inline(svg: str) -> Markup:
    """A picture inside a page: there it needs no namespace."""
    return Markup(svg.replace('xmlns="http://www.w3.org/2000/svg" ', ""))
