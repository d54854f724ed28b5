"""Looking ahead on pages: a snag typed on the first page is answered at once, and can be written down."""

from __future__ import annotations

from pathlib import Path

from tests.web.van import browser, text_of, van


def test_a_snag_typed_on_now_is_answered_at_once(tmp_path: Path) -> None:
    client = browser(van(tmp_path))
    shown = client.get("/line", {"words": "wheel nuts left rear seized"})
    text = text_of(shown)
    for heading in (
        "What else opens",
        "Goes in new on the way in",
        "Order tonight",
        "Swaps in",
        "Where to stop",
    ):
        assert heading.lower() in text.lower()
    assert "Nothing was written" in text
    assert "written_down=1" in shown.content.decode()


def test_it_can_be_written_down_all_the_same(tmp_path: Path) -> None:
    client = browser(van(tmp_path))
    shown = text_of(client.get("/line", {"words": "wheel nuts left rear seized", "written_down": "1"}))
    assert "Nothing was written" not in shown
    assert "seized" in shown


def test_a_snag_about_nothing_known_tells_what_would_hold(tmp_path: Path) -> None:
    client = browser(van(tmp_path))
    shown = client.get("/whatif", {"words": "the flux capacitor won't come out"})
    assert shown.status_code == 400
    assert "flux capacitor" in text_of(shown)
