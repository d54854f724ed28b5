"""Looking ahead on pages: when each gate may be reached, and a snag answered at once."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe
from markupsafe import Markup

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.asked import words_of
from witnessmark.web.record import with_record
from witnessmark.web.showing import page
from witnessmark.words.snag_line import read_snag

FUTURES = 2_000


@require_safe
@with_record
def ahead_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """When each gate may be reached, what drives it, and where the hours went."""
    from witnessmark.restoration.ahead import chance_screen, look_ahead
    from witnessmark.restoration.looking_back import hours_of_guesses

    flow = restoration.flow()
    sheet = chance_screen(flow, look_ahead(flow, samples=FUTURES))
    broad, narrow = (Markup(hours_of_guesses(flow, narrow=small)) for small in (False, True))
    return page(request, "ahead.html", flow, sheet=sheet, broad=broad, narrow=narrow, pays={}, lines={})


@require_safe
@with_record
def moved_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """How the road moved over the months; it takes a few seconds, so it has a page of its own."""
    from witnessmark.restoration.looking_back import fan_of

    flow = restoration.flow()
    broad, narrow = (Markup(fan_of(flow, narrow=small)) for small in (False, True))
    return page(request, "moved.html", flow, broad=broad, narrow=narrow)


@require_safe
@with_record
def whatif_page(request: HttpRequest, restoration: Restoration) -> HttpResponse:
    """One line in, the five things out; nothing is written."""
    typed = words_of(request.GET.get("words", ""))
    return answered(request, restoration, typed) if typed else _asked(request, restoration, typed, None)


def answered(request: HttpRequest, restoration: Restoration, typed: str) -> HttpResponse:
    """The answer to a snag, or what would hold."""
    from witnessmark.restoration.whatif import what_if, whatif_screen

    flow = restoration.flow()
    try:
        answer = what_if(flow, typed)
    except BadInput as trouble:
        return _asked(request, restoration, typed, trouble)
    sheet = whatif_screen(flow, answer)
    return page(request, "whatif.html", flow, sheet=sheet, typed=typed, trouble=None, pays={}, lines={})


def is_snag(words: str) -> bool:
    """Whether a line typed on the first page tells a snag, rather than what was done."""
    return read_snag(words) is not None


def _asked(
    request: HttpRequest, restoration: Restoration, typed: str, trouble: BadInput | None
) -> HttpResponse:
    code = 400 if trouble else 200
    return page(
        request, "whatif.html", restoration.flow(), code=code, sheet=None, typed=typed, trouble=trouble,
        pays={}, lines={},
    )  # fmt: skip
