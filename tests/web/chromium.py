"""A real browser for the tests: looked for, never fetched."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
BRINGS_IT = "sudo apt install chromium"
PHONE = {"width": 390, "height": 844}
DESK = {"width": 1440, "height": 900}


def found() -> str:
    """The browser on this machine; without it the test is skipped by name, or fails where all must run."""
    path = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if path:
        return path
    said = f"no Chromium on this machine; this brings it: {BRINGS_IT}"
    if os.environ.get("WM_ALL") == "1":
        pytest.fail(said)
    pytest.skip(said)


@contextmanager
def chromium() -> Iterator[Browser]:
    """A browser without a window."""
    path = found()
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=path, args=list(QUIET))
        yield browser
        browser.close()


@contextmanager
def glass(browser: Browser, size: dict[str, int], *, scripts: bool = True) -> Iterator[Page]:
    """One page of a phone (touched) or a desk (pointed at)."""
    touched = size["width"] <= 1024
    context = browser.new_context(
        viewport={"width": size["width"], "height": size["height"]},
        has_touch=touched,
        is_mobile=touched,
        java_script_enabled=scripts,
    )
    context.set_default_timeout(10_000)
    page = context.new_page()
    yield page
    context.close()
