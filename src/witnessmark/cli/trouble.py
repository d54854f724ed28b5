"""Trouble with the words of a command itself, told in the same three parts."""

from __future__ import annotations

import sys
from collections.abc import Sequence

import click

from witnessmark.cli.common import BAD, tell
from witnessmark.ground.errors import BadInput, WitnessMarkError


def guarded(group: click.Group, words: Sequence[str]) -> None:
    """Run the group on these words; whatever is wrong with them ends in three parts and exit code 2."""
    as_json = "--json" in words
    try:
        code = group.main(list(words), prog_name="witnessmark", standalone_mode=False)
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
