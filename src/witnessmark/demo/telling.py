"""The demo vehicle, told line by line: a text file of lines as typed, read by the real line reader."""

from __future__ import annotations

from datetime import datetime
from importlib.resources import files
from pathlib import Path

from witnessmark.restoration.begin import begin
from witnessmark.restoration.many import write_many
from witnessmark.restoration.restoration import Restoration

NAME = "1957 Marrowby Ten pickup"
BEGUN = datetime(2024, 11, 2, 9, 0)
ASKED = datetime(2026, 11, 25, 20, 0)


def story() -> str:
    """Every line of the demo, as typed over two years."""
    folder = files("witnessmark.demo").joinpath("story")
    chapters = sorted((f for f in folder.iterdir() if f.name.endswith(".txt")), key=lambda f: f.name)
    return "\n".join(chapter.read_text("utf-8") for chapter in chapters)


def tell(folder: Path) -> Restoration:
    """Begin the demo vehicle in an empty folder and write its two years."""
    begun = begin(folder, NAME, now=BEGUN, body="pickup", country="GB")
    restoration = Restoration(begun.store, now=ASKED)
    many = write_many(restoration, story(), write=True)
    if not many.stored:
        raise many.unsure()
    return restoration
