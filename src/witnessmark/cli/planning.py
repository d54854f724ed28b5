"""The command `plan`: everything that is to be done, in the sessions that come."""

from __future__ import annotations

from datetime import date

import click

from witnessmark.cli.common import answer_options, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.countdown import countdown
from witnessmark.sheets.text import as_text


@click.command("plan")
@click.option("--seconds", type=float, default=2.0, show_default=True, help="How long to look at the most.")
@click.option("--seed", type=int, default=0, show_default=True, help="Of what is tried by lot.")
@answer_options
@click.pass_context
@speaks_plainly
def plan_command(
    ctx: click.Context, seconds: float, seed: int, as_json: bool, on: date | None, by: date | None
) -> None:
    """Show what is done in each session to come, when the plan comes to each gate, and what changed.

    It goes on from the plan of the day before: what nothing forces to move stays where it was.

    \b
    Example:  witnessmark plan --seconds 5
    """
    from witnessmark.restoration.timetable import plan_ahead, timetable_plain, timetable_screen

    if not 0.05 <= seconds <= 3600 or not 0 <= seed < 2**31:
        raise BadInput(
            given=f"{seconds:g} seconds and the seed {seed}",
            holds="from 0.05 to 3600 seconds, and a seed from 0",
            do="Give them as --seconds 5 --seed 0.",
        )
    flow = opened(ctx).flow(on, by)
    plan = plan_ahead(flow, left=countdown(seconds), seed=seed)
    if as_json:
        say_json(timetable_plain(plan))
    else:
        click.echo(as_text(timetable_screen(flow, plan)))
