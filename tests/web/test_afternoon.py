"""One afternoon in a real browser: by touch, by keyboard alone, without scripts, with the connection cut."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.chromium import DESK, PHONE, glass
from tests.web.running import running
from tests.web.van import CORNER, van, words_in
from witnessmark.restoration.at_hand import AtHand

MOST_TAPS = 3
LINE = "took off wheel nuts right rear"


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def address(small: AtHand) -> Iterator[str]:
    with running(small) as found:
        yield found


class Hand:
    """A hand on the glass, counting its taps."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.taps = 0

    def tap(self, name: str, role: str = "button") -> None:
        self.taps += 1
        self.page.get_by_role(role, name=name, exact=True).first.click()  # type: ignore[arg-type]

    def tick(self) -> None:
        self.taps += 1
        self.page.locator("label.pick").first.click()

    def say(self, words: str) -> None:
        self.page.get_by_label("What was done?").fill(words)

    def act_over(self) -> None:
        assert self.taps <= MOST_TAPS
        self.taps = 0


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_an_afternoon(
    browser_of_this_machine: Browser, small: AtHand, address: str, size: dict[str, int], scripts: bool
) -> None:
    with glass(browser_of_this_machine, size, scripts=scripts) as page:
        hand = Hand(page)
        page.goto(address)
        expect(page.get_by_text("Wheel nuts, left rear").first).to_be_visible()
        hand.say(LINE)
        hand.tap("Read it back")
        expect(page.get_by_role("heading", name="Took off wheel nuts, right rear")).to_be_visible()
        hand.tap("Write it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert words_in(small)[-1] == LINE
        hand.act_over()

        hand.tap("That was wrong: strike it", "link")
        hand.tap("Strike it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert words_in(small)[-1].endswith("that was the other side")
        hand.act_over()

        hand.tap("Now", "link")
        before = len(words_in(small))
        hand.taps = 0
        page.locator(".step h3 a").first.click()
        hand.taps += 1
        hand.tap("Write it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert len(words_in(small)) > before
        hand.act_over()

        page.goto(f"{address}/")
        hand.tap("Down tools", "link")
        hand.tick()
        hand.tap("Down tools")
        expect(page.get_by_text("Tools were put down")).to_be_visible()
        assert words_in(small)[-1].startswith("downed tools, finger-tight: ")
        hand.act_over()

        page.get_by_text("Tools were put down").click()
        expect(page.get_by_text("What the time away has done")).to_be_visible()
        page.locator("label.pick").first.click()
        page.get_by_role("button", name="They stand as left").click()
        expect(page.get_by_text("Tools were put down")).to_have_count(0)

        page.goto(f"{address}/")
        page.get_by_role("link", name="Road: ").click()
        page.locator(".index").get_by_text("Known to hold").first.click()
        page.locator(".behind a:visible").first.click()
        expect(page.get_by_role("heading", name="Line ").first).to_be_visible()

        page.goto(f"{address}/sheets/closing?of={CORNER}")
        with page.expect_download() as saved:
            hand.tap("Print: PDF")
        assert saved.value.suggested_filename.endswith(".pdf")
        hand.act_over()
        assert words_in(small)[-1].startswith("printed the closing sheet")


def test_by_keyboard_alone(browser_of_this_machine: Browser, small: AtHand, address: str) -> None:
    with glass(browser_of_this_machine, DESK) as page:
        page.goto(address)
        keys = page.keyboard
        keys.press("Tab")
        expect(page.get_by_text("To what this page says")).to_be_focused()
        for _ in range(60):
            if page.evaluate("document.activeElement.name") == "words":
                break
            keys.press("Tab")
        keys.type(LINE)
        keys.press("Enter")
        expect(page.get_by_role("button", name="Write it")).to_be_focused()
        outline = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
        assert outline == "4px"
        keys.press("Enter")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert words_in(small)[-1] == LINE


def test_a_cut_between_typing_and_sending_loses_nothing(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    before = words_in(small)
    with glass(browser_of_this_machine, PHONE) as page:
        hand = Hand(page)
        page.goto(f"{address}/line")
        page.context.set_offline(True)
        for words in (LINE, "opened swarf guard"):
            hand.say(words)
            hand.tap("Read it back")
            expect(page.locator("#kept")).to_contain_text(f"not written yet: “{words}”")
        assert words_in(small) == before
        page.context.set_offline(False)
        expect(page.locator("#kept")).to_contain_text("Written as line")
        expect(page.locator("#kept")).to_contain_text("waits for your answer: “opened swarf guard”")
        assert words_in(small)[len(before) :] == [LINE, LINE]
        page.reload()
        expect(page.locator("#kept")).to_contain_text("opened swarf guard")
        assert len(words_in(small)) == len(before) + 2
        page.get_by_role("link", name="Answer it").click()
        page.locator(".choices button").first.click()
        hand.tap("Write it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        expect(page.locator("#kept")).to_be_hidden()
    assert words_in(small)[-1] == "opened swarf guard"


def test_a_cut_between_confirming_and_writing_writes_once(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        hand = Hand(page)
        page.goto(address)
        hand.say("took off gearbox")
        hand.tap("Read it back")
        expect(page.get_by_role("button", name="Write it")).to_be_visible()
        page.context.set_offline(True)
        hand.tap("Write it")
        expect(page.locator("#kept")).to_contain_text("not written yet")
        page.context.set_offline(False)
        expect(page.locator("#kept")).to_contain_text("Written as line")
        hand.tap("Write it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
    assert words_in(small).count("took off gearbox") == 2  # one was there before


def test_a_half_typed_line_is_there_on_return(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        page.goto(address)
        Hand(page).say("took off the sta")
        page.goto(f"{address}/owed")
        page.goto(address)
        expect(page.get_by_label("What was done?")).to_have_value("took off the sta")
