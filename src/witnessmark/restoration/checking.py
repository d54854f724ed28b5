"""The record read back from the disk, and the faults found on the way."""

from __future__ import annotations

from pathlib import Path

from witnessmark.ground.fault import Fault
from witnessmark.store.checking import read_back


def faults_in(folder: Path) -> tuple[Fault, ...]:
    """Every fault of the record in a folder, by line."""
    return read_back(folder)
