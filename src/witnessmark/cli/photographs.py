"""The command that puts photos into the record."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.cli.common import folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.devices import new_id
from witnessmark.restoration.photos import Sent, add_of_thing, add_to_line, take_in


@click.command("photo")
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE...")
@click.option("--line", type=click.IntRange(min=1), metavar="N", help="The line they go with; else the last.")
@click.option("--of", "name", default="", metavar="NAME", help="A part or joint, by its whole name, instead.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def photo_command(
    ctx: click.Context, files: tuple[Path, ...], line: int | None, name: str, as_json: bool
) -> None:
    """Put photos (JPEG, PNG, WebP) with a line, or with a part or joint. All of them, or none.

    The place where it was taken, and all else that a camera writes beside the picture, is left out.

    \b
    Example:  witnessmark photo left.jpg right.jpg --line 41
    """
    restoration = opened(ctx)
    photos = take_in(folder_of(ctx), [_read(file) for file in files])
    if name and line is None:
        (written,) = add_of_thing(restoration, name, photos, new_id())
    else:
        (written,) = add_to_line(restoration, line or restoration.last_line, photos, new_id())
    if as_json:
        say_json({"line": written.line, "photos": list(photos)})
    else:
        click.echo(f"Written as line {written.line}: {written.words}.")


def _read(file: Path) -> Sent:
    try:
        return Sent(file.read_bytes(), file.name)
    except OSError as trouble:
        raise BadInput(
            given=f"{file} cannot be read: {trouble.strerror or trouble}",
            holds="a picture file",
            do="Look at its name and place.",
        ) from trouble
