"""Who may ask, from where, and what a browser is told to allow.

The headers are those that the OWASP Application Security Verification Standard 4.0.3 asks of every
answer (sections 14.4, 13.2, 4.2.2); its text was not at hand here, the list is from memory.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from django.test import Client

from tests.web.van import browser, text_of, van, words_in
from witnessmark.restoration.at_hand import AtHand


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.mark.parametrize("address", ["/", "/line", "/nowhere", "/here", "/session?hours=900"])
def test_every_answer_binds_the_browser(small: AtHand, address: str) -> None:
    answer = browser(small).get(address)
    policy = answer["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "script-src 'self'" in policy
    assert "unsafe" not in policy
    assert answer["X-Frame-Options"] == "DENY"
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Referrer-Policy"] == "same-origin"
    assert answer["Cross-Origin-Opener-Policy"] == "same-origin"
    assert answer["Cache-Control"] == "private, no-cache"


@pytest.mark.parametrize("host", ["evil.example", "192.168.1.20", "127.0.0.1.evil.example", ""])
def test_a_question_under_another_name_is_refused(small: AtHand, host: str) -> None:
    answer = browser(small).get("/", HTTP_HOST=host)
    assert answer.status_code == 400
    assert b"the van" not in answer.content


@pytest.mark.parametrize("host", ["127.0.0.1:8617", "localhost:9", "[::1]"])
def test_this_machine_by_its_own_names_is_answered(small: AtHand, host: str) -> None:
    assert browser(small).get("/", HTTP_HOST=host).status_code == 200


@pytest.mark.parametrize(
    "address", ["/line/write", "/line/send", "/down", "/back", "/journal/2/strike", "/sheets/wall"]
)
def test_a_form_from_elsewhere_writes_nothing(small: AtHand, address: str) -> None:
    before = words_in(small)
    answer = browser(small, checks_forms=True).post(address, {"words": "took off gearbox", "why": "x"})
    assert answer.status_code == 403
    assert words_in(small) == before


def test_a_form_too_old_keeps_what_was_typed(small: AtHand) -> None:
    answer = browser(small, checks_forms=True).post("/line/write", {"words": "took off the starter"})
    assert answer.status_code == 403
    assert "took off the starter" in text_of(answer)


def test_our_own_form_carries_its_token(small: AtHand) -> None:
    client = browser(small, checks_forms=True)
    page = client.get("/down")
    token = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', page.content.decode("utf-8"))
    assert token
    answer = client.post("/down", {"csrfmiddlewaretoken": token[1], "words": "rain"})
    assert answer.status_code == 303


def test_the_token_is_kept_from_scripts_and_other_sites(small: AtHand) -> None:
    client: Client = browser(small)
    client.get("/line")
    cookie = client.cookies["witnessmark_form"]
    assert cookie["httponly"]
    assert cookie["samesite"] == "Strict"


@pytest.mark.parametrize("address", ["/line/write", "/line/send"])
def test_reading_never_writes(small: AtHand, address: str) -> None:
    before = words_in(small)
    assert browser(small).get(address, {"words": "took off gearbox"}).status_code == 405
    for page in ("/", "/line?words=took+off+gearbox", "/down", "/journal/2/strike", "/sheets/wall"):
        browser(small).get(page)
    assert words_in(small) == before


def test_a_form_beyond_its_bounds_is_refused(small: AtHand) -> None:
    before = words_in(small)
    answer = browser(small).post("/line/write", {"words": "x" * 400_000})
    assert answer.status_code == 400
    assert words_in(small) == before
