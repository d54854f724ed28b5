"""The line on a page: typed, read back, asked about once, written once, struck."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from django.test import Client

from tests.web.van import HUB, browser, hidden, text_of, van, words_in
from witnessmark.restoration.at_hand import AtHand
from witnessmark.web.line import pieces
from witnessmark.web.showing import line_address

ID = "00112233445566778899aabbccddeeff"
PLAIN = "took off wheel nuts right rear"


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def client(small: AtHand) -> Client:
    return browser(small)


def confirmed(client: Client, page: Any) -> Any:
    """Press the button under a line read back."""
    names = ("words", "id", "kind", "reading", "said", "day", "at")
    return client.post("/line/write", {name: hidden(page, name) for name in names})


def test_a_line_is_read_back_before_it_is_written(client: Client, small: AtHand) -> None:
    before = words_in(small)
    page = client.get("/line", {"words": f"  {PLAIN} ", "id": ID})
    assert "Took off wheel nuts, right rear" in text_of(page)
    assert "Now apart." in text_of(page)
    assert words_in(small) == before
    answer = confirmed(client, page)
    assert answer.status_code == 303
    assert words_in(small)[len(before) :] == [PLAIN] * (len(words_in(small)) - len(before))
    assert f"Written as line {len(words_in(small))}" in text_of(client.get(answer["Location"]))


def test_sent_twice_it_is_written_once(client: Client, small: AtHand) -> None:
    page = client.get("/line", {"words": PLAIN, "id": ID})
    first = confirmed(client, page)
    lines = words_in(small)
    assert confirmed(client, page)["Location"] == first["Location"]
    assert words_in(small) == lines


def test_an_id_met_again_with_other_words_is_another_line(client: Client, small: AtHand) -> None:
    confirmed(client, client.get("/line", {"words": PLAIN, "id": ID}))
    lines = len(words_in(small))
    confirmed(client, client.get("/line", {"words": "took off gearbox", "id": ID}))
    assert len(words_in(small)) == lines + 1


def test_only_what_was_not_understood_is_underlined(client: Client) -> None:
    body = client.get("/line", {"words": "took off the gearbox frobnicate"}).content.decode("utf-8")
    assert "<u>frobnicate</u>" in body
    assert body.count("<u>") == 1


def test_pieces_join_to_the_words_again() -> None:
    words = "undid the box frobnicate again"
    assert "".join(piece for piece, _ in pieces(words, ((14, 24),))) == words
    assert pieces("", ()) == []


def test_a_new_thing_is_asked_about_once(client: Client, small: AtHand) -> None:
    before = len(words_in(small))
    page = client.get("/line", {"words": "opened swarf guard", "id": ID})
    assert "What kind is it?" in text_of(page)
    assert 2 <= page.content.count(b'<button name="kind"') <= 5
    answered = client.get("/line", {"words": "opened swarf guard", "id": ID, "kind": "plain-fixing"})
    assert "What kind is it?" not in text_of(answered)
    confirmed(client, answered)
    assert len(words_in(small)) > before


def test_an_unanswered_question_writes_nothing(client: Client, small: AtHand) -> None:
    before = words_in(small)
    answer = client.post("/line/write", {"words": "opened swarf guard", "id": ID, "said": "anything"})
    assert "What kind is it?" in text_of(answer)
    assert words_in(small) == before


def test_another_reading_can_be_chosen(client: Client, small: AtHand) -> None:
    words = "took off left rear"
    page = client.get("/line", {"words": words, "id": ID})
    assert "Or was it one of these?" in text_of(page)
    other = client.get("/line", {"words": words, "id": ID, "reading": "1"})
    confirmed(client, other)
    with small.opened() as restoration:
        assert restoration.entries[-1].words == words
        assert restoration.hear(words, reading=1).sentence() in text_of(other)


def test_a_record_that_moved_on_is_read_once_more(client: Client, small: AtHand) -> None:
    before = words_in(small)
    answer = client.post("/line/write", {"words": PLAIN, "id": ID, "said": "Took off something else."})
    assert "moved on" in text_of(answer)
    assert words_in(small) == before


def test_words_survive_being_changed(client: Client) -> None:
    page = client.get("/line", {"words": "tok off wheel", "id": ID, "change": "1"})
    assert "tok off wheel</textarea>" in page.content.decode("utf-8")
    assert hidden(page, "id") == ID


def test_a_line_kept_on_a_device_is_written_once_under_its_own_day(client: Client, small: AtHand) -> None:
    sent = {"words": "took off gearbox", "id": ID, "day": "2026-03-13", "at": "16:05"}
    first = client.post("/line/send", sent).json()
    lines = words_in(small)
    assert client.post("/line/send", sent).json()["written"] == first["written"]
    assert words_in(small) == lines
    with small.opened() as restoration:
        last = restoration.entries[-1]
    assert (last.id, last.day.isoformat(), last.time) == (ID, "2026-03-13", "16:05")


def test_a_kept_line_that_is_not_sure_waits_for_an_answer(client: Client, small: AtHand) -> None:
    before = words_in(small)
    for words in ("opened swarf guard", "took off left rear", "x" * 1200):
        assert "asks" in client.post("/line/send", {"words": words, "id": ID}).json()
    assert words_in(small) == before


def test_undo_is_a_strike_with_its_reason(client: Client, small: AtHand) -> None:
    written = confirmed(client, client.get("/line", {"words": PLAIN, "id": ID}))
    line = written["Location"].rpartition("=")[2]
    page = client.get(f"/journal/{line}/strike")
    sent = {"reason": "that was the other side", "id": hidden(page, "id")}
    for _ in range(2):
        assert client.post(f"/journal/{line}/strike", sent).status_code == 303
    shown = text_of(client.get(f"/journal/{line}"))
    assert "it counts no more" in shown
    assert PLAIN in shown
    assert sum(words.startswith("strike") for words in words_in(small)) == 1


def test_a_strike_with_the_right_line_is_read_back_first(client: Client, small: AtHand) -> None:
    before = words_in(small)
    answer = client.post(
        "/journal/4/strike", {"words": "the other one", "instead": "took off brake drum left rear", "id": ID}
    )
    page = client.get(answer["Location"])
    assert words_in(small) == before
    assert "Struck line 4" in text_of(page)
    confirmed(client, page)
    assert "it counts no more" in text_of(client.get("/journal/4"))


def test_a_strike_shows_what_it_would_orphan(client: Client) -> None:
    assert "Later lines speak of what it described" in text_of(client.get("/journal/2/strike"))


def test_a_strike_without_a_reason_is_refused(client: Client, small: AtHand) -> None:
    before = words_in(small)
    assert client.post("/journal/4/strike", {"reason": "", "words": " ", "id": ID}).status_code == 400
    assert words_in(small) == before


def test_what_is_owed_is_one_tap_from_its_line(client: Client, small: AtHand) -> None:
    with small.opened() as restoration:
        debt = next(d for d in restoration.flow().owed if d.joint == HUB)
    body = client.get("/owed").content.decode("utf-8") + client.get("/owed?part=1").content.decode("utf-8")
    assert f'href="{line_address(debt.pays)}"' in body


def test_a_line_that_wants_a_figure_opens_in_the_box(client: Client, small: AtHand) -> None:
    with small.opened() as restoration:
        wanting = next(d.pays for d in restoration.flow().owed if d.pays.endswith("FIGURE"))
    page = client.get(line_address(wanting))
    assert f"autofocus>{wanting.removesuffix(' FIGURE')}</textarea>" in page.content.decode("utf-8")
    for address in ("/", "/line", "/owed", "/owed?part=1"):
        assert "FIGURE" not in client.get(address).content.decode("utf-8")


def test_another_program_writing_is_seen_at_once(client: Client, small: AtHand) -> None:
    with AtHand(small.folder, small.clock).opened() as other:
        other.write(other.hear("took off wheel nuts right front"))
    assert "took off wheel nuts right front" in text_of(client.get("/journal"))
