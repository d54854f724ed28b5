"""Commands that carry a record in and out."""

from __future__ import annotations

import sys
from datetime import datetime
from pathlib import Path

import click

from witnessmark.cli.common import BAD, folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.restoration.carrying import export_file, import_file


@click.command("import")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--take-good", is_flag=True, help="Take the good rows without the bad ones.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def import_command(ctx: click.Context, file: Path, take_good: bool, as_json: bool) -> None:
    """Take in a spreadsheet (XLSX, CSV) of parts, joints, jobs or stock; or a whole archive.

    A bad row is named; the good ones wait until you say --take-good. Columns: docs/spreadsheet.md.

    \b
    Example:  witnessmark import parts.xlsx --take-good
    """
    taken = import_file(folder_of(ctx), file, take_good=take_good, now=datetime.now().replace(microsecond=0))
    if as_json:
        rows = [
            {
                "sheet": t.sheet,
                "row": t.row,
                "column": t.column,
                "given": t.given,
                "holds": t.holds,
                "do": t.do,
            }
            for t in taken.troubles
        ]
        say_json({"written": taken.written, "good": taken.good, "troubles": rows})
    else:
        for trouble in taken.troubles:
            click.echo(f"{trouble.sheet}, row {trouble.row}, {trouble.column}", err=True)
            click.echo(f"  Given:      {trouble.given}", err=True)
            click.echo(f"  Would hold: {trouble.holds}", err=True)
            click.echo(f"  Do:         {trouble.do}", err=True)
        if taken.written:
            click.echo(f"{taken.written} lines written from {file.name}.")
        else:
            click.echo(f"Nothing was written; {taken.good} good rows wait: give --take-good to take them.")
    if taken.troubles and not taken.written:
        sys.exit(BAD)


@click.command("export")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def export_command(ctx: click.Context, file: Path, as_json: bool) -> None:
    """Write the whole record as one open archive (ZIP), or parts and joints as a spreadsheet (XLSX).

    \b
    Example:  witnessmark export 2026-03-14.zip
    """
    lines = export_file(opened(ctx), folder_of(ctx), file)
    if as_json:
        say_json({"file": str(file), "lines": lines})
    else:
        click.echo(f"Written: {file}, {lines} lines.")
