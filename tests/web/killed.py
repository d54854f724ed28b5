"""The real server as a child, killed at random under the hands of senders who keep what it acknowledges."""

from __future__ import annotations

import http.client
import json
import os
import random
import re
import subprocess
import sys
import threading
import uuid
from pathlib import Path
from typing import NamedTuple

from tests.pictures import shot

ROOT = Path(__file__).parents[2]
LONGEST = 0.5  # seconds until the kill, at most, from the first line that was acknowledged
AT_ONCE = 0.2  # share of the kills that do not wait for one


class Sent(NamedTuple):
    """A line as a device keeps it until it hears that it is written."""

    words: str
    id: str
    photo: bytes | None


class Hand:
    """One device: sends line after line, with a photo or without, and again what was not answered."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.number = 0
        self.unanswered: Sent | None = None
        self.acknowledged: dict[str, bool] = {}  # words -> whether a photo went with them
        self.heard = threading.Event()

    def send_until_cut(self, port: int) -> None:
        door: Door | None = None
        try:
            door = Door(port)
            while True:
                sent = self.unanswered or self._next()
                self.unanswered = sent
                if not door.send(sent):
                    return
                self.acknowledged[sent.words] = sent.photo is not None
                self.unanswered = None
                self.heard.set()
        except (OSError, http.client.HTTPException):
            return  # the server was killed
        finally:
            self.heard.set()
            if door:
                door.connection.close()

    def _next(self) -> Sent:
        self.number += 1
        photo = shot(self.number, (640, 480)) if self.number % 3 else None
        return Sent(f"took off gearbox, turn {self.number} of {self.name}", uuid.uuid4().hex, photo)


class Door:
    """A way in to a running server, as a browser's script has it."""

    def __init__(self, port: int) -> None:
        self.connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
        self.connection.request("GET", "/pages")
        answer = self.connection.getresponse()
        body = answer.read().decode("utf-8")
        found = re.search(r'data-token="([^"]+)"', body)
        assert found
        cookie = answer.headers["Set-Cookie"].partition(";")[0]
        self.headers = {"X-CSRFToken": found[1], "Cookie": cookie}

    def send(self, sent: Sent) -> bool:
        """Send a line, with its photo; True once it is acknowledged as written."""
        edge = uuid.uuid4().hex
        body = b"".join(_field(edge, name, value) for name, value in (("words", sent.words), ("id", sent.id)))
        if sent.photo is not None:
            head = f'--{edge}\r\nContent-Disposition: form-data; name="photo"; filename="a.jpg"\r\n\r\n'
            body += head.encode() + sent.photo + b"\r\n"
        kind = {"Content-Type": f"multipart/form-data; boundary={edge}"}
        self.connection.request("POST", "/line/send", body + f"--{edge}--\r\n".encode(), self.headers | kind)
        answer = self.connection.getresponse()
        said = answer.read()
        return answer.status == 200 and "written" in json.loads(said)


def _field(edge: str, name: str, value: str) -> bytes:
    return f'--{edge}\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n'.encode()


def run_and_kill(folder: Path, hands: list[Hand], draw: random.Random) -> None:
    """Serve the folder, let the hands send, and kill the server after a time nobody knows beforehand."""
    environment = os.environ | {"PYTHONPATH": os.pathsep.join([str(ROOT / "src"), str(ROOT)])}
    command = [sys.executable, "-m", "witnessmark", "pages", str(folder), "--port", "0", "--no-browser"]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, encoding="utf-8", env=environment
    ) as server:
        assert server.stdout is not None
        found = re.search(r"http://127\.0\.0\.1:(\d+)/", server.stdout.readline())
        assert found
        senders = [threading.Thread(target=hand.send_until_cut, args=(int(found[1]),)) for hand in hands]
        for hand, sender in zip(hands, senders, strict=True):
            hand.heard.clear()
            sender.start()
        if draw.random() > AT_ONCE:
            hands[0].heard.wait(30)
        try:
            server.wait(draw.uniform(0.0, LONGEST))
        except subprocess.TimeoutExpired:
            server.kill()
        for sender in senders:
            sender.join()
