"""Looking into a ZIP file that may be damaged, or made to do harm, without being taken in by it."""

from __future__ import annotations

import hashlib
import re
import zipfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO
from zlib import error as DeflateError

from witnessmark.ground.errors import BadInput

MOST_MEMBERS = 50_000
MOST_BYTES = 256 * 2**20  # of one member, unpacked
MOST_SWELL = 200  # times a member may grow beyond its first MiB when unpacked
_CHUNK = 2**20
_ENCRYPTED = 0x1
_PLAIN = re.compile(r"[A-Za-z0-9_][A-Za-z0-9._-]{0,199}")
_DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10)))
)


def is_plain_name(name: str) -> bool:
    """Whether a file name means one file in its folder on every system.

    >>> [is_plain_name(name) for name in ("3fa9.jpg", "../x", "a/b", "c:x", ".hid", "nul.jpg", "x.")]
    [True, False, False, False, False, False, False]
    """
    return (
        _PLAIN.fullmatch(name) is not None
        and not name.endswith(".")
        and name.split(".")[0].casefold() not in _DEVICES
    )


def refused(path: Path, what: str) -> BadInput:
    """The refusal of a file that holds no whole archive."""
    return BadInput(
        given=f"{path} {what}",
        holds="a whole file, as it was written",
        do="Fetch the file again from where it came; nothing was taken from this one.",
    )


@contextmanager
def opened(path: Path) -> Iterator[zipfile.ZipFile]:
    """Open a ZIP file; whatever proves wrong with it inside the `with` becomes a refusal."""
    try:
        with zipfile.ZipFile(path) as packed:
            yield packed
    except OSError as trouble:
        raise refused(path, f"cannot be read: {trouble.strerror or trouble}") from trouble
    except (
        zipfile.BadZipFile,
        DeflateError,
        EOFError,
        NotImplementedError,
        RuntimeError,
        ValueError,
    ) as trouble:
        raise refused(path, f"is not a whole ZIP file: {trouble}") from trouble


def members(packed: zipfile.ZipFile, path: Path, known: Callable[[str], bool]) -> dict[str, zipfile.ZipInfo]:
    """The files in a ZIP by name, once each is known to be harmless to unpack.

    known  whether a name belongs in such a file; any other is refused, never skipped

    Raises BadInput naming the first that is not.
    """
    found: dict[str, zipfile.ZipInfo] = {}
    folded: set[str] = set()
    listed = packed.infolist()
    if len(listed) > MOST_MEMBERS:
        raise refused(path, f"holds {len(listed)} files, more than {MOST_MEMBERS}")
    for info in listed:
        if why := _harm_in(info, known) or ("twice" if info.filename.casefold() in folded else ""):
            raise refused(path, f"holds {info.filename!r} {why}")
        folded.add(info.filename.casefold())
        found[info.filename] = info
    return found


def _harm_in(info: zipfile.ZipInfo, known: Callable[[str], bool]) -> str:
    if not known(info.filename):
        return "which has no place there"
    if info.flag_bits & _ENCRYPTED:
        return "under a pass phrase"
    if info.file_size > MOST_BYTES:
        return f"of {info.file_size} bytes, more than {MOST_BYTES}"
    if info.file_size > _CHUNK + MOST_SWELL * info.compress_size:
        return f"which would swell from {info.compress_size} to {info.file_size} bytes"
    return ""


def content(packed: zipfile.ZipFile, info: zipfile.ZipInfo) -> bytes:
    """One member's bytes, its check sum compared."""
    with packed.open(info) as member:
        return member.read()


def digest(stream: IO[bytes]) -> str:
    """SHA-256 of what is left of a stream, in hexadecimal."""
    running = hashlib.sha256()
    while chunk := stream.read(_CHUNK):
        running.update(chunk)
    return running.hexdigest()
