"""The only place of the core that opens a file: the data that ships inside the package."""

from __future__ import annotations

import csv
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def read_table(name: str) -> dict[str, Any]:
    """One data file by its name without ending, as "closeout/brakes".

    The answer is shared: read it, never change it.
    """
    return tomllib.loads(files("witnessmark.tables").joinpath(f"{name}.toml").read_text("utf-8"))


@cache
def names_in(folder: str) -> tuple[str, ...]:
    """The data files of a folder, sorted, as ("closeout/axles", "closeout/brakes", ...)."""
    found = files("witnessmark.tables").joinpath(folder).iterdir()
    return tuple(sorted(f"{folder}/{f.name[:-5]}" for f in found if f.name.endswith(".toml")))


@cache
def read_csv(name: str) -> tuple[dict[str, str], ...]:
    """The rows of a comma-separated data file by its name without ending; # begins a note."""
    lines = files("witnessmark.tables").joinpath(f"{name}.csv").read_text("utf-8").splitlines()
    return tuple(csv.DictReader(line for line in lines if line and not line.startswith("#")))
