"""Several vehicles in one folder: each in a folder of its own below it."""

from __future__ import annotations

from pathlib import Path

from witnessmark.ground.errors import BadInput
from witnessmark.store.opening import holds_record


def is_shop(folder: Path) -> bool:
    """Whether a folder holds vehicles below it, and is none itself."""
    return not holds_record(folder) and bool(_below(folder))


def vehicles_in(folder: Path) -> tuple[Path, ...]:
    """The vehicle of a folder, or those below it, by name. Raises BadInput where there is none."""
    if holds_record(folder):
        return (folder,)
    found = _below(folder)
    if not found:
        raise BadInput(
            given=f"there is no record in {folder}, nor in a folder below it",
            holds="a vehicle's folder, or one with several of them in it",
            do="Name it; or begin a record: witnessmark --in DIR begin NAME",
        )
    return found


def _below(folder: Path) -> tuple[Path, ...]:
    try:
        below = sorted(folder.iterdir()) if folder.is_dir() else []
        return tuple(one for one in below if not one.name.startswith(".") and holds_record(one))
    except OSError as trouble:
        raise BadInput(
            given=f"{folder} cannot be read: {trouble.strerror}",
            holds="a folder this user may read",
            do="Look at the folder's rights.",
        ) from trouble
