"""Folders no record may live in: another machine's disk, or one a cloud service copies.

A record is one file with two helpers beside it, locked and flushed by the operating system. Over a
network the lock and the flush are promises nobody keeps; a cloud service copies the three files one
by one, at different moments. Either way a line can be lost that was said to be safe.
"""

from __future__ import annotations

import ctypes
import os
import re
import sys
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePath, PureWindowsPath

from witnessmark.ground.errors import BadInput
from witnessmark.store.mounts import Mount, mounted

# Kinds of file system that reach over a network or into another operating system.
# fmt: off
REMOTE = frozenset((
    "9p", "afpfs", "afs", "beegfs", "ceph", "cifs", "coda", "davfs", "fuse.ceph", "fuse.davfs",
    "fuse.glusterfs", "fuse.gvfsd-fuse", "fuse.rclone", "fuse.s3fs", "fuse.sshfs", "fuse.vmhgfs-fuse",
    "glusterfs", "lustre", "ncpfs", "nfs", "nfs4", "prl_fs", "smb", "smb2", "smb3", "smbfs", "vboxsf",
    "virtiofs", "webdav",
))
# fmt: on
# Pieces of a path a cloud service's folder is known by, in lower case; "name - something" counts as well.
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
_SHARE = re.compile(r"\\\\(?![?.]\\)|\\\\[?.]\\UNC\\", re.IGNORECASE)  # \\machine\share, not \\?\C:
DRIVE_REMOTE = 4  # what Windows answers for a drive letter that stands for a share


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
    >>> disks = [Mount("/", "ext4"), Mount("/mnt/shed", "nfs4")]
    >>> why_shared(P("/mnt/shed/ten"), mounts=disks, environment={})
    'lies on a network disk (nfs4)'
    >>> why_shared(P("/home/you/ten"), mounts=disks, environment={})
    ''
    """
    if isinstance(real, PureWindowsPath) and _SHARE.match(real.drive):
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
    """The mount a path lies on; None for the root: a machine that runs off it has no other disk."""
    holding = [m for m in mounts if m.point != real.anchor and real.is_relative_to(m.point)]
    return max(holding, key=lambda m: len(m.point), default=None)


def _windows_share(real: Path) -> str:
    """Whether a Windows drive letter stands for a share."""
    if sys.platform == "win32":
        if ctypes.windll.kernel32.GetDriveTypeW(f"{real.drive}\\") == DRIVE_REMOTE:
            return f"lies on another machine ({real.drive})"
    return ""
