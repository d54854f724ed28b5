"""The command that says who may read and write on the house network."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from witnessmark.cli.common import folder_of, say_json, speaks_plainly
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.people import HELPER, OWNER, ROLES, People


@click.command("people")
@click.argument("folder", required=False, type=click.Path(path_type=Path), metavar="[DIR]")
@click.option("--add", metavar="NAME", help="Add somebody; the pass phrase is asked for.")
@click.option(
    "--as", "role", type=click.Choice(ROLES), help="owner; helper, who may write; onlooker.  [helper]"
)
@click.option("--phrase", metavar="NAME", help="Give somebody another pass phrase; their log-ins end.")
@click.option("--remove", metavar="NAME", help="Take somebody out; their log-ins end.")
@click.option("--log-out", metavar="NAME", help="End somebody's log-ins.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def people_command(
    ctx: click.Context,
    folder: Path | None,
    add: str | None,
    role: str | None,
    phrase: str | None,
    remove: str | None,
    log_out: str | None,
    as_json: bool,
) -> None:
    """List the people who may log in on the house network, or change who they are.

    A pass phrase is typed twice and not shown; from a script it is one line on standard input. It is kept
    as a hash in doors.db, beside the record and never in it.

    \b
    Example:  witnessmark people pickup --add Ada --as owner
              witnessmark people pickup --remove Ada
    """
    people = People(_there(folder or folder_of(ctx)))
    if sum(one is not None for one in (add, phrase, remove, log_out)) > 1:
        raise BadInput(
            given="more than one thing to do",
            holds="one of --add, --phrase, --remove, --log-out",
            do="Leave the others out.",
        )
    if add is not None:
        said = f"{people.add(add, role or HELPER, _asked_for()).name} may log in, as {role or HELPER}."
    elif phrase is not None:
        said = f"{people.change_phrase(phrase, _asked_for()).name} has another pass phrase."
    elif remove is not None:
        said = f"{people.remove(remove).name} is taken out."
    elif log_out is not None:
        said = f"{people.end_log_ins(log_out).name} is logged out everywhere."
    else:
        said = ""
    _tell(people, said, as_json=as_json)


def _tell(people: People, said: str, *, as_json: bool) -> None:
    everybody = people.everybody()
    if as_json:
        say_json([{"name": one.name, "role": one.role} for one in everybody])
        return
    if said:
        click.echo(said)
        return
    for one in everybody:
        click.echo(f"{one.name}, {one.role}")
    if not any(one.role == OWNER for one in everybody):
        click.echo("No owner yet: the pages are not served on the house network until there is one.")


def _asked_for() -> str:
    """The pass phrase, typed unseen and twice; one line of standard input where nobody sits there."""
    if sys.stdin.isatty():
        typed: str = click.prompt("Pass phrase", hide_input=True, confirmation_prompt="Once more")
        return typed
    return sys.stdin.readline().rstrip("\r\n")


def _there(folder: Path) -> Path:
    if folder.is_dir():
        return folder
    raise BadInput(
        given=f"there is no folder {folder}",
        holds="a vehicle's folder, or one with several vehicles in it",
        do="Name it, as: witnessmark people pickup",
    )
