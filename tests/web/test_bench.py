"""The bench on pages: every question asked by its example, trouble beside its field, the answer kept once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlencode

import html5lib
import pytest
from django.test import Client
from playwright.sync_api import Browser, expect

from tests.web.chromium import DESK, glass
from tests.web.running import running
from tests.web.van import WHEEL, browser, hidden, text_of, van
from witnessmark.bench.question import Question
from witnessmark.bench.questions import ask, every_question
from witnessmark.journal.facts import Remarked
from witnessmark.restoration.at_hand import AtHand

SEAL = {"bore": "36.2mm", "shaft": "31.8mm", "have": "32x36 mm"}
DRIVER = "/bench/seals/driver"


def given(which: Question) -> dict[str, str]:
    return {i.name: i.example for i in which.inputs if i.either or not i.optional}


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> AtHand:
    return van(tmp_path_factory.mktemp("bench"))


@pytest.fixture
def client(small: AtHand) -> Client:
    return browser(small)


@pytest.mark.parametrize("which", every_question(), ids=lambda q: f"{q.subject}-{q.question}")
def test_every_question_answers_its_example_and_keeps_what_was_typed(client: Client, which: Question) -> None:
    empty = client.get(f"/bench/{which.subject}/{which.question}")
    asked = client.get(f"/bench/{which.subject}/{which.question}", given(which))
    slip = ask(which.subject, which.question, given(which))
    body = asked.content.decode()
    assert empty.status_code == asked.status_code == 200
    html5lib.HTMLParser(strict=True).parse(body)
    html5lib.HTMLParser(strict=True).parse(empty.content.decode())
    form = html5lib.parse(body, namespaceHTMLElements=False).find(".//form[@id='ask']")
    assert form is not None
    kept = {i.get("name"): i.get("value") for i in form.iter("input") if i.get("value")}
    assert kept == given(which)
    assert " ".join(slip.because.split()[:3]) in text_of(asked).replace("&#39;", "'").replace("&#34;", '"')
    assert (slip.picture is None) != ("bench-picture" in body)
    assert "style=" not in body
    if slip.sources:
        assert "<h2>Sources</h2>" in body


def test_every_question_is_listed_by_its_moment(client: Client) -> None:
    body = client.get("/bench").content.decode()
    for which in every_question():
        assert f'href="/bench/{which.subject}/{which.question}"' in body


def test_bad_input_is_told_beside_its_field_and_loses_nothing(client: Client) -> None:
    answer = client.get(DRIVER, {**SEAL, "bore": "36.2 fathoms"})
    tree = html5lib.parse(answer.content.decode(), namespaceHTMLElements=False)
    told = tree.find(".//div[@id='trouble-bore']")
    assert told is not None
    said = " ".join(told.itertext())
    assert all(head in said for head in ("Given", "Would hold", "Do"))
    assert "fathoms" in said
    other = tree.find(".//div[@id='trouble-shaft']")
    assert other is not None
    assert not "".join(other.itertext()).strip()
    values = {i.get("name"): i.get("value") for i in tree.iter("input")}
    assert values["bore"] == "36.2 fathoms"
    assert values["have"] == SEAL["have"]


def test_what_is_missing_is_told_where_the_answer_would_stand(client: Client) -> None:
    said = text_of(client.get(DRIVER, {"bore": "36.2mm"}))
    assert "lacks shaft" in said


def test_a_page_reads_no_file_of_this_machine(client: Client, tmp_path: Path) -> None:
    secret = tmp_path / "secret.csv"
    secret.write_text("36, 40, secret", encoding="utf-8")
    answer = client.get(DRIVER, {**SEAL, "have": f"@{secret}"})
    assert "reads no file" in text_of(answer)
    assert b"36, 40" not in answer.content


def test_the_answer_alone_is_told_to_a_page_that_redraws_itself(client: Client) -> None:
    told = client.get(DRIVER, {**SEAL, "answer": "only"}).json()
    assert "<svg" in told["answer"]
    assert told["troubles"] == {}
    assert list(client.get(DRIVER, {"bore": "x", "answer": "only"}).json()["troubles"]) == ["bore"]


def test_an_answer_is_kept_with_a_joint_once_and_pays_nothing(tmp_path: Path) -> None:
    at_hand = van(tmp_path)
    client = browser(at_hand)
    with at_hand.opened() as restoration:
        owed = restoration.flow().owed
    sent = {**SEAL, "kept_with": "wheel nuts left rear", "id": "0123456789abcdef0123"}
    for _ in range(2):
        assert client.post(DRIVER, sent).status_code == 303
    with at_hand.opened() as restoration:
        last, before = restoration.entries[-1], restoration.entries[-2]
        assert isinstance(last.fact, Remarked)
        assert last.fact.at == (WHEEL,)
        assert "bore 36.2mm" in last.fact.remark
        assert not isinstance(before.fact, Remarked)
        assert restoration.flow().owed == owed


def test_an_answer_that_cannot_be_kept_is_still_on_the_page(client: Client) -> None:
    answer = client.post(DRIVER, {**SEAL, "kept_with": "moon", "id": ""})
    assert answer.status_code == 400
    assert hidden(answer, "bore") == "36.2mm"
    assert "not known to this record" in text_of(answer)
    assert "bench-picture" in answer.content.decode()


@pytest.fixture
def address(small: AtHand) -> Iterator[str]:
    with running(small) as found:
        yield found


def test_the_picture_follows_the_numbers_as_they_are_typed(
    browser_of_this_machine: Browser, address: str
) -> None:
    with glass(browser_of_this_machine, DESK) as page:
        page.goto(f"{address}{DRIVER}?{urlencode(SEAL)}")
        before = page.locator(".bench-picture").inner_html()
        page.locator("#in-bore").fill("40.2mm")
        expect(page.locator(".bench-picture")).to_contain_text("40.2")
        assert page.locator(".bench-picture").inner_html() != before
        page.locator("#in-bore").fill("40.2 mn")
        expect(page.locator("#trouble-bore")).to_contain_text("Would hold")
        expect(page.locator("#in-bore")).to_be_focused()
        page.goto(f"{address}{DRIVER}")
        expect(page.locator("#in-bore")).to_have_value("40.2 mn")
