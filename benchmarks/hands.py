"""Eight hands writing through the pages at once, for a minute: nothing lost, nothing twice, order kept.

Each hand is a browser of its own over a real connection to a real server; every third line is sent twice, as
over a bad connection. Then the record is read back and compared with what was acknowledged.

    .venv/bin/python benchmarks/hands.py [--hands 8] [--seconds 60] [--kept-at postgresql://...#name]
"""

from __future__ import annotations

import argparse
import http.client
import json
import re
import subprocess
import sys
import tempfile
import threading
import time
import uuid
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from urllib.parse import urlencode, urlsplit

from witnessmark.journal.entry import Entry
from witnessmark.restoration.begin import begin, reopen
from witnessmark.restoration.checking import faults_in

TOKEN = re.compile(r'data-token="([^"]+)"')
TWICE_EVERY = 3
FORM = "application/x-www-form-urlencoded"


class Hand(threading.Thread):
    """One hand, writing line after line until told to stop; `said` holds (words, line) as acknowledged."""

    def __init__(self, address: str, number: int, goes_on: Callable[[int], bool]) -> None:
        super().__init__()
        self.netloc = urlsplit(address).netloc
        self.number = number
        self.goes_on = goes_on
        self.said: list[tuple[str, int]] = []
        self.waits: list[float] = []
        self.odd: list[str] = []

    def run(self) -> None:
        """Write, wait for the acknowledgement, write on."""
        connection = http.client.HTTPConnection(self.netloc, timeout=60)
        connection.request("GET", "/line")
        page = connection.getresponse()
        cookie = (page.getheader("Set-Cookie") or "").partition(";")[0]
        found = TOKEN.search(page.read().decode("utf-8"))
        heads = {"Cookie": cookie, "X-CSRFToken": found[1] if found else "", "Content-Type": FORM}
        turn = 0
        while self.goes_on(turn):
            words = f"ran {self.number * 10_000 + turn} km"
            body = urlencode({"words": words, "id": uuid.uuid4().hex})
            for _ in range(2 if turn % TWICE_EVERY == 0 else 1):
                self._send(connection, body, heads, words)
            turn += 1
        connection.close()

    def _send(
        self, connection: http.client.HTTPConnection, body: str, heads: dict[str, str], words: str
    ) -> None:
        began = time.perf_counter()
        connection.request("POST", "/line/send", body, heads)
        answer = connection.getresponse()
        told = answer.read()
        self.waits.append(time.perf_counter() - began)
        line = json.loads(told).get("written") if answer.status == 200 else None
        if line is None:
            self.odd.append(f"{answer.status} {told[:200]!r}")
        else:
            self.said.append((words, line))


def write_together(address: str, hands: int, goes_on: Callable[[int], bool]) -> list[Hand]:
    """Let so many hands write at once, and come back when all have stopped."""
    writing = [Hand(address, number, goes_on) for number in range(1, hands + 1)]
    for hand in writing:
        hand.start()
    for hand in writing:
        hand.join()
    return writing


def wrong_in(hands: Sequence[Hand], entries: Sequence[Entry]) -> list[str]:
    """What is not as it was acknowledged: lost, twice, on another line, or out of a hand's own order."""
    wrong = [said for hand in hands for said in hand.odd]
    by_line = {entry.line: entry.words for entry in entries}
    stood = [entry.words for entry in entries if entry.words.startswith("ran ")]
    said = {words: line for hand in hands for words, line in hand.said}
    wrong += [
        f"lost or moved: line {line}, {words}" for words, line in said.items() if by_line[line] != words
    ]
    wrong += [
        f"two numbers for {words}" for hand in hands for words, line in hand.said if said[words] != line
    ]
    if sorted(stood) != sorted(said):
        wrong.append(f"{len(stood)} lines stand, {len(said)} were acknowledged")
    for hand in hands:
        lines = [said[words] for words in dict.fromkeys(words for words, _ in hand.said)]
        if lines != sorted(lines):
            wrong.append(f"hand {hand.number} is out of order")
    return wrong


def main() -> int:
    """Serve, write, read back, say what was found."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--hands", type=int, default=8)
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--kept-at", default="")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "van"
        now = datetime.now().replace(microsecond=0)
        begin(folder, "the van", now=now, kept_at=asked.kept_at)
        command = [sys.executable, "-m", "witnessmark", "pages", str(folder), "--no-browser", "--port", "0"]
        with subprocess.Popen(command, stdout=subprocess.PIPE, encoding="utf-8") as served:
            assert served.stdout is not None
            found = re.search(r"http://\S+", served.stdout.readline())
            assert found is not None
            until = time.monotonic() + asked.seconds
            hands = write_together(found[0], asked.hands, lambda _: time.monotonic() < until)
            served.terminate()
        wrong = wrong_in(hands, reopen(folder, now=now).entries)
        wrong += [f"{fault.line}: {fault.what}" for fault in faults_in(folder)]
    waits = sorted(wait for hand in hands for wait in hand.waits)
    lines = len({words for hand in hands for words, _ in hand.said})
    print(f"{asked.hands} hands, {asked.seconds:g} s: {lines} lines, {len(waits)} sent")
    print(f"acknowledged in {waits[len(waits) // 2] * 1000:.0f} ms at the median,", end=" ")
    print(f"{waits[int(len(waits) * 0.95)] * 1000:.0f} ms at the 95th of 100")
    print("\n".join(wrong[:20]) or "nothing lost, nothing twice, order kept")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
