"""The plan as a page: the strip of sessions, when it comes to each gate, what changed and why."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from markupsafe import Markup

from witnessmark.restoration.countdown import countdown
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.timetable import plan_ahead, timetable_picture, timetable_screen
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

SECONDS = 2.0


@require_safe
@with_record
def plan_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What is done in each session to come."""
    flow = restoration.flow()
    plan = plan_ahead(flow, left=countdown(SECONDS))
    return page(
        request,
        "plan.html",
        flow,
        sheet=timetable_screen(flow, plan),
        broad=Markup(timetable_picture(plan)),
        narrow=Markup(timetable_picture(plan, narrow=True)),
    )
