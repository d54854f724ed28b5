"""Photos by form: with a line, with Down tools, with an old line, of a thing; bounded, known by content."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from tests.pictures import PLACE, saved, shot
from tests.web.van import WHEEL, browser, hidden, text_of, van, words_in
from witnessmark.exchange.pictures import MOST_BYTES, cleaned
from witnessmark.journal.facts import Photographed
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.checking import faults_in

LINE = "took off wheel nuts right rear"


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def client(small: AtHand) -> Client:
    return browser(small)


def file(number: int = 1, name: str = "IMG_1.JPG") -> SimpleUploadedFile:
    return SimpleUploadedFile(name, shot(number), content_type="text/plain")


def last(at_hand: AtHand) -> Photographed:
    with at_hand.opened() as restoration:
        fact = restoration.entries[-1].fact
    assert isinstance(fact, Photographed)
    return fact


def write(client: Client, words: str, **more: object) -> str:
    """Read a line back, then write it as the form would; the address it leads to."""
    page = client.get("/line", {"words": words})
    fields = {name: hidden(page, name) for name in ("id", "said", "kind", "reading", "day", "at")}
    return str(client.post("/line/write", {**fields, "words": words, **more}).get("Location", ""))


def test_a_photo_goes_with_the_line_in_the_same_breath(client: Client, small: AtHand) -> None:
    where = write(client, LINE, photo=[file(1), file(2)])
    assert words_in(small)[-2:] == [LINE, f"2 photos with line {where.partition('=')[2]}"]
    written = client.get(where).content.decode()
    assert re.findall(r'src="/photo/([0-9a-f]{64}\.jpg)/small" alt="Photo \d: took off', written) == list(
        last(small).photos
    )
    assert faults_in(small.folder) == ()


def test_sent_twice_a_line_with_its_photo_is_written_once(client: Client, small: AtHand) -> None:
    page = client.get("/line", {"words": LINE})
    fields = {name: hidden(page, name) for name in ("id", "said")}
    for _ in range(2):
        client.post("/line/write", {**fields, "words": LINE, "photo": file()})
    assert words_in(small)[-4:] == ["nipped up hub nut left rear", LINE, LINE, "photo with line 15"]


def test_down_tools_takes_a_photo_of_how_it_stands(client: Client, small: AtHand) -> None:
    page = client.get("/down")
    for _ in range(2):
        client.post("/down", {"id": hidden(page, "id"), "at": [WHEEL], "photo": file()})
    assert [w for w in words_in(small) if w.startswith("downed")] == [
        "downed tools, finger-tight: wheel nuts left rear"
    ]
    assert last(small).at == (WHEEL,)
    assert "Tools were put down" in text_of(client.get("/"))


def test_a_photo_is_put_with_a_line_written_long_ago(client: Client, small: AtHand) -> None:
    page = client.get("/journal/3")
    answer = client.post("/journal/3/photo", {"id": hidden(page, "id"), "photo": file()})
    assert answer["Location"] == "/journal/3"
    name = last(small).photos[0]
    assert (last(small).of, last(small).at) == (3, (WHEEL,))
    for address in (
        "/journal/3",
        "/journal",
        "/photos",
        f"/photos?of={WHEEL}",
        "/journal?about=left+rear+corner",
    ):
        assert f'src="/photo/{name}/small"' in client.get(address).content.decode(), address
    assert name not in client.get("/journal?about=gearbox").content.decode()
    assert "photo with line 3" not in text_of(client.get("/journal"))


def test_a_thing_is_photographed_from_its_own_page_and_shows_before_and_after(
    client: Client, small: AtHand
) -> None:
    page = client.get("/photos", {"of": WHEEL})
    client.post("/photos/add", {"id": hidden(page, "id"), "of": WHEEL, "photo": file(1)})
    before = last(small).photos[0]
    write(client, "tightened wheel nuts left rear to 60 lbf ft", photo=file(2))
    after = last(small).photos[0]
    body = client.get("/photos", {"of": WHEEL}).content.decode()
    assert body.index("Before and after") < body.index(before) < body.index(after)


def test_the_photo_itself_comes_without_its_place_and_is_kept_for_good(client: Client, small: AtHand) -> None:
    write(client, LINE, photo=file())
    name = last(small).photos[0]
    assert small.thumbnails.settle(20)
    whole, little = client.get(f"/photo/{name}"), client.get(f"/photo/{name}/small")
    assert whole.content == cleaned(shot(1))
    assert PLACE not in whole.content
    assert len(little.content) < len(whole.content)
    for answer in (whole, little):
        assert answer["Content-Type"] == "image/jpeg"
        assert "immutable" in answer["Cache-Control"]
        assert answer["X-Content-Type-Options"] == "nosniff"


def test_until_the_small_copy_is_made_the_photo_stands_in(client: Client, small: AtHand) -> None:
    write(client, LINE, photo=file())
    name = last(small).photos[0]
    assert small.thumbnails.settle(20)
    (small.folder / "thumbs" / name).unlink()  # scratch: it may be deleted at any time
    answer = client.get(f"/photo/{name}/small")
    assert (answer.content, answer["Cache-Control"]) == (cleaned(shot(1)), "no-store")
    assert small.thumbnails.settle(20)
    assert client.get(f"/photo/{name}/small").content != answer.content


def test_photos_sent_ahead_go_with_the_form(client: Client, small: AtHand) -> None:
    ahead = client.post("/photos/keep", {"photo": [file(1), file(2)]}).json()["kept"]
    write(client, LINE, kept=[*ahead, "../journal.db", "0" * 64])
    assert list(last(small).photos) == ahead
    refused = client.post("/photos/keep", {"photo": SimpleUploadedFile("x.jpg", b"no picture")})
    assert (refused.status_code, "does not read as a picture" in refused.json()["refused"]) == (400, True)


def test_a_line_kept_while_the_connection_was_cut_brings_its_photo(client: Client, small: AtHand) -> None:
    sent = client.post("/line/send", {"words": LINE, "id": "a" * 20, "photo": file()}).json()
    assert (last(small).of, len(last(small).photos)) == (sent["written"], 1)
    bad = SimpleUploadedFile("x.jpg", b"no picture")
    assert (
        "picture" in client.post("/line/send", {"words": LINE, "id": "b" * 20, "photo": bad}).json()["asks"]
    )


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"<svg onload='alert(1)'/>", "does not read as a picture"),
        (saved("BMP"), "does not read as a picture"),
        (shot()[:200], "does not read as a picture"),
        (bytes(MOST_BYTES + 70_000), "MB"),
    ],
    ids=["svg", "bmp", "cut-short", "too-heavy"],
)
def test_what_is_no_picture_is_told_and_the_words_stay_in_the_box(
    client: Client, small: AtHand, content: bytes, said: str
) -> None:
    before = words_in(small)
    page = client.get("/line", {"words": LINE})
    fields = {"id": hidden(page, "id"), "said": hidden(page, "said"), "words": LINE}
    answer = client.post("/line/write", {**fields, "photo": SimpleUploadedFile("p.jpg", content)})
    assert answer.status_code == 400
    assert said in text_of(answer)
    assert f">{LINE}</textarea>" in answer.content.decode()
    assert words_in(small) == before
    assert not (small.folder / "photos").exists()


@pytest.mark.parametrize("address", ["/journal/3/photo", "/photos/add"])
def test_a_form_without_a_photo_is_told(client: Client, small: AtHand, address: str) -> None:
    before = words_in(small)
    answer = client.post(address, {"id": "0" * 20, "of": WHEEL})
    assert (answer.status_code, words_in(small)) == (400, before)
    assert "no photo came" in text_of(answer)


@pytest.mark.parametrize(
    ("address", "code"),
    [
        (f"/photo/{'0' * 64}.jpg", 400),
        (f"/photo/{'0' * 64}.jpg/small", 400),
        ("/photo/journal.db", 404),
        ("/photo/..%2fjournal.db", 404),
        (f"/photo/{'0' * 64}.jpg%00", 404),
        (f"/photo/../{'0' * 64}.jpg", 404),
    ],
)
def test_no_address_reaches_anything_but_a_photo(client: Client, address: str, code: int) -> None:
    assert client.get(address).status_code == code


def test_a_forged_form_brings_no_photo(small: AtHand) -> None:
    strict = browser(small, checks_forms=True)
    assert strict.post("/photos/keep", {"photo": file()}).status_code == 403
    assert not (small.folder / "photos").exists()
