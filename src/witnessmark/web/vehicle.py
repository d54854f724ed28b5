"""The vehicle drawn, and one place of it: its parts and joints in layers to be lifted away."""

from __future__ import annotations

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from markupsafe import Markup

from witnessmark.restoration.drawn import place_shown, vehicle_drawn
from witnessmark.restoration.restoration import Restoration
from witnessmark.sheets.drawn.picture import swatch_svg
from witnessmark.sheets.drawn.vehicle import STATES
from witnessmark.web.asked import number_of, words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page


@require_safe
@with_record
def vehicle_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """The plan and both sides, each place hatched by its worst joint; then every place by name."""
    flow = restoration.flow()
    drawn = vehicle_drawn(flow, place_address)
    return page(
        request,
        "vehicle.html",
        flow,
        plan=Markup(drawn.plan),
        sides=tuple(Markup(side) for side in drawn.sides),
        beside=tuple(place for place in drawn.places if not place.drawn),
        every=drawn.places,
        key=tuple((state, Markup(swatch_svg(state))) for state in STATES),
        place_address=place_address,
    )


@require_safe
@with_record
def place_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """One place, the outermost layer first; layers that were lifted away on the page are told in one line."""
    flow = restoration.flow()
    shown = place_shown(flow, words_of(request.GET.get("at", "")))
    lifted = min(number_of(request.GET.get("lifted", "")), max(0, len(shown.layers) - 1))
    return page(request, "place.html", flow, shown=shown, lifted=lifted, place_address=place_address)


def place_address(name: str, lifted: int = 0) -> str:
    """Where a place is shown, with so many layers lifted away.

    >>> place_address("left rear"), place_address("rear", 2)
    ('/vehicle/place?at=left+rear', '/vehicle/place?at=rear&lifted=2')
    """
    return "/vehicle/place?" + urlencode({"at": name, **({"lifted": lifted} if lifted else {})})
