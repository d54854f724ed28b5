"""Commands that ask: what is owed, what holds a gate, how things stand, what fits, what to order."""

from __future__ import annotations

import sys
from datetime import date

import click

from witnessmark.cli.common import BAD, HELD, answer_options, folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.checking import faults_in
from witnessmark.restoration.countdown import countdown
from witnessmark.restoration.naming import some_target, targets_named, wanted_targets
from witnessmark.restoration.plain import (
    gate_plain,
    needs_rows,
    owed_rows,
    reach_plain,
    session_plain,
    state_rows,
)
from witnessmark.restoration.sheet import (
    gate_screen,
    needs_screen,
    owed_screen,
    reach_screen,
    session_screen,
    state_screen,
)
from witnessmark.sheets.gate import BRIEF, FULL
from witnessmark.sheets.text import as_text

REACH_SECONDS = 5.0


@click.command("owed")
@click.option("--all", "every", is_flag=True, help="Also what is not due yet.")
@click.option("--full", is_flag=True, help="Every debt by itself, with its code and reason.")
@answer_options
@click.pass_context
@speaks_plainly
def owed_command(
    ctx: click.Context, every: bool, full: bool, as_json: bool, on: date | None, by: date | None
) -> None:
    """Show everything owed, heaviest first, each with the line behind it. Exit 1 while anything is owed.

    \b
    Example:  witnessmark owed
    """
    flow = opened(ctx).flow(on, by)
    if as_json:
        say_json(owed_rows(flow.owed))
    else:
        click.echo(as_text(owed_screen(flow, every=every, full=full)))
    if any(debt.overdue for debt in flow.owed):
        sys.exit(HELD)


@click.command("gate")
@click.argument("name")
@click.option("--full", is_flag=True, help="Every hold and every ask by itself, with limits and codes.")
@answer_options
@click.pass_context
@speaks_plainly
def gate_command(
    ctx: click.Context, name: str, full: bool, as_json: bool, on: date | None, by: date | None
) -> None:
    """Ask a gate what holds it: start, roll, test (on screens: inspection), road. Exit 1 while it is held.

    It reports what this record knows. It is not a release; defer to your authority.

    \b
    Example:  witnessmark gate road
    """
    flow = opened(ctx).flow(on, by)
    answer = flow.gate(name)
    if as_json:
        say_json(gate_plain(answer))
    else:
        click.echo(as_text(gate_screen(flow, name, FULL if full else BRIEF)))
    if not answer.empty:
        sys.exit(HELD)


@click.command("state")
@answer_options
@click.pass_context
@speaks_plainly
def state_command(ctx: click.Context, as_json: bool, on: date | None, by: date | None) -> None:
    """Show how every joint stands: apart, loose, tight, proven; or as found, never touched.

    \b
    Example:  witnessmark state --on 2026-03-14
    """
    flow = opened(ctx).flow(on, by)
    if as_json:
        say_json(state_rows(flow))
    else:
        click.echo(as_text(state_screen(flow)))


@click.command("reach")
@click.argument("target", nargs=-1)
@click.option("--wanted", is_flag=True, help="Everything that the jobs wanted must get at, in one opening.")
@answer_options
@click.pass_context
@speaks_plainly
def reach_command(
    ctx: click.Context,
    target: tuple[str, ...],
    wanted: bool,
    as_json: bool,
    on: date | None,
    by: date | None,
) -> None:
    """Show the cheapest way in to one or several things, and what is worth doing while it is open.

    \b
    Example:  witnessmark reach "pinion seal"
              witnessmark reach "brake shoes left rear" "wheel cylinder left rear"
              witnessmark reach --wanted
    """
    flow = opened(ctx).flow(on, by)
    targets = dict.fromkeys([*targets_named(target, flow.vehicle), *(wanted_targets(flow) if wanted else ())])
    way = flow.reach(some_target(tuple(targets)), left=countdown(REACH_SECONDS))
    if as_json:
        say_json(reach_plain(way, flow.while_open(way)))
    else:
        click.echo(as_text(reach_screen(flow, way)))


@click.command("session")
@click.option(
    "--hours", type=float, default=3.0, show_default=True, help="Length of the session, set-up included."
)
@click.option("--helper", is_flag=True, help="A second pair of hands is there.")
@click.option("--seed", type=int, default=1, show_default=True, help="Of the chances drawn.")
@answer_options
@click.pass_context
@speaks_plainly
def session_command(
    ctx: click.Context, hours: float, helper: bool, seed: int, as_json: bool, on: date | None, by: date | None
) -> None:
    """Show what fits the next session, the chance of closing up by packing-up time, where to stop safely.

    \b
    Example:  witnessmark session --hours 3 --helper
    """
    if not 0.25 <= hours <= 24:
        raise BadInput(
            given=f"a session of {hours:g} hours",
            holds="from a quarter of an hour to 24 hours",
            do="Give its length in hours, as --hours 3.",
        )
    flow = opened(ctx).flow(on, by, seed=seed)
    plan = flow.session(hours, helper=helper)
    if as_json:
        say_json(session_plain(plan))
    else:
        click.echo(as_text(session_screen(flow, plan)))


@click.command("needs")
@answer_options
@click.pass_context
@speaks_plainly
def needs_command(ctx: click.Context, as_json: bool, on: date | None, by: date | None) -> None:
    """Show what must be in hand: what is owed new, how many, by when, what is here or on its way.

    \b
    Example:  witnessmark needs
    """
    flow = opened(ctx).flow(on, by)
    if as_json:
        say_json(needs_rows(flow.needs_dated))
    else:
        click.echo(as_text(needs_screen(flow)))


@click.command("check")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def check_command(ctx: click.Context, as_json: bool) -> None:
    """Read the whole record back from the disk and report faults in it. Exit 1 where there are any.

    \b
    Example:  witnessmark check
    """
    faults = faults_in(folder_of(ctx))
    if as_json:
        say_json([{"line": f.line, "rule": f.rule, "what": f.what, "do": f.do} for f in faults])
    elif not faults:
        click.echo("The record reads back whole: no faults.")
    for fault in () if as_json else faults:
        where = f"line {fault.line}" if fault.line else "the record"
        click.echo(f"{where}: {fault.what}\n    {fault.do}")
    if faults:
        sys.exit(BAD if any(f.rule == "damaged" for f in faults) else HELD)
