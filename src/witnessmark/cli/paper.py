"""The command that makes sheets: on the screen, as JSON, as PDF."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from witnessmark.cli.common import answer_options, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.sheet import KINDS, Asked, keep_printed, make_sheet
from witnessmark.sheets.plain import as_plain
from witnessmark.sheets.text import as_text


@click.command("sheet")
@click.argument("kind", metavar="KIND")
@click.option("--pdf", type=click.Path(path_type=Path), metavar="FILE", help="Print it to this PDF.")
@click.option("--gate", "gate", default="road", show_default=True, help="For the gate sheet: which.")
@click.option(
    "--of", "assembly", default="", metavar="NAME", help="For the closing sheet: which assembly or joint."
)
@click.option("--hours", type=float, default=3.0, show_default=True, help="For the session sheet.")
@click.option("--helper", is_flag=True, help="For the session sheet: a second pair of hands is there.")
@click.option("--single", is_flag=True, help="For labels: one label a page.")
@click.option("--letter", is_flag=True, help="Letter paper instead of A4.")
@answer_options
@click.pass_context
@speaks_plainly
def sheet_command(
    ctx: click.Context,
    kind: str,
    pdf: Path | None,
    gate: str,
    assembly: str,
    hours: float,
    helper: bool,
    single: bool,
    letter: bool,
    as_json: bool,
    on: date | None,
    by: date | None,
) -> None:
    """Make a sheet: session, gate, wall, closing, labels, order, helper.

    \b
    Example:  witnessmark sheet wall --pdf wall.pdf
              witnessmark sheet closing --of "drive axle" --pdf closing.pdf
    """
    if kind not in KINDS:
        raise BadInput(
            given=f"there is no {kind!r} sheet",
            holds=f"one of {', '.join(KINDS)}",
            do="Ask for one of these.",
            near=KINDS,
        )
    restoration = opened(ctx)
    asked = Asked(kind=kind, gate=gate, assembly=assembly, hours=hours, helper=helper)
    sheet = make_sheet(restoration.flow(on, by), asked)
    if pdf is not None:
        from witnessmark.press.printing import print_to

        print_to(sheet, pdf, single=single, paper="us-letter" if letter else "a4")
        keep_printed(restoration, sheet)
    if as_json:
        say_json(as_plain(sheet))
    elif pdf is None:
        click.echo(as_text(sheet))
    else:
        click.echo(f"Written: {pdf} (code {sheet.code}).")
