"""Which file systems this machine has mounted, and of what kind."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from msgspec import Struct


class Mount(Struct, frozen=True):
    """One mounted file system: where, and of what kind."""

    point: str
    kind: str


def mounted() -> tuple[Mount, ...]:
    """The file systems mounted on this machine; none where it does not tell."""
    if sys.platform == "darwin":
        told = subprocess.run(["/sbin/mount"], capture_output=True, check=False).stdout
        return mounts_listed(told.decode("utf-8", "replace"))
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
