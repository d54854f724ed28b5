"""The command that tells the week, on the screen or as files to publish."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from witnessmark.cli.common import DAY, folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.restoration.week import published, put_into, story_of
from witnessmark.sheets.week_told import as_markdown


@click.command("week")
@click.option("--ending", type=DAY, metavar="DATE", help="The last of the seven days; else the latest.")
@click.option(
    "--out", type=click.Path(path_type=Path), metavar="DIR", help="Write HTML, Markdown and photos."
)
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def week_command(ctx: click.Context, ending: date | None, out: Path | None, as_json: bool) -> None:
    """Tell the week: what was done, three photos, one number, what went wrong, what is next.

    No price, shop, name or place comes into it. Look at each photo yourself before you publish it: a
    number plate, a face, a street.

    \b
    Example:  witnessmark week --out to-publish
    """
    story = story_of(opened(ctx).flow(), ending)
    files = published(folder_of(ctx), story) if out else {}
    if out:
        put_into(out, files)
    if as_json:
        say_json({"story": as_markdown(story), "files": sorted(files)})
    elif out:
        click.echo(f"Written into {out}: {', '.join(files)}. Look at each photo before you publish it.")
    else:
        click.echo(as_markdown(story))
