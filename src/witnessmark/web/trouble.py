"""Trouble on a page: what was given, what would hold, what to do; what was typed stays in the box."""

from __future__ import annotations

from contextlib import suppress

from django.http import HttpRequest, HttpResponse

from witnessmark.ground.errors import BadInput, LostRace, WitnessMarkError
from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.house import hand_of
from witnessmark.web.record import AT_HAND
from witnessmark.web.showing import page


def trouble_page(request: HttpRequest, trouble: WitnessMarkError, *, code: int = 400) -> HttpResponse:
    """The page of one trouble."""
    told = trouble if isinstance(trouble, BadInput) else _told(trouble)
    values = {"trouble": told, "words": _typed(request)}
    at_hand = request.META.get(AT_HAND)
    known = hand_of(request) is not None  # a stranger is told nothing of the record
    if known and isinstance(trouble, BadInput) and isinstance(at_hand, AtHand):
        with suppress(WitnessMarkError), at_hand.opened() as restoration:
            return page(request, "trouble.html", restoration.flow(), code=code, **values)
    return page(request, "trouble.html", None, code=code, **values)


def form_too_old(request: HttpRequest, reason: str = "") -> HttpResponse:
    """A form whose token is not ours, or is too old: nothing was written, the words are still there."""
    told = BadInput(
        given="this page was opened before the program was last started, or came from elsewhere",
        holds="a form opened on this page a while ago",
        do="Nothing was written. Send the line below once more.",
    )
    return trouble_page(request, told, code=403)


def not_there(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """An address that leads nowhere."""
    told = BadInput(
        given=f"there is no page {request.path}", holds="one of the pages named above", do="Choose one."
    )
    return trouble_page(request, told, code=404)


def refused(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """A question that is not put as a browser puts it, or is too large."""
    said = "What would hold: these pages, opened under the address that the program printed when it began."
    return HttpResponse(
        f"This question was refused. {said}\n", status=400, content_type="text/plain; charset=utf-8"
    )


def broken(request: HttpRequest) -> HttpResponse:
    """A fault of the program itself: said so, and nothing half-written."""
    said = "A fault of this program, not of your record."
    do = "Nothing was half-written; go back and send it once more."
    return HttpResponse(f"{said} {do}\n", status=500, content_type="text/plain; charset=utf-8")


def _told(trouble: WitnessMarkError) -> BadInput:
    if isinstance(trouble, LostRace):
        do = "Nothing is lost: send it once more."
        return BadInput(given=f"{trouble}", holds="the record as it was when it was read", do=do)
    do = "Change nothing. Run: witnessmark check. Then take the last archive."
    return BadInput(given=f"{trouble}", holds="a record that reads back whole", do=do)


def _typed(request: HttpRequest) -> str:
    return request.POST.get("words", "") or request.GET.get("words", "")
