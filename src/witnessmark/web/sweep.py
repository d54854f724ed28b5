"""Ticks made on paper go in here: one box for codes and numbers, read back, then written in one go."""

from __future__ import annotations

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_http_methods

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.devices import new_id, usable_id
from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.sweeping import sweep, write_sweep
from witnessmark.web.asked import day_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

LONGEST = 6000


@require_http_methods(["GET", "HEAD", "POST"])
@with_record
def sweep_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The box; what was read of it; after writing, what was written and what is still to mend."""
    flow = restoration.flow()
    text = request.POST.get("ticks", "").replace("\x00", " ")
    if len(text) > LONGEST:
        raise BadInput(
            given=f"{len(text)} letters at once", holds=f"at most {LONGEST}", do="Enter a sheet at a time."
        )
    day = day_of(request.POST.get("day", ""))
    device_id = usable_id(request.POST.get("id", ""))
    values: dict[str, Any] = {"day": day or flow.today, "new_id": device_id, "written": ()}
    if request.POST.get("write"):
        written, left = write_sweep(restoration, text, day, device_id)
        read = sweep(restoration, left, day)
        values |= {"written": written, "read": read, "ticks": left, "new_id": new_id()}
    else:
        values |= {"read": sweep(restoration, text, day), "ticks": text}
    return page(request, "sweep.html", restoration.flow(), **values)
