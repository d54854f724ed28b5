"""Every page, on a small record and on a bare one: it answers, it is whole, it says nothing it should not."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import urljoin

import html5lib
import pytest
from django.test import Client

from tests.web.van import CORNER, bare, browser, text_of, van
from witnessmark.journal.facts import Described, TookOff
from witnessmark.restoration.at_hand import AtHand
from witnessmark.vehicle.things import Joint

MOST_BYTES = 150_000  # a page without photos
PAGES = [
    "/",
    "/?hours=0.58&helper=1",
    "/pages",
    "/line",
    "/line?words=took+off+hub+nut+left+rear",
    "/line?words=took+off+the+thingummy",
    "/line?words=frobnicated",
    "/line?change=1&words=took+off",
    "/line?written=1",
    "/down",
    "/back",
    "/session",
    "/plan",
    "/ahead",
    "/ahead/moved",
    "/whatif",
    "/whatif?words=two+free+days",
    "/session?hours=1&helper=1",
    "/owed",
    "/owed?part=3",
    "/gate",
    "/gate/start",
    "/gate/roll",
    "/gate/inspection",
    "/gate/road?part=1",
    "/needs",
    "/buy",
    "/shelf",
    "/vehicle",
    "/journal",
    "/journal?find=van",
    "/journal/1",
    "/journal/1/strike",
    "/journal?about=left+rear+corner",
    "/photos",
    "/week",
    "/history",
    "/history?part=3",
    "/week?ending=2025-11-03",
    "/photos?of=wheel+nuts%2C+left+rear",
    "/bench",
    "/bench/seals/driver",
    "/sweep",
    "/wall",
    "/wall?card=1",
    "/sheets",
    "/archive",
    "/sheets/wall",
    "/sheets/session",
    "/sheets/order",
    "/sheets/labels",
    "/sheets/helper",
    "/sheets/gate?gate=start",
]

# Words that no screen may use: they belong to offices, not to a garage.
BARRED = re.compile(
    r"\b(task|ticket|project|workflow|status|sprint|board|sync|asset|dashboard|work order|checklist|reminder"
    r"|deferred|severity|priority|velocity|backlog|baseline|score|health|cart|feed|timeline|passed|failed)s?\b",
    re.I,
)
PRAISE = re.compile(
    r"\b(well done|great work|congratulations|good job|streak|safe to drive|is safe)\b|\d ?%", re.I
)


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> AtHand:
    return van(tmp_path_factory.mktemp("van"))


@pytest.fixture(scope="module")
def empty(tmp_path_factory: pytest.TempPathFactory) -> AtHand:
    return bare(tmp_path_factory.mktemp("bare"))


@pytest.fixture(params=["small", "empty"])
def client(request: pytest.FixtureRequest) -> Client:
    return browser(request.getfixturevalue(request.param))


@pytest.mark.parametrize("address", PAGES)
def test_every_page_answers_whole_and_plainly(client: Client, address: str) -> None:
    answer = client.get(address)
    assert answer.status_code == 200
    assert len(answer.content) <= MOST_BYTES
    body = answer.content.decode("utf-8")
    html5lib.HTMLParser(strict=True).parse(body)
    said = text_of(answer)
    assert BARRED.search(said) is None
    assert PRAISE.search(said) is None
    assert not re.search(r"<script(?![^>]* src=)|\son\w+=|\sstyle=|javascript:|https?://", body)
    assert re.search(r"<h1\b", body)
    assert re.search(r'<html lang="en-GB">', body)


def test_a_page_with_a_barred_word_is_seen() -> None:
    assert BARRED.search("Three tasks on the board")
    assert BARRED.search("floorboards, a running-board")
    assert not BARRED.search("floorboard")


def test_every_link_and_form_of_every_page_leads_somewhere(small: AtHand) -> None:
    client = browser(small)
    seen: set[str] = set()
    waiting = list(PAGES)
    while waiting:
        address = waiting.pop()
        answer = client.get(address)
        assert answer.status_code == 200, address
        body = answer.content.decode("utf-8")
        for link in re.findall(r'(?:href|action)="([^"]+)"', body):
            plain = urljoin(address, link.replace("&amp;", "&")).partition("#")[0]
            if plain.startswith("/week"):
                continue  # there is always a week before
            post_only = plain in ("/line/write", "/photos/add") or plain.endswith("/photo")
            if plain not in seen and not post_only and not plain.startswith("/static/"):
                seen.add(plain)
                if not plain.startswith("/line?"):
                    waiting.append(plain)
    assert {"/owed", "/gate/road", "/journal/2", "/down"} <= seen


def test_a_long_list_comes_in_pages(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    joints = tuple(Joint(name=f"stud {n}", kind="structural-bolts", place="frame") for n in range(90))
    with at_hand.opened() as restoration:
        restoration.write_fact(Described(joints=joints), "ninety studs")
        restoration.write_fact(TookOff(at=tuple(joint.name for joint in joints)), "took off ninety studs")
    client = browser(at_hand)
    address, seen = "/owed?part=0", set()
    for _ in range(9):
        answer = client.get(address)
        assert len(answer.content) <= MOST_BYTES
        body = answer.content.decode("utf-8")
        seen |= set(re.findall(r"<h3>Stud (\d+)</h3>", body))
        further = re.search(r'href="([^"]+)">Further down', body)
        if further is None:
            break
        address = further[1].replace("&amp;", "&")
    assert seen == {str(n) for n in range(90)}


def test_a_closing_sheet_names_its_assembly(small: AtHand) -> None:
    answer = browser(small).get("/sheets/closing", {"of": CORNER})
    assert answer.status_code == 200
    assert f"Closing: {CORNER}" in text_of(answer)


def test_what_was_typed_is_shown_and_never_run(small: AtHand) -> None:
    for address in ("/journal", "/gate/road?part=1", "/owed"):
        assert "<weeping>" not in browser(small).get(address).content.decode("utf-8")
    assert "&lt;weeping&gt;" in browser(small).get("/journal").content.decode("utf-8")


@pytest.mark.parametrize(
    ("address", "code"),
    [
        ("/session?hours=900", 400),
        ("/session?hours=nan", 400),
        ("/gate/moon", 400),
        ("/sheets/moon", 400),
        ("/sheets/closing?of=the+moon", 400),
        ("/journal/4711", 400),
        ("/journal/0", 404),
        ("/nowhere", 404),
        (f"/line?words={'x' * 1200}", 400),
        ("/line?words=a&reading=9", 400),
        ("/line?words=took+off+a+wotsit&kind=moonbeam", 400),
    ],
)
def test_what_will_not_do_is_told_in_three_parts(small: AtHand, address: str, code: int) -> None:
    answer = browser(small).get(address)
    assert answer.status_code == code
    said = text_of(answer)
    assert all(part in said for part in ("Given", "Would hold", "Do"))


def test_the_state_is_told_by_word_and_mark(small: AtHand) -> None:
    answer = browser(small).get("/")
    body = answer.content.decode("utf-8")
    assert (
        '<use href="#apart"/></svg><span>Wheel nuts, left rear</span> <span class="state">apart</span>'
        in body
    )
    assert body.count('<symbol id="') == 4


def test_a_bare_record_still_has_a_road_gate(empty: AtHand) -> None:
    assert "not known to this record" in text_of(browser(empty).get("/gate/road"))


def test_pages_in_a_folder_of_nothing_are_bad_input(tmp_path: Path) -> None:
    from datetime import datetime

    answer = browser(AtHand(tmp_path, datetime.now)).get("/")
    assert answer.status_code == 400
    assert "there is no record" in text_of(answer)
