"""The pages of a record, served by the real server on a free port of this machine."""

from __future__ import annotations

import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from waitress import wasyncore
from waitress.server import create_server

from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.house import House
from witnessmark.web.serving import application


@contextmanager
def running(at_hand: AtHand, house: House | None = None) -> Iterator[str]:
    """Serve, give the address, stop."""
    door = socket.create_server(("127.0.0.1", 0))
    channels: dict[int, object] = {}
    server = create_server(application(at_hand, house=house), sockets=[door], threads=4, map=channels)
    thread = threading.Thread(target=_run, args=(server,))
    thread.start()
    try:
        yield f"http://127.0.0.1:{door.getsockname()[1]}"
    finally:
        server.task_dispatcher.shutdown()
        server.pull_trigger()
        for channel in list(channels.values()):
            for waiting in getattr(channel, "outbufs", ()):
                waiting.close()  # a file half sent, as a picture the browser no longer wanted
        wasyncore.close_all(channels)
        thread.join(10)
        door.close()


def _run(server: object) -> None:
    try:
        server.run()  # type: ignore[attr-defined]
    except (OSError, ValueError, KeyError):
        return  # its sockets were closed under it: that is how it is stopped
