"""What takes longer than a moment: a page stands in, then the answer comes; or it is left off."""

from __future__ import annotations

import io
import re
import threading
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import html5lib
import pytest
from django.test import Client

from tests.web.house import caller, house_with, log_in
from tests.web.house import quick_hash as quick_hash
from tests.web.van import browser, text_of, van, words_in
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.begin import reopen
from witnessmark.restoration.carrying import import_file
from witnessmark.restoration.sheet import make_sheet
from witnessmark.web import paper
from witnessmark.web.going import GOINGS, MOST_KEPT, Going, Goings, LeftOff


class Gate:
    """Holds a printer up until it is let go, and tells when it was reached."""

    def __init__(self) -> None:
        self.reached, self.open = threading.Event(), threading.Event()

    def print(self, *_: Any, **__: Any) -> bytes:
        self.reached.set()
        assert self.open.wait(30)
        return b"%PDF-1.7 a sheet"


@pytest.fixture
def gate(monkeypatch: pytest.MonkeyPatch) -> Iterator[Gate]:
    made = Gate()
    monkeypatch.setattr(paper, "to_pdf", made.print)
    yield made
    made.open.set()


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


def patient(client: Client, patience: float = 0.02, clock: Any = lambda: 0.0) -> Client:
    client.defaults[GOINGS] = Goings(patience, clock)  # type: ignore[assignment]
    return client


def test_a_page_stands_in_until_the_answer_is_there(small: AtHand, gate: Gate) -> None:
    seconds = iter([0.0, 3.9, 5.2])
    client = patient(browser(small), clock=lambda: next(seconds))
    first = client.post("/sheets/wall")
    assert first.status_code == 303
    where = first["Location"]
    assert re.fullmatch(r"/going/[0-9a-f]{32}", where)
    waiting = client.get(where)
    html5lib.HTMLParser(strict=True).parse(waiting.content.decode())
    assert (waiting.status_code, waiting["Refresh"]) == (200, "1")
    assert "The sheet: 3 seconds so far." in text_of(waiting)
    assert "5 seconds" in text_of(client.get(where))
    gate.open.set()
    client.defaults[GOINGS].patience = 30  # type: ignore[attr-defined]
    answer = client.get(where)
    assert answer["Content-Type"] == "application/pdf"
    assert words_in(small)[-1].startswith("printed")
    assert client.get(where).content == answer.content  # the same once more, printed once
    assert len([words for words in words_in(small) if words.startswith("printed")]) == 1


def test_what_is_left_off_writes_nothing(small: AtHand, gate: Gate) -> None:
    client = patient(browser(small))
    before = words_in(small)
    where = client.post("/sheets/wall")["Location"]
    assert gate.reached.wait(30)
    assert client.post(f"{where}/leave")["Location"] == "/"
    gate.open.set()
    client.defaults[GOINGS].patience = 30  # type: ignore[attr-defined]
    answer = client.get(where)
    assert answer.status_code == 400
    assert "left off" in text_of(answer)
    assert words_in(small) == before


def test_what_writes_already_is_not_left_off() -> None:
    going = Going("the sheet", "/", "you", 0.0)
    going.go_on()
    going.go_on(final=True)
    assert not going.leave_off()
    going.go_on()
    other = Going("the sheet", "/", "you", 0.0)
    assert other.leave_off()
    with pytest.raises(LeftOff):
        other.go_on(final=True)


def test_what_is_quick_is_answered_at_once(small: AtHand) -> None:
    client = patient(browser(small), patience=30)
    assert client.get("/session").status_code == 200
    assert client.get("/").status_code == 200
    assert client.get("/session?hours=900").status_code == 400  # trouble is told as ever


def test_trouble_on_the_way_is_told_when_it_is_fetched(
    small: AtHand, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone = threading.Event()

    def slow(*asked: Any) -> Any:
        assert gone.wait(30)
        return make_sheet(*asked)

    monkeypatch.setattr(paper, "make_sheet", slow)
    client = patient(browser(small))
    where = client.get("/sheets/closing?of=the+moon")["Location"]
    gone.set()
    client.defaults[GOINGS].patience = 30  # type: ignore[attr-defined]
    answer = client.get(where)
    assert answer.status_code == 400
    assert "Would hold" in text_of(answer)


def test_what_is_not_on_its_way_is_told(small: AtHand) -> None:
    for client in (browser(small), patient(browser(small))):
        assert client.get(f"/going/{'0' * 32}").status_code == 400
        assert client.post(f"/going/{'0' * 32}/leave").status_code == 400
        assert client.get(f"/going/{'0' * 32}/leave").status_code == 405


@pytest.mark.usefixtures("quick_hash")
def test_nobody_fetches_what_another_asked_for(tmp_path: Path, gate: Gate) -> None:
    at_hand, house = house_with(tmp_path)
    ada, ott = (patient(caller(at_hand, house)) for _ in range(2))
    ott.defaults[GOINGS] = ada.defaults[GOINGS]
    log_in(ada, "Ada")
    log_in(ott, "Ott")
    where = ada.post("/sheets/wall")["Location"]
    assert ott.get(where).status_code == 400
    assert ott.post(f"{where}/leave").status_code == 400
    assert ada.get(where).status_code == 200


def test_only_so_much_is_on_its_way_at_once(small: AtHand, gate: Gate) -> None:
    client = patient(browser(small), patience=0.0)
    codes = [client.post("/sheets/wall").status_code for _ in range(MOST_KEPT + 1)]
    assert codes == [303] * MOST_KEPT + [400]


def test_the_record_is_taken_away_whole(small: AtHand, tmp_path: Path) -> None:
    client = browser(small)
    assert "13 lines" in text_of(client.get("/archive"))
    answer = client.post("/archive")
    assert answer["Content-Type"] == "application/zip"
    assert zipfile.ZipFile(io.BytesIO(answer.content)).testzip() is None
    (tmp_path / "out.zip").write_bytes(answer.content)
    with small.opened() as restoration:
        import_file(tmp_path / "again", tmp_path / "out.zip", take_good=False, now=restoration.now)
        assert reopen(tmp_path / "again", now=restoration.now).entries == restoration.entries
