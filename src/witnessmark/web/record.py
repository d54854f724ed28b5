"""The record a page asks: handed along with the question, opened for it, closed behind it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from functools import wraps
from typing import Concatenate, ParamSpec

from django.http import HttpRequest, HttpResponse

from witnessmark.ground.errors import BadInput, LostRace
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.restoration import Restoration
from witnessmark.web.house import hand_of

AT_HAND = "witnessmark.at_hand"
TRIES = 60  # eight hands at once need about a dozen at the worst; each try is a few hundredths of a second
P = ParamSpec("P")


def with_record(
    view: Callable[Concatenate[HttpRequest, Restoration, P], HttpResponse],
) -> Callable[Concatenate[HttpRequest, P], HttpResponse]:
    """Give a view the record it asks, opened; where another hand wrote first, the view is asked once more.

    A view writes once, as its last act, so that nothing of a lost race remains.
    """

    @wraps(view)
    def wrapped(request: HttpRequest, /, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
        at_hand, hand = request.META[AT_HAND], hand_of(request)
        assert isinstance(at_hand, AtHand)
        assert hand is not None  # the door lets no stranger through
        for _ in range(TRIES - 1):
            with suppress(LostRace), at_hand.opened(hand.name) as restoration:
                _demand_same(request, restoration)
                return view(request, restoration, *args, **kwargs)
        with at_hand.opened(hand.name) as restoration:
            return view(request, restoration, *args, **kwargs)

    return wrapped


def _demand_same(request: HttpRequest, restoration: Restoration) -> None:
    """Refuse a form of a page that was opened when another vehicle was served under this address."""
    opened_for = request.POST.get("record", "") if request.method == "POST" else ""
    if opened_for and restoration.entries and opened_for != restoration.entries[0].id:
        raise BadInput(
            given="this page was opened for another vehicle, which is no longer served here",
            holds="a page of the vehicle that is served here now",
            do="Nothing was written. Serve that vehicle again, or write the line here if it belongs here.",
        )
