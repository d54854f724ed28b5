"""On the house network: a stranger reads nothing, an onlooker writes nothing, a log-in ends.

The numbers are those of the OWASP Application Security Verification Standard 4.0.3, from memory of it.
"""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from http.cookies import Morsel
from pathlib import Path
from urllib.parse import parse_qs, urlencode, urlsplit

import html5lib
import pytest
from django.test import Client

from tests.web.house import ADDRESS, PHRASE, caller, every_address, house_with, log_in
from tests.web.house import quick_hash as quick_hash
from tests.web.van import browser, text_of, words_in
from witnessmark.restoration.at_hand import AtHand
from witnessmark.web import doors
from witnessmark.web.house import House

pytestmark = pytest.mark.usefixtures("quick_hash")

METHODS = ("get", "head", "post", "put", "patch", "delete", "options")
# What a stranger may reach: the door, and the empty answer that the connection stands.
OPEN = ("/in", "/here")


@pytest.fixture
def place(tmp_path: Path) -> tuple[AtHand, House]:
    return house_with(tmp_path)


def said_of_the_record(body: bytes) -> list[str]:
    """Words of the record that stand in an answer."""
    told = (
        "the van",
        "gearbox",
        "nuts",
        "blue tin",
        "shaft seal",
        "weeping",
        "drum",
        "shelf",
        "fuel",
        "Ada",
        "Ott",
    )
    said = re.sub(rb'"[A-Za-z0-9]{64}"', b"", body)  # a form's token is made of letters by chance
    return [word for word in told if word.encode() in said]


# ---- a stranger


@pytest.mark.parametrize("method", METHODS)
def test_a_stranger_reads_nothing_at_any_address(place: tuple[AtHand, House], method: str) -> None:
    at_hand, house = place
    before = words_in(at_hand)
    addresses = [*every_address(), "/nowhere", "/line?words=took+off+gearbox", "/in?to=/owed", "//", "/../x"]
    assert len(addresses) > 25
    for address in addresses:
        answer = getattr(caller(at_hand, house), method)(address)
        assert said_of_the_record(answer.content) == [], address
        headers = {name: said for name, said in answer.headers.items() if name != "Location"}
        assert not said_of_the_record(str(headers).encode()), address  # the way back is what was asked for
        if address.partition("?")[0] in OPEN:
            assert answer.status_code in (200, 204, 403, 405), address
        elif method in ("get", "head"):
            assert answer.status_code == 303, address
            assert answer["Location"].startswith("/in?to="), address
        else:
            assert answer.status_code == 403, address
    assert words_in(at_hand) == before


def test_the_check_for_words_of_the_record_sees_them(place: tuple[AtHand, House]) -> None:
    at_hand, _ = place
    assert "gearbox" in said_of_the_record(browser(at_hand).get("/shelf").content)


def test_a_key_made_up_or_of_another_folder_is_a_strangers(
    place: tuple[AtHand, House], tmp_path: Path
) -> None:
    at_hand, house = place
    other_hand, other_house = house_with(tmp_path / "other")
    other = caller(other_hand, other_house)
    assert log_in(other, "Ada").status_code == 303
    for key in ("x", "", "0" * 43, other.cookies["witnessmark_in"].value, "é" * 20):
        client = caller(at_hand, house)
        client.cookies["witnessmark_in"] = key
        assert client.get("/owed").status_code == 303


def test_a_form_too_old_tells_a_stranger_nothing(place: tuple[AtHand, House]) -> None:
    answer = caller(*place, checks_forms=True).post("/in", {"name": "Ada", "phrase": PHRASE})
    assert answer.status_code == 403
    assert said_of_the_record(answer.content) == []


# ---- logging in


def test_logging_in_opens_every_page_and_leads_on_to_where_one_was_going(place: tuple[AtHand, House]) -> None:
    client = caller(*place)
    asked = client.get("/owed?part=1")
    to = parse_qs(urlsplit(asked["Location"]).query)["to"][0]
    assert to == "/owed?part=1"
    door = client.get(asked["Location"])
    html5lib.HTMLParser(strict=True).parse(door.content.decode())
    assert f'name="to" value="{to}"' in door.content.decode()
    answer = log_in(client, "ada", to=to)
    assert (answer.status_code, answer["Location"]) == (303, to)
    page = client.get(to)
    assert page.status_code == 200
    assert "Ada, owner" in text_of(page)
    for address in every_address():
        assert client.get(address).status_code in (200, 204, 303, 400, 404, 405), address


@pytest.mark.parametrize(
    "to",
    ["https://evil.example/", "//evil.example", "/\\evil.example", "evil", "javascript:x", "/a\r\nX: y", ""],
)
def test_logging_in_never_leads_elsewhere(place: tuple[AtHand, House], to: str) -> None:
    assert log_in(caller(*place), "Ada", to=to)["Location"] == "/"


def test_the_wrong_phrase_says_so_and_keeps_the_way(place: tuple[AtHand, House]) -> None:
    answer = log_in(caller(*place), "Ada", "wrong wrong wrong", to="/owed")
    assert answer.status_code == 403
    assert "do not belong together" in text_of(answer)
    assert 'value="/owed"' in answer.content.decode()
    assert "wrong wrong" not in answer.content.decode()


def test_guesses_are_bounded(place: tuple[AtHand, House]) -> None:
    client = caller(*place)
    codes = [log_in(client, "Ada", f"wrong wrong {n}").status_code for n in range(10)]
    assert codes[:8] == [403] * 8
    assert codes[8:] == [429] * 2
    assert log_in(client, "Ada").status_code == 429
    assert log_in(caller(*place, source="192.168.1.78"), "Ada").status_code == 303


def test_the_door_says_that_others_can_read_along_unless_it_is_over_tls(place: tuple[AtHand, House]) -> None:
    assert "others can read along" in text_of(caller(*place).get("/in"))
    assert "others can read along" not in text_of(caller(*place).get("/in", secure=True))


def key_cookie(client: Client) -> Morsel[str]:
    return next(cookie for name, cookie in client.cookies.items() if name.endswith("witnessmark_in"))


def test_the_key_is_kept_from_scripts_and_other_sites(place: tuple[AtHand, House]) -> None:
    """ASVS 3.4.1 to 3.4.5: HttpOnly, SameSite, and over TLS Secure and bound to this host by its name."""
    plain, safe = caller(*place), caller(*place)
    log_in(plain, "Ada")
    assert key_cookie(plain)["httponly"]
    assert key_cookie(plain)["samesite"] == "Strict"
    assert not key_cookie(plain)["domain"]
    safe.post("/in", {"name": "Ada", "phrase": PHRASE}, secure=True)
    assert key_cookie(safe).key == "__Host-witnessmark_in"
    assert key_cookie(safe)["secure"]
    assert key_cookie(safe)["path"] == "/"
    assert safe.get("/owed", secure=True).status_code == 200
    assert all(cookie["secure"] for cookie in safe.get("/line", secure=True).cookies.values())


def test_each_log_in_has_a_key_and_a_form_token_of_its_own(place: tuple[AtHand, House]) -> None:
    """ASVS 3.2.1: a new key at each log-in."""
    client = caller(*place)
    client.get("/in")
    before = client.cookies["witnessmark_form"].value
    log_in(client, "Ada")
    one, token = key_cookie(client).value, client.cookies["witnessmark_form"].value
    log_in(client, "Ada")
    assert key_cookie(client).value != one
    assert token != before


def test_nothing_is_left_in_a_browsers_store(place: tuple[AtHand, House]) -> None:
    """ASVS 8.2.1."""
    client = caller(*place)
    log_in(client, "Ada")
    assert client.get("/owed")["Cache-Control"] == "no-store"


def test_logging_out_ends_it(place: tuple[AtHand, House]) -> None:
    client = caller(*place)
    log_in(client, "Ada")
    key = key_cookie(client).value
    assert "Log out" in text_of(client.get("/pages"))
    assert client.post("/out")["Location"] == "/in"
    client.cookies["witnessmark_in"] = key
    assert client.get("/owed").status_code == 303
    assert client.get("/out").status_code in (303, 405)


def test_a_log_in_left_alone_ends(place: tuple[AtHand, House], monkeypatch: pytest.MonkeyPatch) -> None:
    client = caller(*place)
    begun = datetime(2026, 3, 14, 11, 20)
    monkeypatch.setattr(doors, "now", lambda: begun)
    log_in(client, "Ada")
    monkeypatch.setattr(doors, "now", lambda: begun + timedelta(hours=11))
    assert client.get("/owed").status_code == 200
    monkeypatch.setattr(doors, "now", lambda: begun + timedelta(hours=24))
    assert client.get("/owed").status_code == 303


def test_a_line_typed_when_the_log_in_has_ended_is_read_back_after_logging_in(
    place: tuple[AtHand, House],
) -> None:
    client = caller(*place)
    sent = urlencode({"words": "took off the starter", "id": "0" * 20})
    answer = client.post("/line/write", sent, content_type="application/x-www-form-urlencoded")
    assert answer.status_code == 403
    words = re.search(r'name="words" value="([^"]+)"', answer.content.decode())
    assert words
    onward = log_in(client, "Ott", words=words[1])
    assert onward["Location"] == "/line?words=took+off+the+starter"
    assert client.post("/line/send", {"words": "took off gearbox"}).status_code == 200


# ---- roles


def test_who_wrote_stands_beside_the_line(place: tuple[AtHand, House]) -> None:
    at_hand, house = place
    client = caller(at_hand, house)
    log_in(client, "ott")
    assert client.post("/line/send", {"words": "ran 12 km", "id": "0" * 20}).json()["written"]
    with at_hand.opened() as restoration:
        assert restoration.entries[-1].who == "Ott"
        assert restoration.entries[-2].who == "you"
    assert "Ott" in text_of(client.get(f"/journal/{len(words_in(at_hand))}"))


def test_an_onlooker_reads_everything_and_writes_nothing(place: tuple[AtHand, House]) -> None:
    at_hand, house = place
    client = caller(at_hand, house)
    log_in(client, "Eve")
    before = words_in(at_hand)
    for address in every_address():
        if address not in ("/in", "/out", "/phrase"):
            assert client.get(address).status_code in (200, 204, 303, 400, 404, 405), address
            answer = client.post(address, {"words": "took off gearbox", "id": "0" * 20, "name": "Ada"})
            assert answer.status_code == 403, address
            assert "onlooker" in text_of(answer)
    assert words_in(at_hand) == before


@pytest.mark.parametrize(("name", "code"), [("Ada", 200), ("Ott", 400), ("Eve", 400)])
def test_only_an_owner_sees_who_may_log_in(place: tuple[AtHand, House], name: str, code: int) -> None:
    client = caller(*place)
    log_in(client, name)
    answer = client.get("/people")
    assert answer.status_code == code
    assert ("Eve" in text_of(answer)) == (name in ("Ada", "Eve"))
    if name == "Ott":
        log_in(eve := caller(*place), "Eve")
        assert client.post("/people", {"name": "Eve"}).status_code == 400
        assert eve.get("/owed").status_code == 200


def test_an_owner_logs_somebody_out_everywhere(place: tuple[AtHand, House]) -> None:
    ada, ott = caller(*place), caller(*place)
    log_in(ada, "Ada")
    log_in(ott, "Ott")
    assert ada.post("/people", {"name": "Ott"})["Location"] == "/people"
    assert ott.get("/owed").status_code == 303
    assert ada.get("/owed").status_code == 200
    assert ada.post("/people", {"name": "Nobody"}).status_code == 400


def test_everybody_changes_their_own_phrase(place: tuple[AtHand, House]) -> None:
    client = caller(*place)
    log_in(client, "Eve")
    assert client.get("/phrase").status_code == 200
    for old, new, again, told in (
        ("wrong", "a new cold morning", "a new cold morning", "not yours now"),
        (PHRASE, "a new cold morning", "a new cold evening", "differ"),
        (PHRASE, "short", "short", "of 5 letters"),
    ):
        answer = client.post("/phrase", {"phrase": old, "new": new, "again": again})
        assert answer.status_code == 403
        assert told in text_of(answer)
    sent = {"phrase": PHRASE, "new": "a new cold morning", "again": "a new cold morning"}
    assert client.post("/phrase", sent)["Location"] == "/in"
    assert client.get("/owed").status_code == 303
    assert log_in(client, "Eve", "a new cold morning").status_code == 303


# ---- under which name


@pytest.mark.parametrize("host", [ADDRESS, f"{ADDRESS}:8617", "shed.local", "SHED.local:8617"])
def test_the_houses_own_names_are_answered(place: tuple[AtHand, House], host: str) -> None:
    assert caller(*place).get("/in", HTTP_HOST=host).status_code == 200


@pytest.mark.parametrize(
    "host", ["127.0.0.1", "localhost", "evil.example", "192.168.1.21", "", "a b", "[::1"]
)
def test_any_other_name_is_refused(place: tuple[AtHand, House], host: str) -> None:
    answer = caller(*place).get("/in", HTTP_HOST=host)
    assert answer.status_code == 400
    assert said_of_the_record(answer.content) == []


def test_on_this_machine_alone_nobody_is_asked(place: tuple[AtHand, House]) -> None:
    at_hand, _ = place
    client = browser(at_hand)
    assert client.get("/owed").status_code == 200
    assert client.get("/in")["Location"] == "/"
    assert client.get("/phrase")["Location"] == "/"
    assert client.post("/out")["Location"] == "/"
    assert client.get("/people").status_code == 400
    assert "Log out" not in text_of(client.get("/pages"))
