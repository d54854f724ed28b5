from __future__ import annotations

from pathlib import Path

import pytest

from witnessmark.exchange.beside import written_beside
from witnessmark.ground.errors import BadInput


def test_the_file_is_in_its_place_only_once_it_is_whole(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_text("old", encoding="utf-8")
    with written_beside(path) as beside:
        beside.write_text("new", encoding="utf-8")
        assert path.read_text("utf-8") == "old"
    assert path.read_text("utf-8") == "new"
    assert list(tmp_path.iterdir()) == [path]


def break_off(path: Path, trouble: BaseException) -> None:
    """Write half a file, then meet trouble."""
    with written_beside(path) as beside:
        beside.write_text("half of the", encoding="utf-8")
        raise trouble


@pytest.mark.parametrize(
    "trouble", [KeyboardInterrupt(), OSError(28, "No space left on device"), ValueError()]
)
def test_when_writing_breaks_off_the_old_file_stays_and_nothing_is_left_beside_it(
    tmp_path: Path, trouble: BaseException
) -> None:
    path = tmp_path / "a.txt"
    path.write_text("old", encoding="utf-8")
    told = BadInput if isinstance(trouble, OSError) else type(trouble)
    with pytest.raises(told):
        break_off(path, trouble)
    assert path.read_text("utf-8") == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_full_disk_is_told_in_words(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="No space left"), written_beside(tmp_path / "a.txt"):
        raise OSError(28, "No space left on device")
