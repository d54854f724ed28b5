"""One whole afternoon on the pages: each act at most three taps and one line, counted.

Open, find, measure, bench, order, down tools, back again, close, prove, print, sweep in from paper, the week.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.demo.test_axle_closes import ACTS, MOST_ACTS, owed_on_axle
from tests.web.chromium import DESK, PHONE, glass
from tests.web.running import running
from tests.web.van import CORNER, van, words_in
from witnessmark.demo.telling import ASKED, tell
from witnessmark.restoration.at_hand import AtHand

MOST_TAPS = 3


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def address(small: AtHand) -> Iterator[str]:
    with running(small) as found:
        yield found


class Afternoon:
    """One hand: each act counts its taps and its typed lines, and none may take more than is allowed."""

    def __init__(self, page: Page, address: str, at_hand: AtHand) -> None:
        self.page, self.address, self.at_hand = page, address, at_hand
        self.taps = self.lines = 0

    def begin(self, page: str = "/") -> None:
        """An act begins on a page that is open anyway."""
        self.page.goto(self.address + page)
        self.taps = self.lines = 0

    def tap(self, name: str, role: str = "button") -> None:
        self.taps += 1
        self.page.get_by_role(role, name=name, exact=True).first.click()  # type: ignore[arg-type]

    def type(self, label: str, words: str) -> None:
        self.lines += 1
        self.page.get_by_label(label).fill(words)

    def over(self, lines: int = 1) -> None:
        assert self.taps <= MOST_TAPS
        assert self.lines <= lines

    def last(self) -> str:
        return words_in(self.at_hand)[-1]

    def write(self, words: str) -> None:
        """One line from the front page: typed, read back, written."""
        self.begin()
        self.type("What was done?", words)
        self.tap("Read it back")
        self.tap("Write it")
        expect(self.page.get_by_role("heading", name="Written as line")).to_be_visible()
        self.over()
        assert self.last() == words


@pytest.mark.parametrize(
    ("size", "scripts"),
    [(PHONE, True), (DESK, True), (PHONE, False)],
    ids=["phone", "desk", "phone-no-scripts"],
)
def test_one_whole_afternoon(
    browser_of_this_machine: Browser, small: AtHand, address: str, size: dict[str, int], scripts: bool
) -> None:
    with glass(browser_of_this_machine, size, scripts=scripts) as page:
        hand = Afternoon(page, address, small)
        for words in (
            "opened fuel hose clips",
            "found fuel hose clips worn",
            "measured hub nut left rear 47 Nm",
        ):
            hand.write(words)

        hand.begin("/bench")
        hand.tap("A seal to drive in", "link")
        for label, words in (("Bore", "36.2mm"), ("Shaft", "31.8mm"), ("Have", "32x36 mm")):
            page.locator(f"#in-{label.lower()}").fill(words)
        hand.tap("Work it out")
        expect(page.locator(".bench-picture svg")).to_be_visible()
        hand.type("Keep this answer with", "shaft seal, left rear")
        hand.tap("Keep it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert hand.last().startswith("bench for shaft seal left rear: seals driver")
        hand.over()

        hand.begin("/needs")
        hand.tap("Ordered", "link")
        hand.tap("Write it")
        expect(page.get_by_role("heading", name="Written as line")).to_be_visible()
        assert hand.last().startswith("ordered ")
        hand.over(lines=0)

        hand.begin()
        hand.tap("Down tools", "link")
        hand.taps += 1
        page.locator("label.pick").first.click()
        hand.tap("Down tools")
        expect(page.get_by_text("Tools were put down")).to_be_visible()
        hand.over()

        hand.begin()
        hand.taps += 2
        page.get_by_text("Tools were put down").click()
        page.locator("label.pick").first.click()
        hand.tap("They stand as left")
        expect(page.get_by_text("Tools were put down")).to_have_count(0)
        hand.over(lines=0)

        for words in (
            "fitted new shaft seal left rear",
            "tightened hub nut left rear to 110 lbf ft",
            "tightened wheel nuts left rear to 65 lbf ft",
            "proved wheel nuts left rear seen",
        ):
            hand.write(words)

        hand.begin(f"/sheets/closing?of={CORNER}")
        with page.expect_download() as saved:
            hand.tap("Print: PDF")
        assert saved.value.suggested_filename.startswith("closing-")
        hand.over(lines=0)

        code = saved.value.suggested_filename.rpartition("-")[2][:4]
        hand.begin("/sweep")
        hand.type("Codes and numbers", f"{code} all closed")
        hand.tap("Read it back")
        hand.tap("Write 1 line")
        expect(page.get_by_role("heading", name="Written: 1 line")).to_be_visible()
        assert hand.last() == f"closed {CORNER}"
        hand.over()

        hand.begin("/vehicle")
        hand.taps += 1
        page.locator('.drawn a[href="/vehicle/place?at=left+rear"]').first.click()
        expect(page.get_by_role("heading", name="Left rear", level=1)).to_be_visible()
        if page.get_by_role("link", name="Lift this layer away").count():
            hand.tap("Lift this layer away", "link")
            expect(page.get_by_text("1 layer lifted away")).to_be_visible()
        hand.over(lines=0)

        page.goto(f"{address}/week")
        expect(page.locator("main h1").first).to_be_visible()


def test_the_same_by_keyboard_alone(browser_of_this_machine: Browser, small: AtHand, address: str) -> None:
    """Bench, vehicle, sweep and down tools reached and done with Tab, Space and Enter only."""
    with glass(browser_of_this_machine, DESK) as page:
        page.goto(f"{address}/bench/seals/driver")
        to(page, "document.activeElement.name === 'bore'")
        page.keyboard.type("36.2mm")
        to(page, "document.activeElement.name === 'shaft'")
        page.keyboard.type("31.8mm")
        page.keyboard.press("Enter")
        expect(page.locator(".answer .sentence")).to_be_visible()

        page.goto(f"{address}/vehicle")
        to(page, "(document.activeElement.getAttribute('href') || '').includes('left+rear')")
        page.keyboard.press("Enter")
        expect(page.get_by_role("heading", name="Left rear", level=1)).to_be_visible()

        page.goto(f"{address}/sweep")
        to(page, "document.activeElement.name === 'ticks'")
        page.keyboard.type("QQ99")
        to(page, "document.activeElement.textContent === 'Read it back'")
        page.keyboard.press("Enter")
        expect(page.get_by_text("is no code of anything owed now")).to_be_visible()

        page.goto(f"{address}/down")
        to(page, "document.activeElement.name === 'at'")
        page.keyboard.press("Space")
        to(page, "document.activeElement.textContent === 'Down tools' && document.activeElement.form")
        page.keyboard.press("Enter")
        expect(page.get_by_text("Tools were put down")).to_be_visible()


def to(page: Page, there: str) -> None:
    """Tab on until the focus is where it is wanted."""
    for _ in range(90):
        page.keyboard.press("Tab")
        if page.evaluate(there):
            return
    raise AssertionError(f"the keyboard never comes to: {there}")


def test_one_assembly_is_closed_on_the_pages_in_at_most_twelve_acts(
    browser_of_this_machine: Browser, tmp_path: Path
) -> None:
    tell(tmp_path / "demo")
    at_hand = AtHand(tmp_path / "demo", lambda: ASKED + timedelta(days=3))
    with running(at_hand) as address, glass(browser_of_this_machine, PHONE) as page:
        hand = Afternoon(page, address, at_hand)
        for words in ACTS:
            hand.write(words)
    assert len(ACTS) <= MOST_ACTS
    with at_hand.opened() as restoration:
        assert owed_on_axle(restoration.flow()) == []
