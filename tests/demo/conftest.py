"""The demo vehicle, told once for all its tests."""

from __future__ import annotations

import pytest

from witnessmark.demo.telling import story, tell
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.restoration import Restoration
from witnessmark.words.lines import TypedLine, read_lines


@pytest.fixture(scope="package")
def told(tmp_path_factory: pytest.TempPathFactory) -> Restoration:
    """The story in a record of its own; telling it raises where a single line is in doubt."""
    return tell(tmp_path_factory.mktemp("marrowby"))


@pytest.fixture(scope="package")
def flow(told: Restoration) -> Flow:
    """Its answers on the evening the demo asks."""
    return told.flow()


@pytest.fixture(scope="package")
def typed() -> tuple[TypedLine, ...]:
    """The lines of the story, as typed."""
    return read_lines(story())
