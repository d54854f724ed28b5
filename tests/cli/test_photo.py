"""The command `photo`: with the last line, with any line, of a thing; all or none."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.running import run
from tests.pictures import shot


@pytest.fixture
def vehicle(tmp_path: Path) -> Path:
    assert run(tmp_path, "begin", "test vehicle").code == 0
    assert run(tmp_path, "write", "took off hub nut left rear", "--yes", "--kind", "plain-fixing").code == 0
    for number in (1, 2):
        (tmp_path / f"{number}.jpg").write_bytes(shot(number))
    (tmp_path / "bad.jpg").write_bytes(b"no picture")
    return tmp_path


def test_photos_go_with_the_last_line_or_with_the_one_named(vehicle: Path) -> None:
    said = run(vehicle, "photo", str(vehicle / "1.jpg"), str(vehicle / "2.jpg"), "--json")
    written = said.json()
    assert said.code == 0
    assert len(written["photos"]) == 2
    last = written["line"]
    assert f"2 photos with line {last - 1}" in run(vehicle, "journal").out
    assert "photo with line 2." in run(vehicle, "photo", str(vehicle / "1.jpg"), "--line", "2").out
    assert run(vehicle, "photo", str(vehicle / "1.jpg"), "--of", "hub nut, left rear").code == 0
    assert run(vehicle, "check").code == 0
    (vehicle / "photos" / written["photos"][0]).unlink()
    assert "is missing" in run(vehicle, "check").out


@pytest.mark.parametrize(
    "words",
    [
        ("bad.jpg",),
        ("1.jpg", "bad.jpg"),
        ("absent.jpg",),
        ("1.jpg", "--line", "99"),
        ("1.jpg", "--of", "moon"),
    ],
)
def test_what_will_not_do_is_told_and_nothing_is_written(vehicle: Path, words: tuple[str, ...]) -> None:
    before = run(vehicle, "journal").out
    said = run(vehicle, "photo", *(str(vehicle / w) if w.endswith(".jpg") else w for w in words))
    assert said.code == 2
    assert all(part in said.err for part in ("Given:", "Would hold:", "Do:"))
    assert run(vehicle, "journal").out == before


def test_the_week_is_told_on_the_screen_and_as_files(vehicle: Path) -> None:
    run(vehicle, "photo", str(vehicle / "1.jpg"))
    said = run(vehicle, "week")
    assert said.code == 0
    assert "**Apart:** hub nut, left rear." in said.out
    assert "test vehicle" not in said.out
    out = vehicle / "to publish"
    assert run(vehicle, "week", "--out", str(out)).code == 0
    assert sorted(file.name for file in out.iterdir()) == ["1.jpg", "week.html", "week.md"]
    assert "![Took off hub nut, left rear.](1.jpg)" in (out / "week.md").read_text("utf-8")
    assert run(vehicle, "week", "--out", str(vehicle / "1.jpg")).code == 2
    assert run(vehicle, "week", "--ending", "soon").code == 2
