"""Serving one vehicle's pages: on this machine alone."""

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
from witnessmark.web.faces import big_face
from witnessmark.web.floor import STATIC, lay_floor
from witnessmark.web.record import AT_HAND
from witnessmark.web.uploads import MOST_TOGETHER

Wsgi = Callable[[dict[str, Any], Any], Iterable[bytes]]
THREADS = 8
QUIET = 0.3  # seconds without a line, after which the plan is worked out again


def application(at_hand: AtHand, moved: Callable[[], None] = lambda: None) -> Wsgi:
    """The pages of one record, as any server takes them; `moved` is told after whatever may have written."""
    lay_floor()
    pages = WSGIHandler()

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        answer = pages({**environ, AT_HAND: at_hand}, start_response)
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
) -> None:
    """Serve until stopped. Raises BadInput where the folder holds no record, or the address will not do."""
    demand_loopback(address)
    at_hand = AtHand(folder, clock)
    with at_hand.opened() as restoration:
        name = restoration.flow().vehicle.name
    try:
        family = socket.AF_INET6 if ":" in address else socket.AF_INET
        door = socket.create_server((address, port), family=family)
    except OSError as trouble:
        raise BadInput(
            given=f"{address}, port {port}, cannot be used ({trouble.strerror or trouble})",
            holds="a port no other program listens on",
            do="Give another: witnessmark pages --port 8618",
        ) from trouble
    ahead = Ahead(at_hand)
    server = create_server(
        application(at_hand, ahead.moved),
        sockets=[door],
        threads=THREADS,
        ident=f"Witness Mark {VERSION}",
        max_request_body_size=MOST_TOGETHER,
    )
    shown = f"[{address}]" if ":" in address else address
    where = f"http://{shown}:{door.getsockname()[1]}/"
    say(f"{name or 'The vehicle'}: {where}   on this machine alone; stop with Ctrl-C.")
    Thread(target=ahead.work, daemon=True).start()
    if browse:
        webbrowser.open(where)
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


def warm(at_hand: AtHand) -> None:
    """Work out the first page's answers; from now on what is kept is not looked through for rubbish."""
    with at_hand.opened() as restoration:
        restoration.flow().session()
    gc.collect()
    gc.freeze()


def demand_loopback(address: str) -> None:
    """Refuse any address that others could reach: there are no log-ins yet.

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
            holds="127.0.0.1: there are no log-ins yet, and anybody on a network could read and write",
            do="Leave the address out.",
        )
