"""Trouble with the words of a command itself, told in the same three parts."""

from __future__ import annotations

import sys

import click

from witnessmark.cli.common import BAD, tell
from witnessmark.ground.errors import BadInput, WitnessMarkError


def guarded(group: click.Group) -> None:
    """Run the group; a wrong word, a missing word or a broken record ends in three parts and exit code 2."""
    as_json = "--json" in sys.argv
    try:
        code = group.main(prog_name="witnessmark", standalone_mode=False)
    except click.exceptions.Abort:
        click.echo("Nothing was written.", err=True)
        sys.exit(BAD)
    except click.ClickException as trouble:
        tell(_three_parts(trouble), as_json=as_json)
    except WitnessMarkError as trouble:
        tell(trouble, as_json=as_json)
    sys.exit(code if isinstance(code, int) else 0)


def _three_parts(trouble: click.ClickException) -> BadInput:
    ctx = getattr(trouble, "ctx", None)
    usage = ctx.get_usage().removeprefix("Usage: ") if ctx else "witnessmark COMMAND"
    path = ctx.command_path if ctx else "witnessmark"
    return BadInput(
        given=trouble.format_message().rstrip("."), holds=usage, do=f"See an example with: {path} --help"
    )
