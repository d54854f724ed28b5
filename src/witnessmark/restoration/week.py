"""The week of a record, and the files that are published of it."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Collection
from datetime import date
from pathlib import Path

from msgspec.structs import replace

from witnessmark.exchange.beside import written_beside
from witnessmark.exchange.pictures import smaller
from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import Struck
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.photos import photo_content
from witnessmark.sheets.week import DAYS, Story, week_story
from witnessmark.sheets.week_told import as_html, as_markdown, photo_file_names

EDGE = 1600  # points of a published photo, at most
_DAY = (1980, 1, 1, 0, 0, 0)


def story_of(flow: Flow, last: date | None = None) -> Story:
    """The week that ends on a day; without one the latest in which work was done."""
    album = flow.album
    if last is None:
        worked = max((entry.day for entry in album.held), default=flow.today)
        last = flow.today if (flow.today - worked).days < DAYS else worked
    strikes = [e for e in flow.entries if isinstance(e.fact, Struck)]
    now = last >= flow.today
    return week_story(
        (*album.held, *strikes),
        flow.vehicle,
        album.photos,
        album.pairs,
        flow.session().operations if now else (),
        last=last,
    )


def with_photos(story: Story, names: Collection[str]) -> Story:
    """The story with only these of its photos."""
    return replace(story, photos=tuple(shot for shot in story.photos if shot.name in names))


def published(folder: Path, story: Story) -> dict[str, bytes]:
    """The files to publish: file name -> content."""
    files = {"week.html": as_html(story).encode(), "week.md": as_markdown(story).encode()}
    for name, file in photo_file_names(story).items():
        files[file] = smaller(photo_content(folder, name), EDGE)
    return files


def packed(files: dict[str, bytes]) -> bytes:
    """The files in one ZIP; the same files give the same bytes."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as together:
        for name, content in files.items():
            together.writestr(zipfile.ZipInfo(name, _DAY), content, zipfile.ZIP_DEFLATED)
    return made.getvalue()


def put_into(place: Path, files: dict[str, bytes]) -> None:
    """Write the files into a folder, each whole. Raises BadInput where that cannot be done."""
    try:
        place.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise BadInput(
            given=f"the folder {place} cannot be made: {trouble.strerror or trouble}",
            holds="a folder this user may write",
            do="Name another.",
        ) from trouble
    for name, content in files.items():
        with written_beside(place / name) as beside:
            beside.write_bytes(content)
