"""The page for the wall: read from two metres, its letters measured in millimetres on this very glass."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from witnessmark.restoration.restoration import Restoration
from witnessmark.restoration.screens import front
from witnessmark.web.record import with_record
from witnessmark.web.showing import page

# Dots for a millimetre that a screen can be set to, in quarters; a tablet has about six.
LEAST, USUAL, MOST, STEP = 3.0, 6.0, 9.0, 0.25
# A bank card, ID-1 of ISO/IEC 7810, in mm. From memory; the card in the hand is the measure.
CARD = (53.98, 85.6)
KEPT = "witnessmark_mm"
A_YEAR = 365 * 24 * 3600


@require_safe
@with_record
def wall_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """What lets go and is apart or loose, in capitals of 12 mm; the next three; what not to forget."""
    told = request.GET.get("mm", "")
    dots = dots_of(told or request.COOKIES.get(KEPT, ""))
    shown = front(restoration.flow())
    answer = page(
        request,
        "wall.html",
        restoration.flow(),
        front=shown,
        dots=dots,
        size=f"mm-{round(dots * 100)}",
        smaller=max(LEAST, dots - STEP),
        larger=min(MOST, dots + STEP),
        card=[round(side * dots, 1) for side in CARD] if request.GET.get("card") else None,
    )
    if told:
        answer.set_cookie(KEPT, f"{dots}", max_age=A_YEAR, samesite="Strict", httponly=True)
    return answer


def dots_of(typed: str) -> float:
    """Dots for a millimetre, brought to a quarter within what screens have; the usual where none is told.

    >>> dots_of("6.3"), dots_of("100"), dots_of("wide")
    (6.25, 9.0, 6.0)
    """
    try:
        found = float(typed)
    except ValueError:
        return USUAL
    if not LEAST <= found <= MOST:
        return min(MOST, max(LEAST, found)) if found == found else USUAL
    return round(found / STEP) * STEP
