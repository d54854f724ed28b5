"""Ticks from paper: one line each, a wrong code told in three parts, nothing lost, nothing written twice."""

from __future__ import annotations

from pathlib import Path

import pytest
from django.test import Client
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.web.van import CORNER, HUB, SEAL, WHEEL, browser, hidden, text_of, van, words_in
from witnessmark.journal.facts import Closed
from witnessmark.restoration.at_hand import AtHand
from witnessmark.restoration.devices import new_id


@pytest.fixture
def at_hand(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def client(at_hand: AtHand) -> Client:
    return browser(at_hand)


def code_of(at_hand: AtHand, joint: str, sort: str) -> str:
    with at_hand.opened() as restoration:
        return next(d.id for d in restoration.flow().owed if d.joint == joint and d.sort == sort)


def test_codes_in_a_row_and_below_each_other_are_read_back_and_then_written_one_line_each(
    at_hand: AtHand, client: Client
) -> None:
    close, renew = code_of(at_hand, HUB, "close"), code_of(at_hand, SEAL, "renew")
    nuts = code_of(at_hand, WHEEL, "close")
    before = words_in(at_hand)
    ticks = f"{close} 110 lbf ft, {renew.lower()}\n{nuts}"
    read = client.post("/sweep", {"ticks": ticks, "id": new_id()})
    assert "Write 3 lines" in text_of(read)
    assert words_in(at_hand) == before
    done = client.post("/sweep", {"ticks": ticks, "id": hidden(read, "id"), "write": "1"})
    assert "Written: 3 lines" in text_of(done)
    added = words_in(at_hand)[len(before) :]
    assert len(added) == 3
    assert added[0].endswith("110 lbf ft")
    assert not {close, renew, nuts} & {code_of_debt for code_of_debt in owed_codes(at_hand)}


def owed_codes(at_hand: AtHand) -> set[str]:
    with at_hand.opened() as restoration:
        return {debt.id for debt in restoration.flow().owed}


def test_sent_twice_it_is_written_once(at_hand: AtHand, client: Client) -> None:
    sent = {"ticks": code_of(at_hand, WHEEL, "close"), "id": new_id(), "write": "1"}
    client.post("/sweep", sent)
    after = words_in(at_hand)
    again = client.post("/sweep", sent)
    assert words_in(at_hand) == after
    assert "is no code of anything owed now" not in text_of(again)


def test_a_wrong_code_is_told_in_three_parts_and_stays_in_the_box(at_hand: AtHand, client: Client) -> None:
    good = code_of(at_hand, WHEEL, "close")
    before = len(words_in(at_hand))
    answer = client.post("/sweep", {"ticks": f"QQ99 5 mm\n{good}\nscribble", "id": new_id(), "write": "1"})
    said = text_of(answer)
    assert len(words_in(at_hand)) == before + 1
    assert all(part in said for part in ("Given", "Would hold", "Do", "QQ99", "scribble"))
    body = answer.content.decode()
    box = body.partition("<textarea")[2].partition(">")[2].partition("</textarea>")[0]
    assert box.split("\n") == ["QQ99 5 mm", "scribble"]


def test_a_box_that_wants_a_figure_says_so(at_hand: AtHand, client: Client) -> None:
    with at_hand.opened() as restoration:
        wanting = next(d for d in restoration.flow().owed if "FIGURE" in d.pays)
    assert "without its figure" in text_of(client.post("/sweep", {"ticks": wanting.id, "id": new_id()}))


def test_a_closing_sheet_is_closed_in_one_go_but_for_what_is_named(at_hand: AtHand, client: Client) -> None:
    printed = client.post(f"/sheets/closing?of={CORNER}")
    code = printed["Content-Disposition"].rpartition("-")[2][:4]
    only_named = text_of(client.post("/sweep", {"ticks": code, "id": new_id()}))
    assert "the sheet itself, nothing to write" in only_named
    ticks = {"ticks": f"{code} all but shaft seal", "id": new_id(), "write": "1"}
    client.post("/sweep", ticks)
    assert words_in(at_hand)[-1] == f"closed {CORNER} all but shaft seal"
    with at_hand.opened() as restoration:
        fact = restoration.entries[-1].fact
        assert isinstance(fact, Closed)
        assert (fact.at, fact.but) == ((CORNER,), ("shaft seal",))
    unknown = text_of(client.post("/sweep", {"ticks": f"{code} all but shaft zeal", "id": new_id()}))
    assert "is no joint of" in unknown
    assert "Near shaft seal" in unknown
    wrong = text_of(client.post("/sweep", {"ticks": f"{code} 47 Nm", "id": new_id()}))
    assert "a sheet's own code" in wrong.replace("&#39;", "'")


PIECES = st.lists(st.sampled_from(["K7M2", "AB", "47 Nm", "\n", ";"])).map(" ".join)


@given(ticks=st.text(max_size=80) | PIECES)
@settings(max_examples=40)
def test_no_sweep_shows_a_fault(any_hand: Client, ticks: str) -> None:
    for write in ("", "1"):
        sent = {"ticks": ticks, "id": new_id(), "write": write, "day": ticks[:10]}
        assert any_hand.post("/sweep", sent).status_code in (200, 400)


@pytest.fixture(scope="module")
def any_hand(tmp_path_factory: pytest.TempPathFactory) -> Client:
    return browser(van(tmp_path_factory.mktemp("sweep")))
