"""Several hands at once, and hands that send rubbish: nothing lost, nothing written twice, no fault shown."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from django.test import Client
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.web.van import browser, van, words_in
from witnessmark.restoration.at_hand import AtHand

HANDS, LINES = 8, 6


def test_eight_hands_at_once_lose_nothing_and_keep_their_order(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    before = len(words_in(at_hand))
    answers: list[int] = []

    def write(hand: int) -> None:
        client = browser(at_hand)
        for n in range(LINES):
            for _ in range(2):  # each is sent twice, as over a bad connection
                sent = {"words": f"ran {hand}{n}1 km", "id": f"{hand:08d}{n:08d}"}
                answers.append(client.post("/line/send", sent).status_code)

    hands = [threading.Thread(target=write, args=(hand,)) for hand in range(1, HANDS + 1)]
    for hand in hands:
        hand.start()
    for hand in hands:
        hand.join()
    assert set(answers) == {200}
    written = words_in(at_hand)[before:]
    assert len(written) == HANDS * LINES
    for n in range(1, HANDS + 1):
        own = [words for words in written if words.startswith(f"ran {n}")]
        assert own == [f"ran {n}{line}1 km" for line in range(LINES)]


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory) -> Client:
    return browser(van(tmp_path_factory.mktemp("rubbish")))


RUBBISH = st.text(max_size=60) | st.sampled_from(
    ["strike 3", "strike last", "strike 99, x", "-1", "0", "9" * 30]
)


@given(words=RUBBISH, kind=RUBBISH, reading=RUBBISH, day=RUBBISH, at=RUBBISH)
@settings(max_examples=60)
def test_no_form_shows_a_fault(
    client: Client, words: str, kind: str, reading: str, day: str, at: str
) -> None:
    sent = {"words": words, "kind": kind, "reading": reading, "day": day, "at": at, "id": kind, "said": words}
    for address in ("/line", "/journal"):
        assert client.get(address, {**sent, "find": words, "past": reading}).status_code in (200, 400)
    for address in ("/line/write", "/line/send"):
        assert client.post(address, sent).status_code in (200, 303, 400)


@given(one=RUBBISH, two=RUBBISH)
@settings(max_examples=40)
def test_no_address_shows_a_fault(client: Client, one: str, two: str) -> None:
    asked = {
        "hours": one,
        "helper": two,
        "part": one,
        "past": two,
        "of": one,
        "gate": two,
        "written": one,
        "at": one,
        "lifted": two,
        "bore": one,
        "shaft": two,
        "diameter": one,
        "pitch": two,
        "answer": "only",
    }
    for address in (
        "/",
        "/session",
        "/owed",
        "/vehicle",
        "/vehicle/place",
        "/bench/seals/driver",
        "/bench/threads/identify",
        "/line",
        "/sheets/closing",
        "/sheets/gate",
        "/gate/road",
    ):
        assert client.get(address, asked).status_code in (200, 400)


@given(at=st.lists(RUBBISH, max_size=3), words=RUBBISH)
@settings(max_examples=15)
def test_tools_go_down_whatever_is_sent(
    tmp_path_factory: pytest.TempPathFactory, at: list[str], words: str
) -> None:
    at_hand: AtHand = van(tmp_path_factory.mktemp("down"))
    hand = browser(at_hand)
    for address, sent in (
        ("/down", {"at": at, "words": words}),
        ("/back", {"line": at}),
        ("/journal/3/strike", {"words": words}),
    ):
        assert hand.post(address, sent).status_code in (303, 400)
    assert "downed tools" in " ".join(words_in(at_hand))
