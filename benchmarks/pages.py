"""How long the pages take on a large record: the first page cold, one user, a line written, eight users.

Times are a browser's wait; beside them stands the processor's own share, which other work on the machine
does not lengthen. Each p95 is also told as a ratio to its bound.

    .venv/bin/python benchmarks/pages.py [--joints 1000] [--facts 20000] [--rounds 4]
"""

from __future__ import annotations

import argparse
import http.client
import io
import re
import subprocess
import sys
import tempfile
import threading
import time
import uuid
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

from large import NOW, large_record

from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.serving import application, warm

ONE_USER, EIGHT_USERS, WRITE, COLD, WEIGHT = 0.150, 0.400, 0.050, 1.5, 150_000
PAGES = (
    "/", "/line", "/line?words=took+off+hub+nut+left+rear", "/down", "/session", "/owed", "/owed?part=1",
    "/gate", "/gate/road", "/gate/road?part=1", "/needs", "/shelf", "/vehicle",
    "/vehicle/place?at=left+rear", "/journal",
    "/journal?find=hub", "/journal/19990", "/sheets", "/sheets/wall", "/sheets/gate", "/wall", "/bench",
    "/bench/seals/driver?bore=36.2mm&shaft=31.8mm&have=32x36+mm", "/sweep",
)  # fmt: skip
USERS = 8
TOKEN = re.compile(r'name="csrfmiddlewaretoken" value="([^"]+)"')


def main() -> None:
    """Make the record once, then ask for everything."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--joints", type=int, default=1000)
    parser.add_argument("--facts", type=int, default=20_000)
    parser.add_argument("--rounds", type=int, default=4)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        large_record(folder, joints=asked.joints, facts=asked.facts)
        print(f"{asked.joints:,} joints, {asked.facts:,} facts")
        cold(folder)
        at_hand = AtHand(folder, lambda: NOW)
        hand = Hand(at_hand)
        warm(at_hand)
        with at_hand.held_open():
            one_user(hand, asked.rounds)
            writes(hand, asked.rounds * 10)
        eight_users(folder, asked.rounds)


class Hand:
    """One user, asking the pages in this very process: wait and processor time of each question, seconds."""

    def __init__(self, at_hand: AtHand) -> None:
        self.at_hand = at_hand
        self.pages = application(at_hand)
        self.cookie = ""
        self.token = ""

    def ask(self, address: str, sent: dict[str, str] | None = None) -> tuple[float, float, bytes]:
        """GET, or POST where something is sent."""
        path, _, query = address.partition("?")
        body = urlencode({**(sent or {}), "csrfmiddlewaretoken": self.token}).encode()
        environ: dict[str, Any] = {
            "REQUEST_METHOD": "POST" if sent else "GET", "PATH_INFO": path, "QUERY_STRING": query,
            "SERVER_NAME": "127.0.0.1", "SERVER_PORT": "80", "SERVER_PROTOCOL": "HTTP/1.1",
            "HTTP_HOST": "127.0.0.1", "HTTP_COOKIE": self.cookie, "wsgi.url_scheme": "http",
            "wsgi.input": io.BytesIO(body), "wsgi.errors": sys.stderr, "CONTENT_LENGTH": str(len(body)),
            "CONTENT_TYPE": "application/x-www-form-urlencoded", "SCRIPT_NAME": "",
        }  # fmt: skip
        wait, work = time.perf_counter(), time.thread_time()
        answer = b"".join(self.pages(environ, self._begun))
        wait, work = time.perf_counter() - wait, time.thread_time() - work
        if found := TOKEN.search(answer.decode("utf-8", "replace")):
            self.token = found[1]
        return wait, work, answer

    def _begun(
        self, status: str, headers: list[tuple[str, str]], trouble: Any = None
    ) -> Callable[[bytes], Any]:
        if not status.startswith(("200", "303")):
            print(f"    answered {status}")
        for name, value in headers:
            if name.lower() == "set-cookie":
                self.cookie = value.partition(";")[0]
        return lambda _: None


def one_user(hand: Hand, rounds: int) -> None:
    """Every page, several times; before each round a line is written: nothing is kept from the last."""
    print(
        f"\none user, p95 of {rounds} rounds (bound {ONE_USER * 1000:.0f} ms); a line is written before each,"
    )
    print("and the plan worked out while it is read that it was written, as the server does")
    found: dict[str, list[tuple[float, float, bytes]]] = {
        address: [] for address in ("/line?written", *PAGES)
    }
    planned: list[float] = []
    for turn in range(rounds):
        write(hand, turn)
        found["/line?written"].append(hand.ask("/line?written=19990"))
        began = time.thread_time()
        with hand.at_hand.opened() as restoration:
            restoration.flow().session()
        planned.append(time.thread_time() - began)
        for address in PAGES:
            found[address].append(hand.ask(address))
    for address, told in found.items():
        weight = max(len(body) for *_, body in told)
        row(address, [w for w, *_ in told], ONE_USER, [c for _, c, _ in told], f"{weight / 1000:6.1f} kB")
    print(f"  the plan worked out meanwhile: processor {p95(planned) * 1000:.0f} ms")
    every = [t for told in found.values() for t in told]
    row("any page", [w for w, *_ in every], ONE_USER, [c for _, c, _ in every])


def writes(hand: Hand, number: int) -> None:
    """A line confirmed, until it is told to be on the disk; the pages are looked at in between."""
    print(f"\na line written, p95 of {number} (bound {WRITE * 1000:.0f} ms)")
    found = []
    for turn in range(number):
        hand.ask("/line")
        found.append(write(hand, 100 + turn))
    row("write", [w for w, *_ in found], WRITE, [c for _, c, _ in found])


def write(hand: Hand, turn: int) -> tuple[float, float, bytes]:
    words = f"looked at left rear wheel nuts, {turn} of many"
    read = hand.ask(f"/line?{urlencode({'words': words})}")[2].decode()
    said = re.search(r'name="said" value="([^"]*)"', read)
    assert said, read[:2000]
    return hand.ask(
        "/line/write", {"words": words, "id": uuid.uuid4().hex, "said": said[1], "kind": "", "reading": "0"}
    )


@contextmanager
def served(folder: Path) -> Iterator[tuple[str, float]]:
    """The pages as the command serves them; its address and the moment it was started."""
    command = [sys.executable, "-m", "witnessmark", "pages", str(folder), "--no-browser", "--port", "0"]
    began = time.perf_counter()
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, encoding="utf-8") as process:
        assert process.stdout
        found = re.search(r"http://([\d.]+:\d+)/", process.stdout.readline())
        assert found
        try:
            yield found[1], began
        finally:
            process.terminate()


def cold(folder: Path) -> None:
    """From the command to the first page's last byte."""
    bare = time.perf_counter()
    subprocess.run([sys.executable, "-c", "pass"], check=True)
    bare = time.perf_counter() - bare
    with served(folder) as (address, began):
        weight = sum(
            len(fetched(address, name)) for name in ("/", "/static/witnessmark.css", "/static/kept.js")
        )
        taken = time.perf_counter() - began
    print(
        f"\nfirst page cold {taken:5.2f} s   {taken / COLD:4.2f} x bound   {taken / bare:4.1f} x bare python"
    )
    print(f"its weight, style and script with it {weight / 1000:.1f} kB   {weight / WEIGHT:4.2f} x bound")


def eight_users(folder: Path, rounds: int) -> None:
    """Eight users asking for one page after another without a pause; each also writes."""
    print(f"\n{USERS} users at once, without a pause, p95 (bound {EIGHT_USERS * 1000:.0f} ms)")
    waits: list[float] = []
    with served(folder) as (address, _):
        for page in PAGES:
            fetched(address, page)
        users = [threading.Thread(target=ask_all, args=(address, rounds, n, waits)) for n in range(USERS)]
        for user in users:
            user.start()
        for user in users:
            user.join()
    row("any page", waits, EIGHT_USERS)


def ask_all(address: str, rounds: int, first: int, waits: list[float]) -> None:
    for turn in range(rounds * len(PAGES)):
        began = time.perf_counter()
        fetched(address, PAGES[(turn * 3 + first) % len(PAGES)])
        waits.append(time.perf_counter() - began)


def fetched(address: str, page: str) -> bytes:
    """A page's body. What takes over a second tells its progress meanwhile and is asked for again."""
    while True:
        connection = http.client.HTTPConnection(address, timeout=30)
        connection.request("GET", page)
        answer = connection.getresponse()
        body = answer.read()
        connection.close()
        if answer.status == 200:
            return body
        assert answer.status == 303, (page, answer.status)
        time.sleep(0.05)


def row(name: str, waits: list[float], bound: float, work: list[float] | None = None, said: str = "") -> None:
    late = p95(waits)
    own = f"   processor {p95(work) * 1000:6.1f} ms {p95(work) / bound:5.2f} x bound" if work else ""
    print(f"  {name:42s} {late * 1000:7.1f} ms {late / bound:5.2f} x bound{own}   {said}")


def p95(found: list[float]) -> float:
    return sorted(found)[min(len(found) - 1, int(0.95 * len(found)))]


if __name__ == "__main__":
    main()
