"""Serving a vehicle's pages: on this machine alone, or to the house behind a door."""

from __future__ import annotations

import gc
import ipaddress
import socket
import webbrowser
from collections.abc import Callable, Iterable
from contextlib import suppress
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
from witnessmark.web.faces import big_face
from witnessmark.web.floor import STATIC, lay_floor
from witnessmark.web.house import HOUSE, LOOPBACK, House, demand_house_address, house_address, house_names
from witnessmark.web.record import AT_HAND
from witnessmark.web.uploads import MOST_TOGETHER

Wsgi = Callable[[dict[str, Any], Any], Iterable[bytes]]
THREADS = 8
QUIET = 0.3  # seconds without a line, after which the plan is worked out again


def application(
    at_hand: AtHand, moved: Callable[[], None] = lambda: None, house: House | None = None
) -> Wsgi:
    """The pages of one record, as any server takes them.

    moved  is told after whatever may have written
    house  where nobody reads before logging in; without it, the pages are for this machine alone
    """
    lay_floor()
    pages = WSGIHandler()

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        answer = pages({**environ, AT_HAND: at_hand, HOUSE: house}, start_response)
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

    Raises BadInput where the folder holds no record, the address will not do, or no owner is there.
    """
    house = house_served(folder, address) if to_house else None
    where = address or (house_address() if house else LOOPBACK[0])
    if house is None:
        demand_loopback(where)
    at_hand = AtHand(folder, clock)
    with at_hand.opened() as restoration:
        name = restoration.flow().vehicle.name
    door = _listening(where, port)
    ahead = Ahead(at_hand)
    server = create_server(
        application(at_hand, ahead.moved, house),
        sockets=[door],
        threads=THREADS,
        ident=f"Witness Mark {VERSION}",
        max_request_body_size=MOST_TOGETHER,
    )
    shown = f"http://[{where}]" if ":" in where else f"http://{where}"
    full = f"{shown}:{door.getsockname()[1]}/"
    for_whom = "for the house, who log in" if house else "on this machine alone"
    say(f"{name or 'The vehicle'}: {full}   {for_whom}; stop with Ctrl-C.")
    if house:
        say("Others on this network can read what goes to and fro, pass phrases too: see docs/security.md.")
    Thread(target=ahead.work, daemon=True).start()
    if browse:
        webbrowser.open(full)
    try:
        with at_hand.held_open():
            server.run()
    finally:
        server.close()


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
