"""The demo: the main job on the demo vehicle, from its two years of lines to its sheets."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import click

from witnessmark.cli.common import say_json, speaks_plainly
from witnessmark.demo.telling import ASKED, NAME, tell
from witnessmark.ground.errors import BadInput
from witnessmark.press.printing import print_to
from witnessmark.restoration.buying import buy_plain, buy_screen
from witnessmark.restoration.countdown import countdown
from witnessmark.restoration.flow import Flow
from witnessmark.restoration.plain import gate_plain, needs_rows, owed_rows, session_plain
from witnessmark.restoration.sheet import (
    Asked,
    gate_screen,
    make_sheet,
    needs_screen,
    owed_screen,
    session_screen,
)
from witnessmark.sheets.rows import Sheet
from witnessmark.sheets.text import as_text

PRINTED = ("session", "gate", "labels")
SHOWN_LINES = 44
BUY_SECONDS = 5.0
PLAN_SECONDS = 3.0
CHANCES = 2_000


@click.command("demo")
@click.option(
    "--dir",
    "folder",
    type=click.Path(path_type=Path),
    default=Path("demo-vehicle"),
    show_default=True,
    help="The folder to make it in; an earlier demo there is made anew.",
)
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@speaks_plainly
def demo_command(folder: Path, as_json: bool) -> None:
    """Run the main job on the demo vehicle: two years of lines in, debts and sheets out.

    \b
    Example:  witnessmark demo
    """
    from witnessmark.restoration.ahead import chance_screen, look_ahead

    _clear(folder)
    restoration = tell(folder)
    flow = restoration.flow()
    printed = [_print(flow, folder, kind) for kind in PRINTED]
    if as_json:
        say_json(_plain(flow, printed))
        return
    click.echo(f"{NAME}: {len(restoration.entries)} lines told, asked on {ASKED:%A %d %B %Y}.\n")
    _show(1, "What is loose, and what is owed", owed_screen(flow), "owed")
    _show(2, "What holds the road gate, and why", gate_screen(flow, "road"), "gate road")
    _show(3, "What fits the next session", session_screen(flow, flow.session()), "session")
    plan = _plan(flow)
    _show(4, "What the sessions to come hold", plan, "plan")
    seen = chance_screen(flow, look_ahead(flow, samples=CHANCES))
    _show(5, "When each gate may be reached", seen, "chance")
    order = flow.buy(left=countdown(BUY_SECONDS))
    _show(6, "What to order tonight", buy_screen(flow, order) if order.choices else needs_screen(flow), "buy")
    click.echo("7  Printed")
    for file in printed:
        click.echo(f"   {file}")
    command = _command()
    click.echo(f'\nAsk what a snag does:   {command} --in {folder} whatif "pinion seal will not come out"')
    click.echo(f"see it in pages:        {command} pages {folder}")
    click.echo(f'or write a line:        {command} --in {folder} write "proved flange nut seen"')
    click.echo(f'or begin your own:      {command} --in my-vehicle begin "what you call it"')


def _plan(flow: Flow) -> Sheet:
    from witnessmark.restoration.timetable import plan_ahead, timetable_screen

    return timetable_screen(flow, plan_ahead(flow, left=countdown(PLAN_SECONDS)))


def _command() -> str:
    """The command as it can be typed here: by its name where the shell finds it, else by its whole path."""
    return (
        "witnessmark" if shutil.which("witnessmark") else str(Path(sys.executable).with_name("witnessmark"))
    )


def _clear(folder: Path) -> None:
    """Make room for the demo, but only where nothing else than an earlier demo lies."""
    mark = folder / "this-is-a-demo.txt"
    if folder.exists() and any(folder.iterdir()) and not mark.is_file():
        raise BadInput(
            given=f"{folder} is not empty, and is no earlier demo",
            holds="a folder that does not exist yet, or an earlier demo",
            do="Name another: witnessmark demo --dir another-folder",
        )
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    mark.write_text("Made by the demo; made anew whenever the demo runs here.\n", encoding="utf-8")


def _print(flow: Flow, folder: Path, kind: str) -> Path:
    file = folder / f"{kind}.pdf"
    print_to(make_sheet(flow, Asked(kind=kind)), file)
    return file


def _show(number: int, heading: str, sheet: Sheet, command: str) -> None:
    lines = as_text(sheet).splitlines()
    click.echo(f"{number}  {heading}\n")
    click.echo("\n".join(lines[:SHOWN_LINES]))
    if len(lines) > SHOWN_LINES:
        click.echo(f"\n   ... and {len(lines) - SHOWN_LINES} lines more: witnessmark {command}")
    click.echo("")


def _plain(flow: Flow, printed: list[Path]) -> dict[str, object]:
    return {
        "owed": owed_rows(flow.owed),
        "gate": gate_plain(flow.gate("road")),
        "session": session_plain(flow.session()),
        "needs": needs_rows(flow.needs_dated),
        "buy": buy_plain(flow.buy(left=countdown(BUY_SECONDS))),
        "printed": [str(file) for file in printed],
    }
