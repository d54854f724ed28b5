"""Several vehicles in one folder: a list headed by what is loose, each on a port of its own."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import html5lib
import pytest
from django.test import Client
from playwright.sync_api import Browser

from tests.cli.running import run
from tests.web.house import ADDRESS, caller, house_with, log_in
from tests.web.house import quick_hash as quick_hash
from tests.web.running import running
from tests.web.test_every_page import BARRED, PRAISE
from tests.web.van import NOW, bare, browser, hidden, text_of, van, words_in
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.shop import is_shop, vehicles_in
from witnessmark.store.schema import FILE
from witnessmark.web.shop import Stall
from witnessmark.web.showing import LIST_PORT, SHOP


@pytest.fixture
def stalls(tmp_path: Path) -> tuple[Stall, ...]:
    hands = (bare(tmp_path / "shop" / "bare"), van(tmp_path / "shop" / "van"))
    return tuple(Stall(at_hand=one, port=8618 + n) for n, one in enumerate(hands))


def shop_browser(stalls: tuple[Stall, ...]) -> Client:
    client = browser(stalls[0].at_hand)
    client.defaults |= {SHOP: stalls}  # type: ignore[dict-item]
    return client


def test_the_list_is_headed_by_what_is_loose_and_leads_to_each_vehicle(stalls: tuple[Stall, ...]) -> None:
    answer = shop_browser(stalls).get("/")
    body = answer.content.decode()
    html5lib.HTMLParser(strict=True).parse(body)
    said = text_of(answer)
    assert answer.status_code == 200
    assert (
        said.index("Wheel nuts, left rear")
        < said.index("The van")
        < said.index("Road:", said.index("The van"))
    )
    assert "Nothing that lets go is known to be apart or loose." in said
    assert re.findall(r'<h2><a href="([^"]+)">', body) == ["http://127.0.0.1:8618/", "http://127.0.0.1:8619/"]
    assert BARRED.search(said) is None
    assert PRAISE.search(said) is None
    assert "/owed" not in body  # no vehicle's pages hang on the list


def test_the_list_has_no_other_addresses(stalls: tuple[Stall, ...]) -> None:
    client = shop_browser(stalls)
    for address in ("/owed", "/line", "/journal", "/sheets/wall", "/of/../van"):
        assert client.get(address).status_code == 404
    assert client.post("/").status_code == 405
    assert client.get("/here").status_code == 204


def test_a_vehicle_whose_record_cannot_be_read_hides_no_other(stalls: tuple[Stall, ...]) -> None:
    (stalls[0].at_hand.folder / FILE).write_bytes(b"no database " * 400)
    said = text_of(shop_browser(stalls).get("/"))
    assert "cannot be read" in said
    assert "The van" in said


def test_a_vehicles_pages_lead_back_to_the_list(stalls: tuple[Stall, ...]) -> None:
    client = browser(stalls[1].at_hand)
    assert "All vehicles" not in text_of(client.get("/pages"))
    client.defaults |= {LIST_PORT: 8617}  # type: ignore[dict-item]
    assert 'href="http://127.0.0.1:8617/">All vehicles' in client.get("/pages").content.decode()


@pytest.mark.usefixtures("quick_hash")
def test_a_stranger_sees_no_list(stalls: tuple[Stall, ...], tmp_path: Path) -> None:
    at_hand, house = house_with(tmp_path / "house")
    client = caller(at_hand, house)
    client.defaults |= {SHOP: stalls}  # type: ignore[dict-item]
    for address in ("/", "/people", "/nowhere"):
        assert client.get(address).status_code == 303
    log_in(client, "Eve")
    answer = client.get("/")
    assert "The van" in text_of(answer)
    assert f'href="http://{ADDRESS}:8619/"' in answer.content.decode()
    assert "Log out" in text_of(answer)


def test_the_vehicles_are_those_below_and_a_vehicle_is_no_shop(
    stalls: tuple[Stall, ...], tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    (shop / ".hidden").mkdir()
    (shop / "notes.txt").write_text("x", encoding="utf-8")
    assert [one.name for one in vehicles_in(shop)] == ["bare", "van"]
    assert is_shop(shop)
    assert not is_shop(shop / "van")
    assert not is_shop(tmp_path / "nowhere")
    assert vehicles_in(shop / "van") == (shop / "van",)


def test_the_command_serves_the_list_and_each_vehicle(stalls: tuple[Stall, ...], tmp_path: Path) -> None:
    command = [
        sys.executable,
        "-m",
        "witnessmark",
        "pages",
        str(tmp_path / "shop"),
        "--no-browser",
        "--port",
        "0",
    ]
    with subprocess.Popen(command, stdout=subprocess.PIPE, encoding="utf-8") as served:
        try:
            assert served.stdout
            said = [served.stdout.readline() for _ in range(3)]
            addresses = [re.findall(r"http://127\.0\.0\.1:\d+/", line)[0] for line in said]
            assert said[0].startswith("All vehicles: ")
            assert "the van" in said[2]
            with urllib.request.urlopen(addresses[0]) as answer:
                listed = answer.read().decode()
            assert all(f'href="{address}"' in listed for address in addresses[1:])
            with urllib.request.urlopen(addresses[2]) as answer:
                assert b"Wheel nuts, left rear" in answer.read()
            with urllib.request.urlopen(f"{addresses[1]}pages") as answer:
                assert f'href="{addresses[0]}">All vehicles' in answer.read().decode()
        finally:
            served.terminate()


@pytest.mark.usefixtures("stalls")
def test_a_port_behind_that_is_taken_is_told(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        taken = other.getsockname()[1]
        said = run(tmp_path, "pages", str(tmp_path / "shop"), "--no-browser", "--port", str(taken - 1))
    assert said.code == 2
    assert "cannot be used" in said.err


def turn_to(at_hand: AtHand, folder: Path) -> None:
    """Let a server that runs serve another record from now on."""
    vars(at_hand).update(vars(AtHand(folder, lambda: NOW)))


def test_a_line_kept_on_a_device_for_one_vehicle_is_never_sent_to_another(
    browser_of_this_machine: Browser, tmp_path: Path
) -> None:
    """The same address serves one vehicle today and another tomorrow."""
    at_hand = van(tmp_path / "van")
    context = browser_of_this_machine.new_context()
    page = context.new_page()
    with running(at_hand) as address:
        page.goto(f"{address}/line")
        context.set_offline(True)
        page.fill("textarea[name=words]", "ran 41 km")
        page.click("text=Read it back")
        page.wait_for_selector("text=not written yet")
        bare(tmp_path / "other")
        turn_to(at_hand, tmp_path / "other")
        with page.expect_response("**/line/send") as sent:
            context.set_offline(False)  # the page that is still open sends at once
        assert sent.value.status == 400
        page.goto(f"{address}/line")
        page.wait_for_load_state("networkidle")
        assert page.locator("text=not written yet").count() == 0
        assert words_in(at_hand) == ["began the bare van"]
        turn_to(at_hand, tmp_path / "van")
        with page.expect_response("**/line/send") as sent:
            page.goto(f"{address}/line")
        assert sent.value.status == 200
    assert words_in(at_hand)[-1] == "ran 41 km"
    context.close()


def test_a_form_of_another_vehicles_page_writes_nothing(tmp_path: Path) -> None:
    at_hand = van(tmp_path / "van")
    other = bare(tmp_path / "other")
    record = hidden(browser(at_hand).get("/down"), "record")
    assert record != hidden(browser(other).get("/down"), "record")
    for address in ("/down", "/line/write", "/line/send", "/back"):
        answer = browser(other).post(address, {"record": record, "words": "ran 1 km"})
        assert answer.status_code == 400
        assert "another vehicle" in text_of(answer)
    assert words_in(other) == ["began the bare van"]
    assert browser(at_hand).post("/down", {"record": record, "words": "rain"}).status_code == 303
