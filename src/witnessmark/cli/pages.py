"""The command that serves the pages."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import click

from witnessmark.cli.common import folder_of, speaks_plainly
from witnessmark.web.serving import serve

PORT = 8617


@click.command("pages")
@click.argument("folder", required=False, type=click.Path(path_type=Path), metavar="[DIR]")
@click.option(
    "--port", type=click.IntRange(0, 65535), default=PORT, show_default=True, help="0 takes any free one."
)
@click.option("--house", is_flag=True, help="Serve to the house network; everybody logs in.")
@click.option("--address", default="", help="Of this machine. [127.0.0.1; with --house, found]")
@click.option("--no-browser", is_flag=True, help="Do not open a browser.")
@click.pass_context
@speaks_plainly
def pages_command(
    ctx: click.Context, folder: Path | None, port: int, house: bool, address: str, no_browser: bool
) -> None:
    """Serve a vehicle's pages on this machine, and open them in the browser. Stop with Ctrl-C.

    A folder with several vehicles below it is served as a list of them, each on a port of its own.

    On this machine alone nobody logs in. With --house phones and tablets on the house network reach them
    too, and everybody logs in; `witnessmark people` says who may.

    \b
    Example:  witnessmark pages pickup
              witnessmark pages pickup --house
    """
    serve(
        folder or folder_of(ctx),
        clock=lambda: datetime.now().replace(microsecond=0),
        address=address,
        port=port,
        browse=not no_browser,
        say=click.echo,
        to_house=house,
    )
