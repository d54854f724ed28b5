"""Folders no record may live in: another machine's disk, or one a cloud service copies.

A record is one file with two helpers beside it, locked and flushed by the operating system. Over a
network the lock and the flush are promises nobody keeps; a cloud service copies the three files one
by one, at different moments. Either way a line can be lost that was said to be safe.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePath, PureWindowsPath

from msgspec import Struct

from witnessmark.ground.errors import BadInput

# Kinds of file system that reach over a network or into another operating system.
REMOTE = frozenset(
    "9p afs afpfs beegfs ceph cifs coda davfs fuse.ceph fuse.davfs fuse.glusterfs fuse.gvfsd-fuse fuse.rclone "
    "fuse.s3fs fuse.sshfs fuse.vmhgfs-fuse glusterfs lustre ncpfs nfs nfs4 prl_fs smb2 smb3 smbfs vboxsf "
    "virtiofs webdav".split()
)
# Pieces of a path that a cloud service's folder is known by, in lower case; "name - something" counts as well.
CLOUD_PIECES = (
    "cloudstorage",
    "dropbox",
    "google drive",
    "icloud drive",
    "mobile documents",
    "nextcloud",
    "onedrive",
    "owncloud",
)
# Variables of the environment that hold the path of such a folder.
CLOUD_VARIABLES = ("OneDrive", "OneDriveCommercial", "OneDriveConsumer")
DRIVE_REMOTE = 4  # what Windows answers for a drive letter that stands for a share


class Mount(Struct, frozen=True):
    """One mounted file system: where, and of what kind."""

    point: str
    kind: str


def refuse_shared_folder(folder: Path, *, accept: bool = False) -> None:
    """Raise BadInput, with the reason, for a folder no record may live in; accept=True lets it pass."""
    if accept:
        return
    real = Path(os.path.realpath(folder))
    why = why_shared(real, mounts=mounted(), environment=os.environ) or _windows_share(real)
    if why:
        raise BadInput(
            given=f"{folder} {why}",
            holds="a folder on a disk of this machine",
            do="Keep the record on this machine, and carry copies with an archive.",
        )


def why_shared(real: PurePath, *, mounts: Iterable[Mount], environment: Mapping[str, str]) -> str:
    """Why no record may live in this folder, "" where it may.

    >>> from pathlib import PurePosixPath as P
    >>> why_shared(P("/mnt/shed/ten"), mounts=[Mount("/", "ext4"), Mount("/mnt/shed", "nfs4")], environment={})
    'lies on a network disk (nfs4)'
    >>> why_shared(P("/home/you/ten"), mounts=[Mount("/", "ext4")], environment={})
    ''
    """
    if isinstance(real, PureWindowsPath) and real.drive.startswith("\\\\"):
        return f"lies on another machine ({real.drive})"
    for piece in real.parts:
        if _cloud(piece):
            return f"lies in a cloud folder ({piece})"
    for variable in CLOUD_VARIABLES:
        top = environment.get(variable, "")
        if top and real.is_relative_to(type(real)(top)):
            return f"lies in a cloud folder ({top})"
    mount = _holding(real, mounts)
    if mount and mount.kind in REMOTE:
        return f"lies on a network disk ({mount.kind})"
    return ""


def _cloud(piece: str) -> bool:
    plain = piece.casefold()
    return any(plain == name or plain.startswith(f"{name} - ") for name in CLOUD_PIECES)


def _holding(real: PurePath, mounts: Iterable[Mount]) -> Mount | None:
    """The mount a path lies on, or None where that is the root: a machine that runs off it has no other disk."""
    holding = [m for m in mounts if m.point != real.anchor and real.is_relative_to(m.point)]
    return max(holding, key=lambda m: len(m.point), default=None)


def mounted() -> tuple[Mount, ...]:
    """The file systems mounted on this machine; none where it does not tell."""
    if sys.platform == "darwin":
        told = subprocess.run(["/sbin/mount"], capture_output=True, encoding="utf-8", errors="replace", check=False)
        return mounts_listed(told.stdout)
    table = Path("/proc/mounts")
    if not table.exists():
        return ()
    return mounts_tabled(table.read_text("utf-8", "replace"))


def mounts_tabled(table: str) -> tuple[Mount, ...]:
    r"""Read Linux's table of mounts; spaces stand in it as \040.

    >>> mounts_tabled("shed:/ten /mnt/the\\040shed nfs4 rw 0 0")
    (Mount(point='/mnt/the shed', kind='nfs4'),)
    """
    rows = (row.split(" ") for row in table.splitlines())
    return tuple(Mount(_unescaped(row[1]), row[2]) for row in rows if len(row) > 2)


def mounts_listed(listing: str) -> tuple[Mount, ...]:
    """Read the listing the BSD `mount` command prints.

    >>> mounts_listed("//you@shed/ten on /Volumes/ten (smbfs, nodev, nosuid, mounted by you)")
    (Mount(point='/Volumes/ten', kind='smbfs'),)
    """
    found = []
    for row in listing.splitlines():
        start, bracket, options = row.rpartition(" (")
        _, on, point = start.partition(" on ")
        if bracket and on:
            found.append(Mount(point, options.rstrip(")").split(",")[0]))
    return tuple(found)


def _unescaped(text: str) -> str:
    for code, sign in (("\\040", " "), ("\\011", "\t"), ("\\012", "\n"), ("\\134", "\\")):
        text = text.replace(code, sign)
    return text


def _windows_share(real: Path) -> str:
    """Whether a Windows drive letter stands for a share."""
    if sys.platform == "win32":
        import ctypes

        if ctypes.windll.kernel32.GetDriveTypeW(f"{real.drive}\\") == DRIVE_REMOTE:
            return f"lies on another machine ({real.drive})"
    return ""
