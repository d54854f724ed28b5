"""Commands that write the record, and the one that shows its lines."""

from __future__ import annotations

import sys
from datetime import datetime
from pathlib import Path

import click

from witnessmark.cli.common import BAD, answer_options, folder_of, say_json, speaks_plainly
from witnessmark.cli.opening import opened
from witnessmark.ground.errors import BadInput
from witnessmark.restoration.begin import begin
from witnessmark.restoration.heard import Heard, heard_plain
from witnessmark.restoration.many import Written, write_many
from witnessmark.restoration.plain import journal_rows
from witnessmark.restoration.restoration import Restoration
from witnessmark.words.striking import Strike


@click.command("begin")
@click.argument("name")
@click.option(
    "--body", default="", help="car, pickup, van, trailer, motorcycle ...: what it is asked at a gate."
)
@click.option("--country", default="", help="Two letters, GB: settles nearside and offside.")
@click.option(
    "--kept-at",
    default="",
    metavar="ADDRESS",
    help="Keep it on a database server: postgresql://bench@shed/workshop#pickup",
)
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def begin_command(
    ctx: click.Context, name: str, body: str, country: str, kept_at: str, as_json: bool
) -> None:
    """Begin a vehicle's record in the folder.

    \b
    Example:  witnessmark --in trailer begin "the orchard trailer" --body trailer
    """
    restoration = begin(folder_of(ctx), name, now=_now(), body=body, country=country, kept_at=kept_at)
    if as_json:
        say_json({"name": name, "folder": str(folder_of(ctx)), "line": restoration.last_line})
        return
    click.echo(f"Begun: {name}, in {folder_of(ctx)}.")
    click.echo('Next: witnessmark write "took off wheel nuts left"')


@click.command("write")
@click.argument("text", nargs=-1)
@click.option(
    "--file", "file", type=click.Path(path_type=Path), metavar="LINES.txt", help="Many lines, one a line."
)
@click.option("--yes", is_flag=True, help="Write a sure reading without asking.")
@click.option(
    "--kind", default="", metavar="KIND", help="Answers the one question: what kind of joint, or `part`."
)
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def write_command(
    ctx: click.Context, text: tuple[str, ...], file: Path | None, yes: bool, kind: str, as_json: bool
) -> None:
    """Write what was done, in trade words. It is read back as one sentence before it is written.

    \b
    Example:  witnessmark write "took off hub nut left rear"
              witnessmark write --file saturday.txt --yes
    """
    restoration = opened(ctx)
    if file is not None:
        _write_file(restoration, file, text, yes=yes, as_json=as_json)
        return
    words = " ".join(text).strip()
    if not words:
        raise BadInput(
            given="no words", holds="a line, as: took off hub nut left rear", do="Say what was done."
        )
    heard = restoration.hear(words, kind=kind)
    if as_json:
        _write_for_script(restoration, heard, yes=yes)
    elif yes or not sys.stdin.isatty():
        _write_sure(restoration, heard, yes=yes)
    else:
        _write_asking(restoration, heard, kind)


def _write_for_script(restoration: Restoration, heard: Heard, *, yes: bool) -> None:
    line = restoration.write(heard)[-1].line if yes and heard.sure else None
    say_json(heard_plain(heard, line))
    if line is None:
        sys.exit(BAD)


def _write_sure(restoration: Restoration, heard: Heard, *, yes: bool) -> None:
    click.echo(heard.sentence())
    if not heard.sure or not yes:
        raise heard.unsure()
    click.echo(f"Written as line {restoration.write(heard)[-1].line}.")


def _write_asking(restoration: Restoration, heard: Heard, kind: str) -> None:
    heard = _settled(restoration, heard, kind)
    click.echo(heard.sentence())
    if click.confirm("Write it?", default=True):
        click.echo(f"Written as line {restoration.write(heard)[-1].line}.")
    else:
        click.echo("Nothing was written.")


def _settled(restoration: Restoration, heard: Heard, kind: str) -> Heard:
    """Ask the one question, or which of the nearest readings is meant."""
    question = heard.understood.ask
    if question is not None:
        click.echo(f"{question.thing} is new here. What kind is it?")
        for place, (key, name) in enumerate(question.choices, 1):
            click.echo(f"  {place}  {name} ({key})")
        answer = click.prompt("Number, or the name of a kind", default="1")
        picked = (
            question.choices[int(answer) - 1][0]
            if answer in map(str, range(1, 1 + len(question.choices)))
            else answer
        )
        return restoration.hear(heard.words, kind=picked)
    if heard.sure or not heard.understood.others:
        return heard
    readings = (heard.understood.best, *heard.understood.others)
    click.echo("Not sure. Which is meant?")
    for place, reading in enumerate(readings, 1):
        click.echo(f"  {place}  {reading.sentence}")
    number = click.prompt("Number", type=click.IntRange(1, len(readings)), default=1)
    return restoration.hear(heard.words, kind=kind, reading=number - 1)


def _write_file(
    restoration: Restoration, file: Path, text: tuple[str, ...], *, yes: bool, as_json: bool
) -> None:
    if text:
        raise BadInput(given="both words and --file", holds="one of the two", do="Leave one out.")
    written = write_many(restoration, read_text(file), write=yes)
    if as_json:
        say_json({"lines": [heard_plain_many(w) for w in written.lines], "written": written.stored})
    else:
        for one in written.lines:
            mark = " " if one.sure else "?"
            click.echo(f"{one.number:4d} {mark} {one.sentence}")
        click.echo(f"{written.stored} lines written." if written.stored else "Nothing was written.")
    if not written.stored:
        raise written.unsure()


def heard_plain_many(one: Written) -> dict[str, object]:
    """One line of a file, as it was read."""
    return {"number": one.number, "words": one.words, "reading": one.sentence, "sure": one.sure}


def read_text(file: Path) -> str:
    """A text file's words; a file that cannot be read is bad input."""
    try:
        return file.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as trouble:
        raise BadInput(
            given=f"{file} cannot be read ({trouble.__class__.__name__})",
            holds="a text file in UTF-8, one line a fact",
            do="Look at the name and at how it was saved.",
        ) from None


@click.command("strike")
@click.argument("line", type=int)
@click.option("--why", default="", help="The reason, kept with the strike.")
@click.option(
    "--instead", default="", metavar="WORDS", help="The line as it should have been; it takes its place."
)
@click.option("--yes", is_flag=True, help="Do not ask, even when later lines speak of what it described.")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.pass_context
@speaks_plainly
def strike_command(ctx: click.Context, line: int, why: str, instead: str, yes: bool, as_json: bool) -> None:
    """Strike a line that was wrong. The line stays readable; it counts no more.

    \b
    Example:  witnessmark strike 12 --why "that was the other side" --instead "took off hub nut right rear"
    """
    restoration = opened(ctx)
    heard = restoration.hear_strike(Strike(line, why.strip(), instead.strip()))
    orphans = restoration.orphaned_by(line)
    if orphans and not yes:
        raise BadInput(
            given=f"line {line} describes what {len(orphans)} later lines speak of: "
            + ", ".join(f"{e.line} {e.words!r}" for e in orphans[:5]),
            holds="a line nothing later hangs on, or --yes",
            do="Strike it with --yes; the later lines then show as faults in the record.",
        )
    stored = restoration.write(heard)
    if as_json:
        say_json({"line": stored[-1].line, "struck": line, "follows": heard.follows.sentence()})
        return
    click.echo(f"Struck line {line}: {why}. {heard.follows.sentence()}".rstrip())
    click.echo(f"Written as line {stored[-1].line}.")


@click.command("journal")
@click.option("--of", "name", default="", metavar="NAME", help="Only lines that name this part or joint.")
@click.option("--last", type=click.IntRange(1), metavar="N", help="Only the last N lines.")
@answer_options
@click.pass_context
@speaks_plainly
def journal_command(
    ctx: click.Context, name: str, last: int | None, as_json: bool, on: object, by: object
) -> None:
    """Show the lines of the record, in the order they were done; struck ones stay, marked.

    \b
    Example:  witnessmark journal --last 10
    """
    restoration = opened(ctx)
    flow = restoration.flow(on, by)  # type: ignore[arg-type]
    rows = [r for r in journal_rows(flow.entries) if name.lower() in f"{r['words']} {r['fact']}".lower()]
    rows.sort(key=lambda r: (r["day"], r["time"], r["line"]))
    rows = rows[-last:] if last else rows
    if as_json:
        say_json(rows)
        return
    for row in rows:
        struck = f"  [struck by line {row['struck_by']}]" if row["struck_by"] else ""
        hour = "     " if row["time"] == "24:00" else row["time"]
        click.echo(f"{row['line']:5d}  {row['day']} {hour}  {row['words']}{struck}")
    if not rows:
        click.echo("No lines.")


def _now() -> datetime:
    return datetime.now().replace(microsecond=0)
