"""Commands that look ahead: when there is time, and when each gate may be reached."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from datetime import date
from pathlib import Path

import click

from witnessmark.cli.common import answer_options, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.calendars import (
    give_calendar,
    next_sessions,
    rules_told,
    say_sessions,
    take_calendar,
)
from witnessmark.sheets.text import as_text

# So many futures a second are asked for; between the least and the most of them.
A_SECOND, LEAST, MOST = 5_000, 1_000, 100_000
SHOWN = 8


@click.command("chance")
@click.option(
    "--seconds", type=float, default=2.0, show_default=True, help="More seconds, more futures drawn."
)
@click.option("--seed", type=int, default=1, show_default=True, help="Of the chances drawn.")
@click.option("--weather", type=click.Path(path_type=Path), help="Air and humidity by hour or day (CSV).")
@answer_options
@click.pass_context
@speaks_plainly
def chance_command(
    ctx: click.Context,
    seconds: float,
    seed: int,
    weather: Path | None,
    as_json: bool,
    on: date | None,
    by: date | None,
) -> None:
    """Show when each gate may be reached, what drives it, and what more hands or hours would bring.

    It runs the session sheet's own rule through thousands of drawn futures. Bands of weeks, never a day.

    \b
    Example:  witnessmark chance
              witnessmark chance --weather week.csv
    """
    from witnessmark.restoration.ahead import chance_screen, look_ahead, outlook_plain
    from witnessmark.restoration.weather import wet_days

    if not 0 < seconds <= 600 or seed < 0:
        raise BadInput(
            given=f"{seconds:g} seconds and the seed {seed}",
            holds="more than 0 and at most 600 seconds; a seed from 0",
            do="Give it as --seconds 2 --seed 1.",
        )
    flow = opened(ctx).flow(on, by, seed=seed)
    wet = wet_days(weather) if weather else frozenset()
    with ThreadPoolExecutor(2) as pool:
        samples = max(LEAST, min(MOST, int(A_SECOND * seconds)))
        seen = look_ahead(flow, samples=samples, spread=pool.map, wet=wet)
    if as_json:
        say_json(outlook_plain(flow, seen))
    else:
        click.echo(as_text(chance_screen(flow, seen)))


@click.command("calendar")
@click.argument("words", required=False, default="")
@click.option(
    "--from", "taken", type=click.Path(path_type=Path), help="Bring sessions in from a file (.ics)."
)
@click.option("--to", "given", type=click.Path(path_type=Path), help="Write the calendar to a file (.ics).")
@answer_options
@click.pass_context
@speaks_plainly
def calendar_command(
    ctx: click.Context,
    words: str,
    taken: Path | None,
    given: Path | None,
    as_json: bool,
    on: date | None,
    by: date | None,
) -> None:
    """Say when there is time, or show the sessions that come; in and out as a calendar file.

    \b
    Example:  witnessmark calendar "sessions Saturdays 9-13, not in August"
              witnessmark calendar "no session 14 March"
              witnessmark calendar "free 20 and 21 June 9-17 with helper"
              witnessmark calendar --to garage.ics
    """
    restoration = opened(ctx)
    said: list[str] = []
    if words:
        said.append(say_sessions(restoration, words))
    if taken:
        brought = take_calendar(restoration, taken)
        said.append(f"{len(brought.facts)} lines written from {taken.name}.")
        said += [f"Left out: {what}." for what in brought.left_out]
    if given:
        give_calendar(restoration, given)
        said.append(f"Written: {given}.")
    flow = restoration.flow(on, by)
    sessions, known = next_sessions(flow, SHOWN)
    if as_json:
        rows = [
            {"day": s.day.isoformat(), "start": f"{s.moment:%H:%M}", "minutes": s.minutes, "helper": s.helper}
            for s in sessions
        ]
        say_json({"said": said, "rules": list(rules_told(flow)), "known": known, "sessions": rows})
        return
    for sentence in (*said, *(rules_told(flow) if not said else ())):
        click.echo(sentence)
    click.echo(f"The next sessions, {known}:" if sessions else "No session comes.")
    for s in sessions:
        hands = ", with helper" if s.helper else ""
        click.echo(f"  {s.moment:%a %d %b %Y %H:%M}, {s.minutes // 60} h {s.minutes % 60:02} min{hands}")


@click.command("whatif")
@click.argument("words", nargs=-1, required=True)
@click.option("--seed", type=int, default=1, show_default=True, help="Of the chances drawn.")
@answer_options
@click.pass_context
@speaks_plainly
def whatif_command(
    ctx: click.Context, words: tuple[str, ...], seed: int, as_json: bool, on: date | None, by: date | None
) -> None:
    """Answer a snag or a change in one line: what opens, goes in new, is ordered, swaps in, where to stop.

    Nothing is written.

    \b
    Example:  witnessmark whatif "pinion seal will not come out"
              witnessmark whatif u-bolt nuts three weeks late
              witnessmark whatif welder down
              witnessmark whatif two free days
              witnessmark whatif drop clutch plate
    """
    from witnessmark.restoration.whatif import what_if, whatif_plain, whatif_screen

    flow = opened(ctx).flow(on, by, seed=max(0, seed))
    answer = what_if(flow, " ".join(words))
    if as_json:
        say_json(whatif_plain(answer))
    else:
        click.echo(as_text(whatif_screen(flow, answer)))
