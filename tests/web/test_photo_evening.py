"""Forty photos in an evening: while they come in and their small copies are made, the pages answer."""

from __future__ import annotations

import io
import statistics
import threading
import time
import urllib.request
from pathlib import Path

import numpy as np
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image

from tests.web.running import running
from tests.web.van import WHEEL, browser, van
from witnessmark.exchange import pictures
from witnessmark.journal.facts import Photographed
from witnessmark.restoration import thumbnails
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.checking import faults_in

FORTY = 40
MOST_SECONDS = 2.0  # for a page meanwhile, in the middle; the machine of a test may be slow and shared


def as_a_phone_takes_it(number: int) -> bytes:
    """Two million points with the grain of a dark garage."""
    draw = np.random.default_rng(number)
    coarse = draw.integers(0, 255, (60, 80, 3), dtype=np.uint8)
    made = io.BytesIO()
    Image.fromarray(coarse).resize((1600, 1200)).save(made, "JPEG", quality=90)
    return made.getvalue()


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


def test_pages_answer_while_forty_photos_come_in(small: AtHand) -> None:
    photos = [as_a_phone_takes_it(number) for number in range(FORTY)]
    took: list[float] = []
    done = threading.Event()

    def send() -> None:
        sender = browser(small)
        files = [SimpleUploadedFile(f"{n}.jpg", photo) for n, photo in enumerate(photos)]
        answer = sender.post("/journal/3/photo", {"id": "f" * 20, "photo": files})
        assert answer.status_code == 303
        done.set()

    with running(small) as address:
        urllib.request.urlopen(f"{address}/").read()
        sending = threading.Thread(target=send)
        sending.start()
        while not done.is_set() and sending.is_alive():
            begun = time.perf_counter()
            assert urllib.request.urlopen(f"{address}/journal").status == 200
            took.append(time.perf_counter() - begun)
        sending.join()
    assert done.is_set()
    assert len(took) >= 3
    assert statistics.median(took) < MOST_SECONDS
    assert small.thumbnails.settle(60)
    assert len(list((small.folder / "thumbs").iterdir())) == FORTY
    assert faults_in(small.folder) == ()
    with small.opened() as restoration:
        fact = restoration.entries[-1].fact
    assert isinstance(fact, Photographed)
    assert (len(fact.photos), fact.at) == (FORTY, (WHEEL,))


def test_no_question_waits_for_a_small_copy(small: AtHand, monkeypatch: pytest.MonkeyPatch) -> None:
    go_on = threading.Event()

    def slow(raw: bytes) -> bytes:
        go_on.wait(60)
        return pictures.smaller(raw)

    monkeypatch.setattr(thumbnails, "smaller", slow)
    client = browser(small)
    files = [SimpleUploadedFile(f"{n}.jpg", as_a_phone_takes_it(n)) for n in range(2)]
    assert client.post("/journal/3/photo", {"id": "f" * 20, "photo": files}).status_code == 303
    assert client.get("/journal").status_code == 200
    with small.opened() as restoration:
        fact = restoration.entries[-1].fact
    assert isinstance(fact, Photographed)
    assert client.get(f"/photo/{fact.photos[0]}/small")["Cache-Control"] == "no-store"
    assert not (small.folder / "thumbs").exists()
    go_on.set()
    assert small.thumbnails.settle(60)
    assert len(list((small.folder / "thumbs").iterdir())) == 2


def test_a_photo_that_cannot_be_made_small_stops_no_other(small: AtHand) -> None:
    client = browser(small)
    files = [SimpleUploadedFile(f"{n}.jpg", as_a_phone_takes_it(n)) for n in range(2)]
    kept = client.post("/photos/keep", {"photo": files}).json()["kept"]
    assert small.thumbnails.settle(60)
    for name in kept:
        (small.folder / "thumbs" / name).unlink()
    (small.folder / "photos" / kept[0]).write_bytes(b"damaged meanwhile")
    small.thumbnails.want(kept)
    assert small.thumbnails.settle(60)
    assert [file.name for file in (small.folder / "thumbs").iterdir()] == [kept[1]]
