"""The command `buy`: what to order tonight."""

from __future__ import annotations

from datetime import date

import click

from witnessmark.cli.common import answer_options, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.buying import buy_plain, buy_screen, worth_typed
from witnessmark.restoration.countdown import countdown
from witnessmark.sheets.text import as_text


@click.command("buy")
@click.option("--worth", default="", metavar="SUM", help="Of a lost session to you; else as it is written.")
@click.option("--seconds", type=float, default=10.0, show_default=True, help="How long to look at the most.")
@click.option("--seed", type=int, default=0, show_default=True, help="Of the solver's own choices.")
@answer_options
@click.pass_context
@speaks_plainly
def buy_command(
    ctx: click.Context, worth: str, seconds: float, seed: int, as_json: bool, on: date | None, by: date | None
) -> None:
    """Show what to order tonight, from whom, and what each session lost would save.

    Own stock, the post and the donor come first. Offers come in as lines or from a spreadsheet.

    \b
    Example:  witnessmark buy --worth 40
    """
    if not 0.05 <= seconds <= 3600:
        raise BadInput(
            given=f"{seconds:g} seconds", holds="from 0.05 to 3600 seconds", do="Give them as --seconds 10."
        )
    flow = opened(ctx).flow(on, by)
    told = worth_typed(worth, flow.currency)
    answer = flow.buy(worth=told, left=countdown(seconds), seed=seed)
    if as_json:
        say_json(buy_plain(answer))
    else:
        click.echo(as_text(buy_screen(flow, answer)))
