"""A backup made while others write holds every line that was acknowledged before, and comes back equal."""

from __future__ import annotations

import json
import zipfile
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from tests.cli.running import run
from tests.pictures import shot
from tests.store.place import Place, new_place
from tests.store.test_killed import child
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.backup import ABOUT, About, back_up, restore
from witnessmark.restoration.begin import begin, reopen
from witnessmark.restoration.checking import faults_in
from witnessmark.restoration.people import People
from witnessmark.restoration.photos import Sent, take_in, write_with_photos

NOW = datetime(2026, 3, 14, 10, 40)


def backed_up(folder: Path, file: Path) -> About:
    return back_up(folder, file, now=NOW, say=lambda _: None)


def vehicle(folder: Path, kept_at: str = "", lines: int = 3) -> Path:
    """A small record with a photo."""
    restoration = begin(folder, f"the {folder.name}", now=NOW, kept_at=kept_at)
    for n in range(lines):
        restoration.write(restoration.hear(f"ran {n + 1} km"))
    photos = take_in(folder, [Sent(shot(), "a.jpg")])
    write_with_photos(restoration, restoration.hear("took off the hub nut", kind="hub-nut"), "0" * 20, photos)
    return folder


def entries(folder: Path) -> Any:
    return reopen(folder, now=NOW).entries


@pytest.fixture(params=["sqlite", "postgresql"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> Place:
    where = request.getfixturevalue("server").address if request.param == "postgresql" else ""
    return new_place(tmp_path, where)


def test_a_backup_made_while_a_writer_writes_is_whole_and_comes_back(place: Place, tmp_path: Path) -> None:
    vehicle(place.folder, place.kept_at)
    taken: list[tuple[int, Path]] = []
    with child(place.folder, "writer", 10**9) as writer:
        assert writer.stdout is not None
        for n in range(3):
            acknowledged = [writer.stdout.readline() for _ in range(4)][-1].strip()
            made = backed_up(place.folder, tmp_path / f"{n}.zip")
            taken.append((made.vehicles[0].lines, restore(tmp_path / f"{n}.zip", tmp_path / f"back{n}")[0]))
            assert acknowledged in {entry.words for entry in entries(taken[-1][1])}
        writer.kill()
    full = entries(place.folder)
    for lines, back in taken:
        assert entries(back) == full[:lines]
        assert (back / "journal.db").is_file()
        assert faults_in(back) == ()
    assert taken[0][0] < taken[1][0] < taken[2][0]


def test_what_a_backup_brings_back_may_be_kept_on_a_server(place: Place, tmp_path: Path) -> None:
    folder = vehicle(tmp_path / "van")
    backed_up(folder, tmp_path / "b.zip")
    restore(tmp_path / "b.zip", place.folder, kept_at=place.kept_at)
    assert entries(place.folder) == entries(folder)
    assert (place.folder / "journal.db").is_file() == (not place.kept_at)
    assert faults_in(place.folder) == ()


def test_a_shop_goes_into_one_file_and_comes_back_as_it_was(tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    for n, name in enumerate(("Ten ünd Söhne", "trailer")):
        vehicle(shop / name, lines=n + 1)
    (shop / "not a vehicle").mkdir()
    made = backed_up(shop, tmp_path / "b.zip")
    assert [(one.folder, one.lines) for one in made.vehicles] == [("Ten ünd Söhne", 5), ("trailer", 6)]
    targets = restore(tmp_path / "b.zip", tmp_path / "back")
    assert [target.relative_to(tmp_path / "back").name for target in targets] == ["Ten ünd Söhne", "trailer"]
    for target in targets:
        assert entries(target) == entries(shop / target.name)
        assert faults_in(target) == ()
        assert len(list((target / "photos").glob("*.jpg"))) == 1
    with pytest.raises(BadInput, match="under one name"):
        restore(tmp_path / "b.zip", tmp_path / "other", kept_at="postgresql://shed/x#van")


def test_people_are_not_in_it(tmp_path: Path) -> None:
    folder = vehicle(tmp_path / "van")
    People(folder).add("Ada", "owner", "four rusty bolts and tea")
    backed_up(folder, tmp_path / "b.zip")
    restore(tmp_path / "b.zip", tmp_path / "back")
    assert People(tmp_path / "back").everybody() == ()
    assert b"argon2" not in (tmp_path / "b.zip").read_bytes()


def test_nothing_is_taken_over_what_is_there(tmp_path: Path) -> None:
    folder = vehicle(tmp_path / "van")
    backed_up(folder, tmp_path / "b.zip")
    before = (tmp_path / "b.zip").read_bytes()
    with pytest.raises(BadInput, match="there already"):
        backed_up(folder, tmp_path / "b.zip")
    with pytest.raises(BadInput, match="already holds a record"):
        restore(tmp_path / "b.zip", folder)
    assert (tmp_path / "b.zip").read_bytes() == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["b.zip", "van"]


def test_a_folder_without_a_vehicle_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="there is no record"):
        backed_up(tmp_path, tmp_path / "b.zip")
    assert list(tmp_path.iterdir()) == []


def test_an_archive_of_one_record_is_not_mistaken_for_a_backup(tmp_path: Path) -> None:
    folder = vehicle(tmp_path / "van")
    assert run(folder, "export", str(tmp_path / "out.zip")).code == 0
    with pytest.raises(BadInput, match="`import`"):
        restore(tmp_path / "out.zip", tmp_path / "back")


def test_any_stain_on_a_backup_is_told_and_nothing_is_taken(tmp_path: Path) -> None:
    backed_up(vehicle(tmp_path / "van"), tmp_path / "b.zip")
    whole = (tmp_path / "b.zip").read_bytes()
    told = 0
    for start in range(0, len(whole), max(64, len(whole) // 60)):
        stained = whole[:start] + b"\xff" * 16 + whole[start + 16 :]
        (tmp_path / "stained.zip").write_bytes(stained)
        target = tmp_path / f"back{start}"
        try:
            restore(tmp_path / "stained.zip", target)
        except BadInput:
            told += 1
            assert not target.exists()
        else:
            assert entries(target) == entries(tmp_path / "van")
    assert told > 40


@pytest.mark.parametrize(
    "change",
    [
        {"format": "another"},
        {"version": 99},
        {"vehicles": []},
        {"shop": True, "vehicles": [{"folder": "../out"}]},
        {"shop": True, "vehicles": [{"folder": ".."}]},
        {"shop": True, "vehicles": [{"folder": "a/b"}]},
        {"shop": True, "vehicles": [{"folder": "c:"}]},
        {"shop": True, "vehicles": [{"folder": ""}]},
        {"vehicles": [{"archive": "2.zip"}]},
        {"vehicles": [{"sha256": "0" * 64}]},
        {"vehicles": 7},
    ],
)
def test_a_backup_that_was_changed_is_refused(tmp_path: Path, change: dict[str, Any]) -> None:
    backed_up(vehicle(tmp_path / "van"), tmp_path / "b.zip")
    with zipfile.ZipFile(tmp_path / "b.zip") as packed, zipfile.ZipFile(tmp_path / "c.zip", "w") as out:
        about = json.loads(packed.read(ABOUT))
        vehicles = change.pop("vehicles", [{}])
        if isinstance(vehicles, list):
            vehicles = [{**about["vehicles"][0], **one} for one in vehicles]
        out.writestr(ABOUT, json.dumps({**about, **change, "vehicles": vehicles}))
        out.writestr("1.zip", packed.read("1.zip"))
    with pytest.raises(BadInput, match="nothing was taken"):
        restore(tmp_path / "c.zip", tmp_path / "deep" / "back")
    assert not (tmp_path / "deep" / "back").exists()
    assert not (tmp_path / "out").exists()


def test_the_commands_say_what_they_did(tmp_path: Path) -> None:
    folder, file = vehicle(tmp_path / "van"), tmp_path / "b.zip"
    said = run(tmp_path, "backup", str(folder), str(file))
    assert (said.code, "van: 7 lines" in said.out) == (0, True)
    assert run(tmp_path, "backup", str(folder), str(tmp_path / "c.zip"), "--json").json()["vehicles"] == [
        {"folder": "van", "lines": 7}
    ]
    said = run(tmp_path, "restore", str(file), str(tmp_path / "back"))
    assert (said.code, "Restored" in said.out) == (0, True)
    said = run(tmp_path, "restore", str(tmp_path / "no.zip"), str(tmp_path / "x"))
    assert said.code == 2
    assert "Do:" in said.err
