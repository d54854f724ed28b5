"""Commands that tell others: the week for those who follow it, the history for an inspector or a buyer."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from witnessmark.cli.common import DAY, folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.press.setting import Paper
from witnessmark.restoration.history import history_screen, printed_photos
from witnessmark.restoration.sheet import keep_printed
from witnessmark.restoration.week import published, put_into, story_of
from witnessmark.sheets.plain import as_plain
from witnessmark.sheets.text import as_text
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


@click.command("history")
@click.option("--pdf", type=click.Path(path_type=Path), metavar="FILE", help="Print it to this PDF.")
@click.option("--letter", is_flag=True, help="Letter paper instead of A4.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def history_command(ctx: click.Context, pdf: Path | None, letter: bool, as_json: bool) -> None:
    """Put the whole restoration into one file, for an inspector or a buyer.

    Structure with its photos before paint, what lets go, figures with their standing, parts with their
    sources, what was found, what stands open. It vouches for nothing.

    \b
    Example:  witnessmark history --pdf history.pdf
    """
    restoration = opened(ctx)
    sheet = history_screen(restoration.flow())
    if pdf is not None:
        from witnessmark.press.printing import print_to

        paper: Paper = "us-letter" if letter else "a4"
        print_to(sheet, pdf, paper=paper, photos=printed_photos(folder_of(ctx), sheet))
        keep_printed(restoration, sheet)
    if as_json:
        say_json(as_plain(sheet))
    elif pdf is None:
        click.echo(as_text(sheet))
    else:
        click.echo(f"Written: {pdf} (code {sheet.code}).")
