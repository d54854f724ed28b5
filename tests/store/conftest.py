"""Each store test that asks for `place` runs twice: on a file, and on a real database server."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.store.place import Place, new_place


@pytest.fixture(scope="session", params=["sqlite", "postgresql"])
def kept_where(request: pytest.FixtureRequest) -> str:
    """What a record is kept in: "" for the folder itself, else a server's address."""
    return "" if request.param == "sqlite" else request.getfixturevalue("server").address


@pytest.fixture
def place(kept_where: str, tmp_path: Path) -> Place:
    """A place where nothing is kept yet."""
    return new_place(tmp_path, kept_where)
