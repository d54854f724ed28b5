"""Photos in a real browser: with a line, by plain form and sent ahead, stopped, and over a cut connection."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, FilePayload, Page, Route, expect

from tests.pictures import shot
from tests.web.chromium import PHONE, glass
from tests.web.running import running
from tests.web.van import van, words_in
from witnessmark.journal.facts import Photographed
from witnessmark.restoration.at_hand import AtHand

LINE = "took off gearbox"


@pytest.fixture
def small(tmp_path: Path) -> AtHand:
    return van(tmp_path)


@pytest.fixture
def address(small: AtHand) -> Iterator[str]:
    with running(small) as found:
        yield found


def pictures(*numbers: int) -> list[FilePayload]:
    return [FilePayload(name=f"{n}.jpg", mimeType="image/jpeg", buffer=shot(n, (800, 600))) for n in numbers]


def choose(page: Page, *numbers: int) -> None:
    page.get_by_label("Choose some").set_input_files(pictures(*numbers))


def read_back(page: Page, address: str) -> None:
    page.goto(f"{address}/line")
    page.get_by_label("What was done?").fill(LINE)
    page.get_by_role("button", name="Read it back").click()
    expect(page.get_by_role("heading", name="Took off gearbox")).to_be_visible()


def photos_of_last(at_hand: AtHand) -> int:
    with at_hand.opened() as restoration:
        fact = restoration.entries[-1].fact
        return len(fact.photos) if isinstance(fact, Photographed) else 0


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
def test_three_taps_and_one_line_write_a_line_with_its_photos(
    browser_of_this_machine: Browser, small: AtHand, address: str, scripts: bool
) -> None:
    with glass(browser_of_this_machine, PHONE, scripts=scripts) as page:
        read_back(page, address)  # the first tap
        choose(page, 1, 2)  # the second
        if scripts:
            expect(page.get_by_role("status")).to_have_text("2 photos kept, to go with it.")
        page.get_by_role("button", name="Write it").click()  # the third
        expect(page.get_by_role("heading", name="Written as line 14")).to_be_visible()
        shown = page.get_by_alt_text(f"Photo 1: {LINE}")
        expect(shown).to_be_visible()
        assert shown.evaluate("e => e.decode().then(() => e.naturalWidth)") >= 480
    assert words_in(small)[-2:] == [LINE, "2 photos with line 14"]


def test_the_key_pressed_while_a_photo_is_on_its_way_counts_when_it_is_there(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        held: list[Route] = []

        def hold(route: Route) -> None:
            held.append(route)

        page.route("**/photos/keep", hold)
        read_back(page, address)
        with page.expect_request("**/photos/keep"):
            choose(page, 1)
        expect(page.get_by_role("status")).to_contain_text("Photo 1 of 1 is being sent.")
        page.get_by_role("button", name="Write it").click()
        assert words_in(small)[-1] != LINE
        held[0].continue_()
        expect(page.get_by_role("heading", name="Written as line 14")).to_be_visible()
    assert photos_of_last(small) == 1


def test_sending_can_be_stopped_and_what_is_there_goes_along(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        sent: list[Route] = []

        def let_two_through(route: Route) -> None:
            sent.append(route)
            if len(sent) < 3:
                route.continue_()

        page.route("**/photos/keep", let_two_through)
        page.goto(f"{address}/journal/4")
        choose(page, 1, 2, 3, 4, 5)
        expect(page.get_by_role("status")).to_contain_text("Photo 3 of 5 is being sent.")
        page.get_by_role("button", name="Stop sending").click()
        expect(page.get_by_role("status")).to_have_text(
            "2 photos kept, to go with it. Stopped; the rest was left out."
        )
        page.get_by_role("button", name="Keep it").click()
        expect(page.locator(".row img")).to_have_count(2)
    assert photos_of_last(small) == 2


def test_a_photo_that_will_not_do_is_told_at_once(browser_of_this_machine: Browser, address: str) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        read_back(page, address)
        bad = FilePayload(name="notes.jpg", mimeType="image/jpeg", buffer=b"no picture")
        page.get_by_label("Choose some").set_input_files([bad])
        expect(page.get_by_role("status")).to_contain_text("notes.jpg does not read as a picture")


def test_a_cut_before_sending_keeps_the_line_and_its_photo_and_sends_both_once(
    browser_of_this_machine: Browser, small: AtHand, address: str
) -> None:
    before = words_in(small)
    with glass(browser_of_this_machine, PHONE) as page:
        read_back(page, address)
        page.context.set_offline(True)
        choose(page, 1, 2)
        expect(page.get_by_role("status")).to_contain_text("2 photos not sent yet")
        page.get_by_role("button", name="Write it").click()
        expect(page.locator("#kept")).to_contain_text(f"not written yet: “{LINE}”, with its photos")
        assert words_in(small) == before
        page.context.set_offline(False)
        expect(page.locator("#kept")).to_contain_text("Written as line 14")
        page.reload()
        expect(page.locator("#kept")).to_be_hidden()
    assert words_in(small)[len(before) :] == [LINE, "2 photos with line 14"]


def test_the_camera_is_asked_for_on_the_phone(browser_of_this_machine: Browser, address: str) -> None:
    with glass(browser_of_this_machine, PHONE) as page:
        for name in ("/line?words=took+off+gearbox", "/down", "/journal/4"):
            page.goto(address + name)
            take = page.get_by_label("Take one")
            expect(take).to_be_visible()
            assert take.get_attribute("capture") == "environment"
