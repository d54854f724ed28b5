from __future__ import annotations

from pathlib import Path, PurePath, PurePosixPath, PureWindowsPath

import pytest

from tests.journal.lines import unwritten
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Remarked
from witnessmark.store import folders
from witnessmark.store.folders import why_shared
from witnessmark.store.mounts import Mount, mounted, mounts_listed, mounts_tabled
from witnessmark.store.sqlite_record import create, open_record

DISKS = (
    Mount("/", "ext4"),
    Mount("/mnt/shed", "cifs"),
    Mount("/mnt/shed/really here", "xfs"),
    Mount("/mnt/sh", "nfs4"),
    Mount("/home/you/far", "fuse.sshfs"),
)


@pytest.mark.parametrize(
    ("folder", "why"),
    [
        (PurePosixPath("/mnt/shed"), "network disk (cifs)"),
        (PurePosixPath("/mnt/shed/ten"), "network disk (cifs)"),
        (PurePosixPath("/home/you/far/ten"), "network disk (fuse.sshfs)"),
        (PurePosixPath("/home/you/Dropbox/ten"), "cloud folder (Dropbox)"),
        (PurePosixPath("/Users/you/Library/CloudStorage/Some-Service/ten"), "cloud folder (CloudStorage)"),
        (PureWindowsPath(r"C:\Users\you\OneDrive - Shed\ten"), "cloud folder (OneDrive - Shed)"),
        (PureWindowsPath(r"D:\Kept\ten"), r"cloud folder (D:\Kept)"),
        (PureWindowsPath(r"\\shed\share\ten"), "another machine"),
        (PureWindowsPath(r"\\?\UNC\shed\share\ten"), "another machine"),
    ],
)
def test_a_network_or_cloud_folder_is_refused_with_the_reason(folder: PurePath, why: str) -> None:
    environment = {"OneDrive": r"D:\Kept"} if isinstance(folder, PureWindowsPath) else {}
    assert why in why_shared(folder, mounts=DISKS, environment=environment)


@pytest.mark.parametrize(
    "folder",
    [
        PurePosixPath("/home/you/ten"),
        PurePosixPath("/mnt/shed/really here/ten"),
        PurePosixPath("/mnt/shedding/ten"),
        PurePosixPath("/home/you/dropboxes/ten"),
        PurePosixPath("/home/you/the dropbox/ten"),
        PureWindowsPath(r"C:\Users\you\ten"),
        PureWindowsPath(r"\\?\C:\Users\you\ten"),
    ],
)
def test_a_folder_on_a_disk_of_this_machine_is_taken(folder: PurePath) -> None:
    assert why_shared(folder, mounts=DISKS, environment={"OneDrive": "/elsewhere"}) == ""


def test_a_machine_that_runs_off_the_network_has_no_other_disk() -> None:
    assert why_shared(PurePosixPath("/home/you/ten"), mounts=[Mount("/", "9p")], environment={}) == ""


def test_the_table_of_mounts_is_read_with_its_escapes() -> None:
    table = "/dev/sda1 / ext4 rw 0 0\nshed:/x /mnt/a\\040b\\134c nfs rw,addr=1 0 0\n\nshort\n"
    assert mounts_tabled(table) == (Mount("/", "ext4"), Mount("/mnt/a b\\c", "nfs"))


def test_the_listing_of_mounts_is_read() -> None:
    listing = (
        "/dev/disk3 on / (apfs, sealed, local)\n//you@shed/a on /Volumes/a on b (smbfs, nodev)\nnonsense\n"
    )
    assert mounts_listed(listing) == (Mount("/", "apfs"), Mount("/Volumes/a on b", "smbfs"))


def test_this_machine_tells_where_its_root_is() -> None:
    points = {mount.point for mount in mounted()}
    assert not points or "/" in points


def test_a_record_is_neither_begun_nor_opened_there_unless_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shed = tmp_path / "shed"
    monkeypatch.setattr(folders, "mounted", lambda: (Mount(str(shed.resolve()), "nfs4"),))
    with pytest.raises(BadInput, match="network disk") as caught:
        create(shed)
    assert "this machine" in caught.value.do
    assert not shed.exists()
    with create(shed, accept_folder=True) as record:
        record.append([unwritten(1, Remarked())], 0)
    with pytest.raises(BadInput, match="network disk"):
        open_record(shed)
    with open_record(shed, accept_folder=True) as record:
        assert record.last_line() == 1


def test_a_way_round_by_a_link_is_seen_through(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shed = tmp_path / "shed"
    shed.mkdir()
    (tmp_path / "near").symlink_to(shed, target_is_directory=True)
    monkeypatch.setattr(folders, "mounted", lambda: (Mount(str(shed.resolve()), "smbfs"),))
    with pytest.raises(BadInput, match="network disk"):
        create(tmp_path / "near")
