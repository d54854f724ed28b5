"""The command `witnessmark`: which folder, which command; trouble told in three parts."""

from __future__ import annotations

import io
import sys
import warnings
from pathlib import Path

import click

from witnessmark.cli.lazy import LazyGroup
from witnessmark.ground.version import VERSION


@click.group(cls=LazyGroup, context_settings={"help_option_names": ["-h", "--help"]})
@click.option(
    "--in",
    "folder",
    envvar="WITNESSMARK_DIR",
    default=".",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="The vehicle's folder; else WITNESSMARK_DIR, else the folder you are in.",
)
@click.version_option(VERSION, prog_name="witnessmark")
@click.pass_context
def group(ctx: click.Context, folder: Path) -> None:
    """What was done to a vehicle, and what that still owes before it may roll.

    It reports what this record knows. It never says that a vehicle is safe: the vehicle's own manual,
    your authority and licensed practice stand above it.
    """
    ctx.obj = folder


def main() -> None:
    """Run the command line; every stream speaks UTF-8, whatever the console was set to."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="replace")
    if not sys.warnoptions:
        warnings.simplefilter("ignore")  # what a library remarks to programmers is no answer to a person
    from witnessmark.cli.trouble import guarded

    guarded(group, sys.argv[1:])
