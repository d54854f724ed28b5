"""Make the pictures of the pages from the demo vehicle, into docs/pictures/screens: phone, tablet, desk.

    .venv/bin/python scripts/screens.py            makes them all; needs Chromium
    .venv/bin/python scripts/screens.py vehicle    only those whose name holds the word

They are drawn by whatever Chromium stands on the machine: no test compares them, one holds the list whole.
"""

from __future__ import annotations

import io
import shutil
import socket
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, time
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, sync_playwright
from waitress.server import create_server

from witnessmark.demo.telling import ASKED, tell
from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.serving import application

TOP = Path(__file__).resolve().parent.parent
PLACE = TOP / "docs" / "pictures" / "screens"
SIZES = {"phone": (390, 844), "tablet": (1024, 768), "desk": (1440, 900)}
PAGES = {
    "now": "/",
    "wall": "/wall",
    "line": "/line",
    "read-back": "/line?words=nipped+up+left+rear+hub+nut",
    "down-tools": "/down",
    "session": "/session",
    "owed": "/owed",
    "gate": "/gate/road",
    "needs": "/needs",
    "buy": "/buy",
    "shelf": "/shelf",
    "vehicle": "/vehicle",
    "place": "/vehicle/place?at=left+rear",
    "journal": "/journal",
    "bench": "/bench",
    "question": "/bench/seals/driver?bore=36.2mm&shaft=31.8mm&have=32x36+mm",
    "sweep": "/sweep",
    "sheets": "/sheets",
}
SHADES = 16
MOMENT = datetime.combine(ASKED, time(9, 10))


def main() -> None:
    """Make them, all or those asked for."""
    wanted = sys.argv[1] if len(sys.argv) > 1 else ""
    PLACE.mkdir(parents=True, exist_ok=True)
    with served() as address, sync_playwright() as play:
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for name, (page, size) in pictures().items():
            if wanted in name:
                (PLACE / name).write_bytes(taken(browser, address + PAGES[page], size))
                print(PLACE / name)
        browser.close()


def pictures() -> dict[str, tuple[str, str]]:
    """File name of each picture to its page and its size."""
    return {f"{page}-{size}.png": (page, size) for page in PAGES for size in SIZES}


def taken(browser: Browser, address: str, size: str) -> bytes:
    """One picture, in a few greys: the pages are black on pale paper."""
    wide, high = SIZES[size]
    hand = browser.new_context(
        viewport={"width": wide, "height": high}, has_touch=size != "desk", is_mobile=size != "desk"
    )
    page = hand.new_page()
    page.goto(address)
    page.evaluate("document.fonts.ready")
    raw = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    hand.close()
    small = io.BytesIO()
    raw.quantize(SHADES).save(small, "PNG", optimize=True)
    return small.getvalue()


@contextmanager
def served() -> Iterator[str]:
    """The demo vehicle's pages on a free port, at the demo's own moment."""
    with tempfile.TemporaryDirectory() as name:
        tell(Path(name) / "demo")
        door = socket.create_server(("127.0.0.1", 0))
        server = create_server(application(AtHand(Path(name) / "demo", lambda: MOMENT)), sockets=[door])
        threading.Thread(target=server.run, daemon=True).start()
        yield f"http://127.0.0.1:{door.getsockname()[1]}"


if __name__ == "__main__":
    main()
