"""Writing a file beside its place and moving it there whole, so that no half of one is ever seen."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from witnessmark.ground.errors import BadInput


@contextmanager
def written_beside(path: Path) -> Iterator[Path]:
    """Hand out a path to write to; on leaving, what was written takes the place of `path`.

    When anything goes wrong the old file stays as it was and nothing is left beside it.
    Raises BadInput for trouble with the disk or the folder.
    """
    beside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        yield beside
        with beside.open("r+b") as written:
            os.fsync(written.fileno())
        beside.replace(path)
    except OSError as trouble:
        raise BadInput(
            given=f"{path} cannot be written: {trouble.strerror or trouble}",
            holds="a folder this user may write, with room in it",
            do="Name another place, or make room there.",
        ) from trouble
    finally:
        beside.unlink(missing_ok=True)
