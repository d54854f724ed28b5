"""Serving a vehicle's pages: on this machine alone, or to the house behind a door."""

from __future__ import annotations

import gc
import ipaddress
import socket
import webbrowser
from collections.abc import Callable, Iterable, Sequence
from contextlib import ExitStack, suppress
from datetime import datetime
from pathlib import Path
from threading import Event, Thread
from typing import Any

from django.core.handlers.wsgi import WSGIHandler
from waitress.server import create_server
from whitenoise import WhiteNoise

from witnessmark.ground.errors import BadInput, WitnessMarkError
from witnessmark.ground.version import VERSION
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.people import People
from witnessmark.restoration.shop import is_shop, vehicles_in
from witnessmark.web.faces import big_face
from witnessmark.web.floor import STATIC, lay_floor
from witnessmark.web.going import GOINGS, Goings
from witnessmark.web.house import HOUSE, LOOPBACK, House, demand_house_address, house_address, house_names
from witnessmark.web.record import AT_HAND
from witnessmark.web.shop import Stall, by_port
from witnessmark.web.showing import LIST_PORT, SHOP
from witnessmark.web.uploads import MOST_TOGETHER

Wsgi = Callable[[dict[str, Any], Any], Iterable[bytes]]
THREADS = 8
QUIET = 0.3  # seconds without a line, after which the plan is worked out again


def application(
    at_hand: AtHand,
    moved: Callable[[], None] = lambda: None,
    house: House | None = None,
    list_port: int | None = None,
) -> Wsgi:
    """The pages of one record, as any server takes them.

    moved      is told after whatever may have written
    house      where nobody reads before logging in; without it, the pages are for this machine alone
    list_port  where the list of all vehicles is, if there is one
    """
    along = {AT_HAND: at_hand, HOUSE: house, GOINGS: Goings()} | ({LIST_PORT: list_port} if list_port else {})
    return _pages(along, moved)


def shop_application(stalls: Sequence[Stall], house: House | None = None) -> Wsgi:
    """The list of several vehicles."""
    return _pages({SHOP: tuple(stalls), HOUSE: house}, lambda: None)


def _pages(along: dict[str, Any], moved: Callable[[], None]) -> Wsgi:
    """The pages, with what is handed along with every question; style, script and face beside them."""
    lay_floor()
    pages = WSGIHandler()

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        answer = pages({**environ, **along}, start_response)
        if environ["REQUEST_METHOD"] == "POST":
            moved()
        return answer

    served = WhiteNoise(asked, max_age=3600, index_file=False, mimetypes={".ttf": "font/ttf"})
    served.add_files(str(STATIC), prefix="static/")
    served.add_files(str(big_face().parent), prefix="face/")
    answer: Wsgi = served
    return answer


def serve(
    folder: Path,
    *,
    clock: Callable[[], datetime],
    address: str,
    port: int,
    browse: bool,
    say: Callable[[str], None],
    to_house: bool = False,
) -> None:
    """Serve until stopped.

    address   "" for this machine alone, or with to_house for its address on the house network
    to_house  serve to the house network; then there must be an owner who may log in

    A folder with several vehicles below it is served as a list of them on the port given, and each vehicle
    on the ports behind it.

    Raises BadInput where the folder holds no record, the address will not do, or no owner is there.
    """
    house = house_served(folder, address) if to_house else None
    where = address or (house_address() if house else LOOPBACK[0])
    if house is None:
        demand_loopback(where)
    hands = [AtHand(vehicle, clock) for vehicle in vehicles_in(folder)]
    with ExitStack() as held:
        doors = [held.enter_context(_listening(where, port))]
        if is_shop(folder):
            more = [_listening(where, port and port + n) for n in range(1, len(hands) + 1)]
            doors += [held.enter_context(door) for door in more]
        for at_hand in hands:
            held.enter_context(at_hand.held_open())
        pages = _by_door(doors, hands, house)
        _tell(hands, [_address(door) for door in doors], house, say)
        if browse:
            webbrowser.open(_address(doors[0]))
        server = create_server(
            by_port(pages),
            sockets=doors,
            threads=THREADS,
            ident=f"Witness Mark {VERSION}",
            max_request_body_size=MOST_TOGETHER,
        )
        try:
            server.run()
        finally:
            server.close()


def _by_door(doors: list[socket.socket], hands: list[AtHand], house: House | None) -> dict[int, Wsgi]:
    """The pages behind each port: one vehicle's, or the list and then each vehicle's."""
    ports = [int(door.getsockname()[1]) for door in doors]
    pages: dict[int, Wsgi] = {}
    list_port = ports[0] if len(ports) > len(hands) else None
    for at_hand, port in zip(hands, ports[-len(hands) :], strict=True):
        ahead = Ahead(at_hand)
        pages[port] = application(at_hand, ahead.moved, house, list_port)
        Thread(target=ahead.work, daemon=True).start()
    if list_port:
        stalls = [Stall(at_hand=one, port=port) for one, port in zip(hands, ports[1:], strict=True)]
        pages[list_port] = shop_application(stalls, house)
    return pages


def _address(door: socket.socket) -> str:
    where, port = door.getsockname()[:2]
    return f"http://[{where}]:{port}/" if ":" in where else f"http://{where}:{port}/"


def _tell(hands: list[AtHand], addresses: list[str], house: House | None, say: Callable[[str], None]) -> None:
    for_whom = "for the house, who log in" if house else "on this machine alone"
    if len(addresses) > len(hands):
        say(f"All vehicles: {addresses[0]}   {for_whom}; stop with Ctrl-C.")
    for at_hand, address in zip(hands, addresses[-len(hands) :], strict=True):
        with at_hand.opened() as restoration:
            name = restoration.flow().vehicle.name or "The vehicle"
        alone = len(addresses) == 1
        say(f"{name}: {address}   {for_whom}; stop with Ctrl-C." if alone else f"  {name}: {address}")
    if house:
        say("Others on this network can read what goes to and fro, pass phrases too: see docs/security.md.")


class Ahead:
    """Works out the plan while nobody asks, so that the front page need not be waited for."""

    def __init__(self, at_hand: AtHand, quiet: float = QUIET) -> None:
        self.at_hand = at_hand
        self.quiet = quiet
        self._moved = Event()

    def moved(self) -> None:
        """The record may have moved on."""
        self._moved.set()

    def work(self) -> None:
        """Without end."""
        warm(self.at_hand)
        while True:
            self.once()

    def once(self) -> bool:
        """Wait until the record has moved; if it then stands still for a moment, work out the plan."""
        self._moved.wait()
        self._moved.clear()
        if self._moved.wait(self.quiet):
            return False
        with suppress(WitnessMarkError), self.at_hand.opened() as restoration:
            restoration.flow().session()
        return True


def house_served(folder: Path, address: str) -> House:
    """The house that pages are served to. Raises BadInput where no owner could log in."""
    people = People(folder)
    where = address or house_address()
    demand_house_address(where)
    if not people.owners():
        raise BadInput(
            given="nobody may log in yet as an owner, and anybody on the network could knock",
            holds="at least one owner with a pass phrase",
            do=f"Add one first: witnessmark people {folder} --add NAME --as owner",
        )
    return House(people=people, hosts=house_names(where))


def _listening(address: str, port: int) -> socket.socket:
    try:
        family = socket.AF_INET6 if ":" in address else socket.AF_INET
        return socket.create_server((address, port), family=family)
    except OSError as trouble:
        raise BadInput(
            given=f"{address}, port {port}, cannot be used ({trouble.strerror or trouble})",
            holds="an address of this machine, and a port no other program listens on",
            do="Give another: witnessmark pages --port 8618",
        ) from trouble


def warm(at_hand: AtHand) -> None:
    """Work out the first page's answers; from now on what is kept is not looked through for rubbish."""
    with at_hand.opened() as restoration:
        restoration.flow().session()
    gc.collect()
    gc.freeze()


def demand_loopback(address: str) -> None:
    """Refuse any address that others could reach: without --house no log-in is asked.

    >>> demand_loopback("127.0.0.1")
    """
    if address == "localhost":
        return
    try:
        loopback = ipaddress.ip_address(address).is_loopback
    except ValueError:
        loopback = False
    if not loopback:
        raise BadInput(
            given=f"pages were to be served on {address}",
            holds="127.0.0.1: without log-ins anybody on a network could read and write",
            do="Leave the address out; or serve to the house, where people log in: witnessmark pages --house",
        )
