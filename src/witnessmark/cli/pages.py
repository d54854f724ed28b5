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
@click.option("--address", default="127.0.0.1", show_default=True, help="Of this machine; no other for now.")
@click.option("--no-browser", is_flag=True, help="Do not open a browser.")
@click.pass_context
@speaks_plainly
def pages_command(ctx: click.Context, folder: Path | None, port: int, address: str, no_browser: bool) -> None:
    """Serve a vehicle's pages on this machine, and open them in the browser. Stop with Ctrl-C.

    \b
    Example:  witnessmark pages pickup
    """
    serve(
        folder or folder_of(ctx),
        clock=lambda: datetime.now().replace(microsecond=0),
        address=address,
        port=port,
        browse=not no_browser,
        say=click.echo,
    )
