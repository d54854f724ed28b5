"""The house network: under which names its pages are asked for, and who may come in.

Where nothing of this is handed along with a question, the pages are on this machine alone.
"""

from __future__ import annotations

import ipaddress
import socket
from datetime import datetime

from django.http import HttpRequest
from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.restoration.people import Hand, People

HOUSE = "witnessmark.house"
HAND = "witnessmark.hand"
LOOPBACK = ("127.0.0.1", "localhost", "[::1]")


class House(Struct, frozen=True, kw_only=True):
    """Pages served on the house network.

    people  who may log in
    hosts   the names and addresses the pages go by
    """

    people: People
    hosts: tuple[str, ...]


def house_of(request: HttpRequest) -> House | None:
    """The house a question came through; None on this machine alone."""
    house = request.META.get(HOUSE)
    assert house is None or isinstance(house, House)
    return house


def hand_of(request: HttpRequest) -> Hand | None:
    """Who asks; None for a stranger on the house network."""
    hand = request.META.get(HAND)
    if isinstance(hand, Hand):
        return hand
    return Hand() if house_of(request) is None else None


def cookie_name(request: HttpRequest) -> str:
    """The name of the key's cookie; over TLS the one that a browser binds to this very host."""
    return "__Host-witnessmark_in" if request.is_secure() else "witnessmark_in"


def key_of(request: HttpRequest) -> str:
    """The key a browser hands over, "" where it has none."""
    return request.COOKIES.get(cookie_name(request), "")


def now() -> datetime:
    """The moment a log-in is begun or looked at."""
    return datetime.now().replace(microsecond=0)


def house_address() -> str:
    """This machine's address on the house network. Nothing is sent to find it.

    Raises BadInput where it is on no network.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address kept for examples: only the way there is looked up
            return str(asking.getsockname()[0])
        except OSError as trouble:
            raise BadInput(
                given="this machine is on no network",
                holds="a machine that the house's router knows",
                do="Join the network; or give its address: witnessmark pages --house --address 192.168.1.20",
            ) from trouble


def demand_house_address(address: str) -> None:
    """Refuse an address that is not one of a house: this machine alone, every network at once, the open net.

    >>> demand_house_address("192.168.1.20")
    """
    try:
        known = ipaddress.ip_address(address)
        fits = known.is_private and not (known.is_loopback or known.is_unspecified)
    except ValueError:
        fits = False
    if not fits:
        raise BadInput(
            given=f"pages were to be served to the house on {address}",
            holds="this machine's own address on the house network, as 192.168.1.20",
            do="Leave the address out: it is found. These pages are not made for the open internet.",
        )


def house_names(address: str) -> tuple[str, ...]:
    """The names under which a machine of the house is asked for its pages."""
    machine = socket.gethostname().lower().partition(".")[0]
    shown = f"[{address}]" if ":" in address else address
    return (shown, *((machine, f"{machine}.local") if machine not in ("", "localhost") else ()))
