"""Down tools and back again."""

from __future__ import annotations

from pathlib import Path

import pytest
from django.test import Client

from tests.web.van import HUB, WHEEL, browser, hidden, text_of, van, words_in
from witnessmark.journal.facts import Photographed
from witnessmark.restoration.at_hand import AtHand


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def client(small: AtHand) -> Client:
    return browser(small)


def put_down(client: Client, **more: object) -> None:
    page = client.get("/down")
    assert client.post("/down", {"id": hidden(page, "id"), **more}).status_code == 303


def test_what_is_open_is_offered_the_last_touched_first(client: Client) -> None:
    body = client.get("/down").content.decode("utf-8")
    assert body.index(f'value="{HUB}"') < body.index(f'value="{WHEEL}"')


def test_down_tools_is_one_act_and_saved_at_once(client: Client, small: AtHand) -> None:
    put_down(client, at=[WHEEL], words="rain coming in")
    assert words_in(small)[-1] == "downed tools, finger-tight: wheel nuts left rear; rain coming in"
    with small.opened() as restoration:
        assert restoration.flow().word(WHEEL) == "loose"


def test_a_joint_the_record_does_not_know_is_left_out(client: Client, small: AtHand) -> None:
    put_down(client, at=["moonbeam"])
    assert words_in(small)[-1] == "downed tools"


def test_sent_twice_tools_are_down_once(client: Client, small: AtHand) -> None:
    page = client.get("/down")
    for _ in range(2):
        client.post("/down", {"id": hidden(page, "id"), "at": [WHEEL]})
    assert sum(words.startswith("downed tools") for words in words_in(small)) == 1


def test_on_return_the_last_three_lines_are_proved_again(client: Client, small: AtHand) -> None:
    put_down(client, at=[WHEEL])
    assert "Tools were put down" in text_of(client.get("/"))
    page = client.get("/back")
    shown = text_of(page)
    for words in ("Nipped up hub nut left rear", "Tightened fuel hose clips", "Put gearbox on the top shelf"):
        assert words in shown
    assert "Took off gearbox" not in shown
    assert "wipe the flash rust" in shown
    answer = client.post("/back", {"id": hidden(page, "id"), "line": ["13", "12"]})
    assert answer.status_code == 303
    assert words_in(small)[-1] == "back again, looked at hub nut left rear and fuel hose clips: as left"
    assert "Tools were put down" not in text_of(client.get("/"))


def test_buying_and_photographs_do_not_take_work_up_again(client: Client, small: AtHand) -> None:
    put_down(client)
    with small.opened() as restoration:
        restoration.write(restoration.hear("ordered 4 split pins"))
        restoration.write_fact(Photographed(at=(WHEEL,)), "photo of the wheel nuts")
    assert "Tools were put down" in text_of(client.get("/"))
    with small.opened() as restoration:
        restoration.write(restoration.hear("took off wheel nuts right front"))
    assert "Tools were put down" not in text_of(client.get("/"))


def test_coming_back_with_nothing_ticked_is_still_a_line(client: Client, small: AtHand) -> None:
    put_down(client)
    client.post("/back", {"id": "0" * 32})
    assert words_in(small)[-1] == "back again"
    assert "No work stands broken off" in text_of(client.get("/back"))
