"""A real PostgreSQL server for the tests: its own folder, its own port, stopped when they are done."""

from __future__ import annotations

import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import psycopg

MISSING = "no PostgreSQL server on this machine; it comes with: sudo apt install postgresql"
USER = "bench"
PATIENCE = 60.0


def programs() -> Path | None:
    """The folder with the server's programs, None where there are none."""
    found = shutil.which("initdb")
    places = [Path(found).resolve().parent] if found else []
    places += sorted(Path("/usr/lib/postgresql").glob("*/bin"), reverse=True)
    return next(
        (place for place in places if (place / "initdb").exists() and (place / "postgres").exists()), None
    )


class Server:
    """One server: where it listens, and its process."""

    def __init__(self, programs: Path, folder: Path) -> None:
        self.programs = programs
        self.folder = folder
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = int(free.getsockname()[1])
        self.address = f"postgresql://{USER}@127.0.0.1:{self.port}/postgres"
        self._process: subprocess.Popen[bytes] | None = None

    def begin(self) -> None:
        """Make its folder."""
        options = ["--no-sync", "--auth=trust", "--encoding=UTF8", "--locale=C", "--username", USER]
        command = [str(self.programs / "initdb"), *options, "-D", str(self.folder / "data")]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd="/", **_as_another())

    def start(self) -> None:
        """Start it, and come back when it answers."""
        options = ["-p", str(self.port), "-k", "", "-c", "listen_addresses=127.0.0.1"]
        command = [str(self.programs / "postgres"), "-D", str(self.folder / "data"), *options]
        with (self.folder / "said.txt").open("ab") as said:
            apart = {"start_new_session": True, "cwd": "/", **_as_another()}
            self._process = subprocess.Popen(command, stdout=said, stderr=said, **apart)
        until = time.monotonic() + PATIENCE
        while True:
            try:
                psycopg.connect(self.address).close()
                return
            except psycopg.OperationalError:
                if self._process.poll() is not None or time.monotonic() > until:
                    raise

    def kill(self) -> None:
        """Kill it and all that it started, between one instruction and the next."""
        if self._process is not None and self._process.poll() is None:
            os.killpg(self._process.pid, signal.SIGKILL)
            self._process.wait()


def _as_another() -> dict[str, Any]:
    """A server refuses to run as root: then it is run as the user its package made, else as nobody."""
    if os.name == "nt" or os.geteuid() != 0:
        return {}
    return {"user": _other(), "group": None, "extra_groups": []}


def _other() -> str:
    import pwd  # not on every system

    known = {user.pw_name for user in pwd.getpwall()}
    return "postgres" if "postgres" in known else "nobody"


@contextmanager
def running() -> Iterator[Server]:
    """A server, begun, started, and gone afterwards; `programs` must have found one."""
    found = programs()
    assert found is not None
    folder = Path(tempfile.mkdtemp(prefix="witnessmark-server-"))
    server = Server(found, folder)
    try:
        if _as_another():
            shutil.chown(folder, user=_other())
        server.begin()
        server.start()
        yield server
    finally:
        server.kill()
        shutil.rmtree(folder, ignore_errors=True)
