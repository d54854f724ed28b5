"""What every command shares: the day asked about, the folder, the way trouble is told."""

from __future__ import annotations

import difflib
import json
import sys
from collections.abc import Callable
from datetime import date
from functools import wraps
from pathlib import Path
from typing import Any, NoReturn, ParamSpec

import click

from witnessmark.ground.errors import BadInput, LostRace, WitnessMarkError

OK, HELD, BAD = 0, 1, 2
P = ParamSpec("P")


class Day(click.ParamType[date]):
    """A day as YYYY-MM-DD."""

    name = "day"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> date:
        if isinstance(value, date):
            return value
        try:
            return date.fromisoformat(str(value))
        except ValueError:
            raise BadInput(
                given=f"{value!r} is not a day",
                holds="a day as year-month-day, 2026-03-14",
                do="Write the day that way.",
            ) from None


DAY = Day()


def answer_options(command: Callable[P, None]) -> Callable[P, None]:
    """--json, --on and --done-by, as every asking command has them."""
    for option in (
        click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script."),
        click.option("--on", type=DAY, metavar="DATE", help="As known on this day: lines written by then."),
        click.option(
            "--done-by", "by", type=DAY, metavar="DATE", help="As things stood: lines done by then."
        ),
    ):
        command = option(command)
    return command


def speaks_plainly(command: Callable[P, None]) -> Callable[P, None]:
    """Tell trouble in three parts and leave with exit code 2, never with a traceback."""

    @wraps(command)
    def wrapped(*args: P.args, **kwargs: P.kwargs) -> None:
        try:
            command(*args, **kwargs)
        except WitnessMarkError as trouble:
            tell(trouble, as_json=bool(kwargs.get("as_json")))

    return wrapped


def tell(trouble: WitnessMarkError, *, as_json: bool) -> NoReturn:
    """Print trouble on standard error and leave."""
    parts = _parts(trouble)
    if as_json:
        click.echo(json.dumps({"error": parts}, ensure_ascii=False), err=True)
    else:
        click.echo(f"Given:      {parts['given']}", err=True)
        click.echo(f"Would hold: {parts['holds']}", err=True)
        click.echo(f"Do:         {parts['do']}", err=True)
        if parts["near"]:
            click.echo(f"Near:       {' · '.join(parts['near'])}", err=True)
    sys.exit(BAD)


def _parts(trouble: WitnessMarkError) -> dict[str, Any]:
    if isinstance(trouble, BadInput):
        return trouble.parts()
    if isinstance(trouble, LostRace):
        do = "Nothing is lost: give the same command again."
        return {"given": str(trouble), "holds": "the record as it was when it was read", "do": do, "near": []}
    do = "Change nothing. Run: witnessmark check. Then take the last archive."
    return {"given": str(trouble), "holds": "a record that reads back whole", "do": do, "near": []}


def unknown_command(name: str, known: tuple[str, ...]) -> BadInput:
    """The trouble of a command that does not exist."""
    return BadInput(
        given=f"there is no command {name!r}",
        holds=f"one of {', '.join(known)}",
        do="Give one of these; `witnessmark COMMAND --help` shows an example of each.",
        near=tuple(difflib.get_close_matches(name, known, n=2)),
    )


def folder_of(ctx: click.Context) -> Path:
    """The vehicle's folder, as the group was told."""
    folder = ctx.find_root().obj
    assert isinstance(folder, Path)
    return folder


def say_json(plain: object) -> None:
    """Print plain values as JSON."""
    click.echo(json.dumps(plain, ensure_ascii=False, indent=1))
