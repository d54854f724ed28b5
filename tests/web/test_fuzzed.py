"""Rubbish at every address, asked and sent: told, or shut out, and never a fault of the program."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from django.test import Client
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.house.source import PACKAGE
from tests.web.house import PHRASE, caller, every_address, house_with, log_in
from tests.web.van import browser, van

SOURCE = "".join(path.read_text(encoding="utf-8") for path in sorted((PACKAGE / "web").glob("*.py")))
FIELDS = sorted({*re.findall(r"(?:GET|POST|sent)\.get(?:list)?\(\"(\w+)\"", SOURCE), "csrfmiddlewaretoken"})
# What each address may be asked or sent, and what the program answers without a fault.
FINE = {200, 204, 303, 400, 403, 404, 405, 413, 415, 429}

# fmt: off
TEXTS = st.text(max_size=40) | st.sampled_from([
    "", "0", "-1", "1", "9" * 40, "nan", "inf", "1e400", "\x00", "\u202e", "😀" * 9, "../../etc/passwd",
    "%2e%2e%2f", "<script>", "{{ 7*7 }}", "'; DROP TABLE entries; --", "took off gearbox", "strike 2, x",
    "x" * 1200, "left rear corner", "2026-02-30", "25:61", "0" * 32, "http://evil.example/", "\r\nX-Odd: y",
    "٣", "½",
])
KINDS = st.sampled_from([
    "application/x-www-form-urlencoded", "multipart/form-data", "multipart/form-data; boundary=x", "",
    "application/json", "text/plain; charset=nonsense", "\u00ff",
    "application/x-www-form-urlencoded; charset=utf-16",
])
# fmt: on
FORMS = st.dictionaries(st.sampled_from(FIELDS), TEXTS | st.lists(TEXTS, max_size=3), max_size=5)
PICTURES = st.binary(max_size=200) | st.sampled_from(
    [b"\xff\xd8\xff\xe0" + bytes(90), b"\x89PNG\r\n\x1a\n" + b"\xff" * 60, b"RIFF\x00\x00WEBP", b"GIF89a"]
)
NAMES = st.sampled_from(
    ["a.jpg", "..", "\x00.png", "x" * 300, "../../a.jpg", "a.jpg.exe", "", '"; name="words']
)
FILES = st.lists(
    st.tuples(NAMES, st.sampled_from(["image/jpeg", "text/html", "x" * 200]), PICTURES), max_size=2
)
BODIES = st.binary(max_size=120)
TAILS = st.text(alphabet="abc/.%-_~0123456789äß\u202e ", max_size=20)
ADDRESSES = st.sampled_from(every_address())


@pytest.fixture(scope="module")
def at_home(tmp_path_factory: pytest.TempPathFactory) -> Client:
    return browser(van(tmp_path_factory.mktemp("home")))


@pytest.fixture(scope="module")
def in_house(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Client]:
    """A stranger, an onlooker and an owner."""
    at_hand, house = house_with(tmp_path_factory.mktemp("house"))
    stranger, eve, ada = (caller(at_hand, house, source=f"192.168.1.{n}") for n in (7, 8, 9))
    log_in(eve, "Eve", PHRASE)
    log_in(ada, "Ada", PHRASE)
    return {"stranger": stranger, "eve": eve, "ada": ada}


def multipart(sent: dict[str, Any], files: list[tuple[str, str, bytes]]) -> bytes:
    """A form with files, put together by hand: a browser that means harm does not mend its names."""
    pieces = [
        f'--x\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{one}\r\n'.encode()
        for name, value in sent.items()
        for one in (value if isinstance(value, list) else [value])
    ]
    for name, kind, content in files:
        head = (
            f'--x\r\nContent-Disposition: form-data; name="photo"; filename="{name}"\r\nContent-Type: {kind}'
        )
        pieces.append(f"{head}\r\n\r\n".encode() + content + b"\r\n")
    return b"".join([*pieces, b"--x--\r\n"])


def test_the_fields_are_found_in_the_source() -> None:
    assert {
        "words",
        "id",
        "kind",
        "reading",
        "hours",
        "helper",
        "part",
        "past",
        "find",
        "name",
        "phrase",
    } <= set(FIELDS)


@given(address=ADDRESSES, asked=FORMS)
@settings(max_examples=150)
def test_no_address_asked_shows_a_fault(at_home: Client, address: str, asked: dict[str, Any]) -> None:
    assert at_home.get(address, asked).status_code in FINE


@given(address=ADDRESSES, sent=FORMS, files=FILES)
@settings(max_examples=150)
def test_no_form_sent_shows_a_fault(
    at_home: Client, address: str, sent: dict[str, Any], files: list[tuple[str, str, bytes]]
) -> None:
    body = multipart(sent, files)
    assert at_home.post(address, body, content_type="multipart/form-data; boundary=x").status_code in FINE


@given(
    address=ADDRESSES,
    body=BODIES,
    kind=KINDS,
    method=st.sampled_from(["POST", "PUT", "PATCH", "DELETE", "TRACE", "ODD"]),
)
@settings(max_examples=100)
def test_no_raw_body_shows_a_fault(
    at_home: Client, address: str, body: bytes, kind: str, method: str
) -> None:
    assert at_home.generic(method, address, body, content_type=kind).status_code in FINE


@given(address=ADDRESSES, tail=TAILS)
@settings(max_examples=60)
def test_no_address_made_up_shows_a_fault(at_home: Client, address: str, tail: str) -> None:
    assert at_home.get(f"{address}{tail}").status_code in FINE


@given(
    who=st.sampled_from(["stranger", "eve", "ada"]), address=ADDRESSES, sent=FORMS, writes=st.booleans(),
    cookie=st.text(st.characters(max_codepoint=255, exclude_categories=["Cc"]), max_size=20),
)  # fmt: skip
@settings(max_examples=150)
def test_nobody_in_the_house_is_shown_a_fault(
    in_house: dict[str, Client], who: str, address: str, sent: dict[str, Any], *, writes: bool, cookie: str
) -> None:
    client = in_house[who]
    if who == "stranger":
        client.cookies["witnessmark_in"] = cookie
    ends = address in ("/out", "/people") and writes and who != "stranger"  # a log-in would end
    answer = client.post(address, sent) if writes and not ends else client.get(address, sent)
    assert answer.status_code in FINE
    if who == "stranger":
        assert b"gearbox" not in answer.content.replace(b"took off gearbox", b"")


def test_a_number_beyond_every_record_is_told(at_home: Client, tmp_path: Path) -> None:
    assert at_home.get("/journal/999999999").status_code == 400
    assert at_home.get("/journal/99999999999999999999").status_code == 404
