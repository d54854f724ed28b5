"""The door and the pages behind it on real glass: as wide as the screen, nothing for axe-core to find."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from playwright.sync_api import Browser, Page

from tests.web.house import PHRASE, house_with
from tests.web.house import quick_hash as quick_hash
from tests.web.running import running
from tests.web.test_on_glass import axe_faults, width_of
from witnessmark.web import paper

pytestmark = pytest.mark.usefixtures("quick_hash")
SIZES = ({"width": 390, "height": 844}, {"width": 1440, "height": 900})


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    at_hand, house = house_with(tmp_path)
    with running(at_hand, replace(house, hosts=("127.0.0.1",))) as found:
        yield found


def demand_fit(page: Page) -> None:
    assert axe_faults(page) == []
    shown, glass = width_of(page)
    assert shown <= glass


@pytest.mark.parametrize("size", SIZES, ids=["phone", "desk"])
def test_the_door_and_what_is_behind_it_fit_and_can_be_used(
    browser_of_this_machine: Browser,
    address: str,
    size: dict[str, int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    held = threading.Event()

    def printed(*_: object, **__: object) -> bytes:
        held.wait(30)
        return b"%PDF-1.7"

    monkeypatch.setattr(paper, "to_pdf", printed)
    context = browser_of_this_machine.new_context(viewport=size, bypass_csp=True)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(f"{address}/owed")
    demand_fit(page)
    page.fill("input[name=name]", "Ada")
    page.fill("input[name=phrase]", PHRASE)
    page.keyboard.press("Enter")
    page.wait_for_url(f"{address}/owed")
    for where in ("people", "phrase", "pages", "archive"):
        page.goto(f"{address}/{where}")
        demand_fit(page)
    page.goto(f"{address}/sheets/wall")
    page.click("text=Print: PDF")
    page.wait_for_url("**/going/*")
    page.route(
        "**/going/*", lambda route: route.fulfill(status=204)
    )  # it asks again each second: let it stand
    demand_fit(page)
    page.unroute("**/going/*")
    page.click("text=Leave it off")
    page.wait_for_url(f"{address}/")
    held.set()
    context.close()
