"""Several vehicles: one plain list, each headed by what is loose on it; each on a port of its own.

A port of its own keeps apart, in the browser too, what is typed for one vehicle and for another.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.http.request import split_domain_port
from django.http.response import HttpResponseBase
from django.views.decorators.http import require_safe
from msgspec import Struct

from witnessmark.ground.errors import WitnessMarkError
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.screens import loose_on
from witnessmark.sheets.rows import JointRow, Words
from witnessmark.web.showing import SHOP, page

Answer = Callable[[HttpRequest], HttpResponseBase]


class Stall(Struct, frozen=True, kw_only=True):
    """One vehicle of a shop, and the port its pages are on."""

    at_hand: AtHand
    port: int


class Listed(Struct, frozen=True, kw_only=True):
    """One vehicle in the list; `trouble` where its record cannot be read."""

    name: str
    address: str
    loose: tuple[JointRow | Words, ...] = ()
    gate: str = ""
    trouble: str = ""


def routed(answer: Answer) -> Answer:
    """The list of a shop has addresses of its own."""

    def on_its_way(request: HttpRequest) -> HttpResponseBase:
        if SHOP in request.META:
            request.urlconf = "witnessmark.web.shop_routes"
        return answer(request)

    return on_its_way


@require_safe
def shop_page(request: HttpRequest) -> HttpResponse:
    """Every vehicle, by the name of its folder."""
    stalls: tuple[Stall, ...] = request.META[SHOP]
    domain, _ = split_domain_port(request.get_host())
    listed = [_listed(stall, f"{request.scheme}://{domain}:{stall.port}/") for stall in stalls]
    return page(request, "shop.html", None, listed=listed)


def _listed(stall: Stall, address: str) -> Listed:
    folder = stall.at_hand.folder.name
    try:
        with stall.at_hand.opened() as restoration:
            flow = restoration.flow()
            headline = flow.gate("road").headline()
            return Listed(
                name=flow.vehicle.name or folder, address=address, loose=loose_on(flow), gate=headline
            )
    except WitnessMarkError as trouble:
        return Listed(name=folder, address=address, trouble=f"{trouble}")


def by_port(pages: dict[int, Any]) -> Callable[[dict[str, Any], Any], Any]:
    """Answer each question with the pages of the port it came to."""

    def asked(environ: dict[str, Any], start_response: Any) -> Any:
        return pages[int(environ["SERVER_PORT"])](environ, start_response)

    return asked
