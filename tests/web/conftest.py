"""One browser for a whole file of tests."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser

from tests.web.chromium import chromium


@pytest.fixture(scope="module")
def browser_of_this_machine() -> Iterator[Browser]:
    with chromium() as browser:
        yield browser
