"""One profile for every property: the same examples on every run, no clock, no folder left behind.

And one database server a worker, started when the first test asks for it.
"""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

from tests.store import server as servers

settings.register_profile("house", deadline=None, derandomize=True, database=None)
settings.register_profile("search", deadline=None, max_examples=2000, database=None)
settings.load_profile("search" if os.environ.get("WM_SEARCH") == "1" else "house")


@pytest.fixture(scope="session")
def server() -> Iterator[servers.Server]:
    """A real PostgreSQL server; the tests that need one are skipped where there is none."""
    if servers.programs() is None:
        pytest.skip(servers.MISSING)
    with servers.running() as started:
        yield started
