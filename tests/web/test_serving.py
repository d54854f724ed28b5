"""Serving: a real server on this machine, its files, and the addresses it will not take."""

from __future__ import annotations

import os
import re
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec import structs

from tests.cli.running import run
from tests.web.house import house_with
from tests.web.house import quick_hash as quick_hash
from tests.web.running import running
from tests.web.van import browser, van
from witnessmark.ground.errors import BadInput
from witnessmark.web.house import house_names
from witnessmark.web.serving import Ahead, demand_loopback, serve, warm


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    with running(van(tmp_path)) as found:
        yield found


def test_a_real_server_answers(address: str) -> None:
    with urllib.request.urlopen(f"{address}/") as answer:
        assert b"Wheel nuts, left rear" in answer.read()


@pytest.mark.parametrize(
    ("file", "sort"),
    [
        ("/static/witnessmark.css", "text/css"),
        ("/static/kept.js", "text/javascript"),
        ("/static/mark.svg", "image/svg+xml"),
        ("/face/FjallaOne-Regular.ttf", "font/ttf"),
    ],
)
def test_style_script_mark_and_face_come_along(address: str, file: str, sort: str) -> None:
    with urllib.request.urlopen(address + file) as answer:
        assert answer.headers.get_content_type() == sort
        assert answer.read()


@pytest.mark.parametrize("file", ["/static/../floor.py", "/static/%2e%2e/floor.py", "/face/../__init__.py"])
def test_no_other_file_is_reached(address: str, file: str) -> None:
    with pytest.raises(urllib.error.HTTPError) as refused, urllib.request.urlopen(address + file):
        pass
    assert refused.value.code == 404
    refused.value.close()


@pytest.mark.parametrize("outside", ["0.0.0.0", "192.168.1.20", "::", "garage.example", ""])
def test_an_address_others_could_reach_is_refused(outside: str) -> None:
    with pytest.raises(BadInput) as told:
        demand_loopback(outside)
    assert "log-ins" in told.value.holds
    assert "--house" in told.value.do


@pytest.mark.parametrize("own", ["127.0.0.1", "::1", "localhost", "127.8.8.8"])
def test_this_machine_alone_is_taken(own: str) -> None:
    demand_loopback(own)


def test_the_command_refuses_in_three_parts(tmp_path: Path) -> None:
    van(tmp_path)
    said = run(tmp_path, "pages", "--no-browser", "--address", "0.0.0.0")
    assert said.code == 2
    assert "Would hold: 127.0.0.1" in said.err
    empty = tmp_path / "empty"
    empty.mkdir()
    assert "there is no record" in run(tmp_path, "pages", str(empty), "--no-browser").err


def test_the_command_serves_from_any_folder_on_any_console(tmp_path: Path) -> None:
    folder = tmp_path / "Ten ünd Söhne"
    van(folder)
    environment = {**os.environ, "PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    command = [sys.executable, "-m", "witnessmark", "pages", str(folder), "--no-browser", "--port", "0"]
    with subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, encoding="utf-8") as served:
        try:
            assert served.stdout
            where = re.search(r"http://127\.0\.0\.1:\d+/", served.stdout.readline())
            assert where
            with urllib.request.urlopen(where[0]) as answer:
                assert b"Wheel nuts, left rear" in answer.read()
        finally:
            served.terminate()


def test_the_house_is_served_only_with_an_owner_and_on_an_address_of_the_house(tmp_path: Path) -> None:
    van(tmp_path)
    said = run(tmp_path, "pages", "--house", "--no-browser", "--address", "192.168.1.20")
    assert said.code == 2
    assert "Would hold: at least one owner" in said.err
    assert "witnessmark people" in said.err
    for outside in ("0.0.0.0", "::", "127.0.0.1", "8.8.8.8", "garage.example"):
        said = run(tmp_path, "pages", "--house", "--no-browser", "--address", outside)
        assert said.code == 2
        assert "own address on the house network" in said.err


@pytest.mark.usefixtures("quick_hash")
def test_a_real_server_on_the_house_network_asks_for_a_log_in(tmp_path: Path) -> None:
    at_hand, house = house_with(tmp_path)
    own = structs.replace(house, hosts=("127.0.0.1",))
    with running(at_hand, own) as address:
        with urllib.request.urlopen(f"{address}/owed") as answer:
            assert answer.url.startswith(f"{address}/in?to=")
            assert b"nuts" not in answer.read()
        with urllib.request.urlopen(f"{address}/static/witnessmark.css") as answer:
            assert answer.status == 200


def test_the_houses_names_are_its_address_and_the_machines_name(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(socket, "gethostname", lambda: "Shed.example")
    assert house_names("192.168.1.20") == ("192.168.1.20", "shed", "shed.local")
    assert house_names("fd00::7")[0] == "[fd00::7]"
    monkeypatch.setattr(socket, "gethostname", lambda: "localhost")
    assert house_names("192.168.1.20") == ("192.168.1.20",)


def test_a_port_in_use_is_told(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        with pytest.raises(BadInput) as told:
            serve(tmp_path, clock=at_hand.clock, address="127.0.0.1", port=taken, browse=False, say=print)
    assert str(taken) in told.value.given


def test_the_first_page_can_be_worked_out_beforehand(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    warm(at_hand)
    with at_hand.opened() as restoration:
        flow = restoration.flow()
        assert flow.session() is flow.session()


def test_the_plan_is_worked_out_ahead_once_the_record_stands_still(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    at_hand = van(tmp_path)
    ahead = Ahead(at_hand, quiet=0.001)
    sent = {"words": "took off wheel nuts right rear", "id": "0123456789abcdef"}
    assert browser(at_hand).post("/line/send", sent).json()["written"]
    ahead.moved()
    assert ahead.once()
    monkeypatch.setattr("witnessmark.restoration.flow.plan_session", None)  # asked again it would fail
    assert browser(at_hand).get("/").status_code == 200
