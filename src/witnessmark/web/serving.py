"""Serving one vehicle's pages: on this machine alone."""

from __future__ import annotations

import ipaddress
import socket
import webbrowser
from collections.abc import Callable, Iterable
from datetime import datetime
from pathlib import Path
from threading import Thread
from typing import Any

from django.core.handlers.wsgi import WSGIHandler
from waitress.server import create_server
from whitenoise import WhiteNoise

from witnessmark.ground.errors import BadInput
from witnessmark.ground.version import VERSION
from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.faces import big_face
from witnessmark.web.floor import STATIC, lay_floor
from witnessmark.web.record import AT_HAND
from witnessmark.web.uploads import MOST_TOGETHER

Wsgi = Callable[[dict[str, Any], Any], Iterable[bytes]]
THREADS = 6


def application(at_hand: AtHand) -> Wsgi:
    """The pages of one record, as any server takes them."""
    lay_floor()
    pages = WSGIHandler()

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        return pages({**environ, AT_HAND: at_hand}, start_response)

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
    server = create_server(
        application(at_hand),
        sockets=[door],
        threads=THREADS,
        ident=f"Witness Mark {VERSION}",
        max_request_body_size=MOST_TOGETHER,
    )
    shown = f"[{address}]" if ":" in address else address
    where = f"http://{shown}:{door.getsockname()[1]}/"
    say(f"{name or 'The vehicle'}: {where}   on this machine alone; stop with Ctrl-C.")
    Thread(target=warm, args=(at_hand,), daemon=True).start()
    if browse:
        webbrowser.open(where)
    try:
        server.run()
    finally:
        server.close()


def warm(at_hand: AtHand) -> None:
    """Work out the first page's answers before anybody asks."""
    with at_hand.opened() as restoration:
        restoration.flow().session()


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
