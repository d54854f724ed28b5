"""The page for the wall, judged in millimetres: capitals of 12 mm, by the dots its glass is set to.

20 to 22 minutes of arc at 2 m make 11.6 to 12.8 mm (arithmetic; the angle is common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import ImageFont
from playwright.sync_api import Browser, Page

from tests.web.chromium import glass
from tests.web.running import running
from tests.web.van import browser, text_of, van
from witnessmark.web.faces import big_face
from witnessmark.web.wall import CARD, USUAL

TABLET = {"width": 1024, "height": 768}


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with running(van(tmp_path_factory.mktemp("wall"))) as found:
        yield found


def capital() -> float:
    """How high a capital H of the face is, in parts of its size: measured on the font file itself."""
    _, top, _, foot = ImageFont.truetype(str(big_face()), 1000).getbbox("H")
    return (foot - top) / 1000


def letters(page: Page) -> float:
    return float(page.locator(".tall").first.evaluate("e => parseFloat(getComputedStyle(e).fontSize)"))


@pytest.mark.parametrize("dots", [USUAL, 4.0, 7.25])
def test_what_is_loose_stands_in_capitals_of_twelve_millimetres(
    browser_of_this_machine: Browser, address: str, dots: float
) -> None:
    with glass(browser_of_this_machine, TABLET) as page:
        page.goto(f"{address}/wall?mm={dots}")
        page.evaluate("document.fonts.ready")
        assert letters(page) * capital() / dots == pytest.approx(12.0, abs=0.1)
        assert page.locator(".tall").first.evaluate("e => getComputedStyle(e).textTransform") == "uppercase"
        assert page.evaluate("document.documentElement.scrollWidth") <= TABLET["width"]


def test_the_card_to_measure_by_is_as_large_as_a_card_and_the_size_is_kept(
    browser_of_this_machine: Browser, address: str
) -> None:
    with glass(browser_of_this_machine, TABLET) as page:
        page.goto(f"{address}/wall?card=1")
        page.get_by_role("link", name="Larger").click()
        page.get_by_role("link", name="Larger").click()
        box = page.locator("svg.card").bounding_box()
        assert box is not None
        assert box["width"] / 6.5 == pytest.approx(CARD[0], abs=0.1)
        assert box["height"] / 6.5 == pytest.approx(CARD[1], abs=0.1)
        page.get_by_role("link", name="That is it").click()
        page.goto(f"{address}/wall")
        assert letters(page) * capital() / 6.5 == pytest.approx(12.0, abs=0.1)


def test_no_size_is_a_fault(tmp_path: Path) -> None:
    client = browser(van(tmp_path))
    for typed in ("nan", "inf", "-inf", "x", "1e9", ""):
        answer = client.get("/wall", {"mm": typed})
        assert answer.status_code == 200
        assert "wheel nuts, left rear" in text_of(answer).lower()
