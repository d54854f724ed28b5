"""The front panel is off, six hours of work: what else while it can be reached?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.running import run


@pytest.fixture
def van(tmp_path: Path) -> Path:
    """A van described in a spreadsheet: four things stand behind one panel."""
    folder = tmp_path / "van"
    folder.mkdir()
    assert run(folder, "begin", "the van").code == 0
    rows = [
        "name,kind,holds,behind",
        "front panel bolts,structural-bolts,front panel,",
        "brake pipe union,brake-union,,front panel",
        "radiator mounts,radiator,,front panel",
        "heater hose joint,coolant-gasket,,front panel",
        "horn wiring,earth-point,,front panel",
    ]
    (tmp_path / "joints.csv").write_text("\n".join(rows), encoding="utf-8")
    (tmp_path / "parts.csv").write_text("name,place\nfront panel,front\n", encoding="utf-8")
    assert run(folder, "import", str(tmp_path / "parts.csv")).code == 0
    assert run(folder, "import", str(tmp_path / "joints.csv")).code == 0
    for line in (
        "guess front panel bolts 4 h 6 h 10 h",
        "guess heater hose joint 8 15 40 min",
        "wanted: heater hose joint renewed",
        "left horn wiring as it is because it is new",
    ):
        said = run(folder, "write", line, "--yes")
        assert said.code == 0, said
    return folder


def test_worth_doing_now_has_its_time_now_its_time_later_and_its_parts(van: Path) -> None:
    more = run(van, "reach", "radiator mounts", "--json").json()["while_open"]
    worth = {one["name"]: one for one in more["worth"]}
    pipe, hose = worth["brake pipe union"], worth["heater hose joint"]
    assert more["worth"][0]["name"] == "brake pipe union"
    assert (pipe["now"], pipe["parts"]) == (5, "nothing to buy")
    assert pipe["later"] > 4 * 60
    assert (hose["now"], hose["parts"]) == (15, "to order")
    assert hose["later"] == pipe["later"] + 10
    assert more["cap"] == round(more["planned"] / 4)


def test_the_no_and_why_is_kept(van: Path) -> None:
    more = run(van, "reach", "radiator mounts", "--json").json()["while_open"]
    assert [(no["name"], no["why"]) for no in more["refused"]] == [("horn wiring", "it is new")]
    told = run(van, "reach", "radiator mounts").out
    assert "Left as it is, and why" in told
    assert "it is new" in told


def test_several_jobs_share_the_panel(van: Path) -> None:
    answer = run(van, "reach", "radiator mounts", "brake pipe union", "--json").json()
    together = answer["together"]
    assert answer["minutes"] == together["at_once"] == together["same_day"]
    assert together["one_by_one"] == 2 * together["at_once"]
    assert "each by itself, one after the other" in run(van, "reach", "--wanted", "brake pipe union").out
