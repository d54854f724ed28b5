"""Commands that make a second copy of everything, and take it back."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import click

from witnessmark.cli.common import say_json, speaks_plainly
from witnessmark.restoration.backup import back_up, restore


@click.command("backup")
@click.argument("folder", type=click.Path(path_type=Path), metavar="DIR")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@speaks_plainly
def backup_command(folder: Path, file: Path, as_json: bool) -> None:
    """Copy a vehicle, or every vehicle of a folder, into one file: lines and photos, read back whole.

    Others may go on writing meanwhile. People and their pass phrases are not in it. Keep it on another disk,
    in another house.

    \b
    Example:  witnessmark backup pickup /media/stick/2026-03-14.zip
    """
    say = (lambda _: None) if as_json else click.echo
    made = back_up(folder, file, now=datetime.now().replace(microsecond=0), say=say)
    if as_json:
        rows = [{"folder": one.folder, "lines": one.lines} for one in made.vehicles]
        say_json({"file": str(file), "vehicles": rows})
        return
    for one in made.vehicles:
        click.echo(f"{one.folder}: {one.lines} lines")
    click.echo(f"Written and read back: {file}.")


@click.command("restore")
@click.argument("file", type=click.Path(path_type=Path))
@click.argument("folder", type=click.Path(path_type=Path), metavar="DIR")
@click.option("--kept-at", default="", metavar="ADDRESS", help="Keep it on a database server, as with begin.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@speaks_plainly
def restore_command(file: Path, folder: Path, kept_at: str, as_json: bool) -> None:
    """Take a backup back into an empty folder. Nothing is ever taken over a record that is there.

    \b
    Example:  witnessmark restore /media/stick/2026-03-14.zip pickup
    """
    targets = restore(file, folder, kept_at=kept_at)
    if as_json:
        say_json({"folders": [str(target) for target in targets]})
        return
    for target in targets:
        click.echo(f"Restored: {target}")
    click.echo("Who may log in has to be said anew: witnessmark people.")
