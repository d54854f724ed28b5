"""The command that asks the bench: one question, one slip."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from witnessmark.bench.drawer import EMPTY, INPUTS, Drawer
from witnessmark.bench.kinds import FILE_MARK
from witnessmark.bench.questions import ask, every_question, find_question, questions_about
from witnessmark.bench.slip import to_plain
from witnessmark.bench.slip_text import as_text
from witnessmark.cli.common import speaks_plainly
from witnessmark.ground.errors import BadInput, WitnessMarkError

NOTHING_FOUND = 3


@click.command("bench", context_settings={"ignore_unknown_options": True})
@click.argument("words", nargs=-1, metavar="[SUBJECT QUESTION name=value ...]")
@click.option("--json", "as_json", is_flag=True, help="Answer as JSON for a script.")
@click.option("--picture", type=click.Path(path_type=Path), metavar="FILE.svg", help="Draw it, to scale.")
@click.pass_context
@speaks_plainly
def bench_command(ctx: click.Context, words: tuple[str, ...], as_json: bool, picture: Path | None) -> None:
    """Answer one question with a number, its working, its source and its doubt.

    Alone, it lists the questions by the moment you are in. Values carry their unit: torque="13 lbf ft".
    In a vehicle's folder, the drivers, rings and shims its record says you own are searched first.
    Exit 0 answered, 2 bad input, 3 no answer exists.

    \b
    Example:  witnessmark bench seals driver bore=36.2mm shaft=31.8mm have="32x36 mm"
    """
    sys.exit(_answered(words, ctx.find_root().obj, as_json=as_json, picture=picture))


def _answered(words: tuple[str, ...], folder: Path | None, *, as_json: bool, picture: Path | None) -> int:
    if len(words) < 2:
        click.echo(listing(words[0] if words else ""))
        return 0
    typed = _pairs(words[2:])
    slip = ask(words[0], words[1], typed, _files(typed), _drawer(words[0], words[1], folder))
    if picture is not None:
        _draw(picture, slip.picture)
    click.echo(json.dumps(to_plain(slip), ensure_ascii=False, indent=1) if as_json else as_text(slip))
    return 0 if slip.found else NOTHING_FOUND


def _drawer(subject: str, question: str, folder: Path | None) -> Drawer:
    """The own kit in the vehicle's folder, for a question that searches one.

    A number is wanted at once: a record that cannot be read is told beside the answer, not instead of it.
    """
    if (subject, question) not in INPUTS or folder is None:
        return EMPTY
    from witnessmark.restoration.drawer import drawer_in

    try:
        return drawer_in(folder)
    except WitnessMarkError as trouble:
        click.echo(f"Own kit not searched: {trouble}", err=True)
        return EMPTY


def listing(subject: str = "") -> str:
    """Every question by the moment a person is in; of one subject, with what each is given."""
    if subject:
        return "\n".join(_told(q.subject, q.question) for q in questions_about(subject))
    known = every_question()
    wide = max((len(q.moment) for q in known), default=0)
    lines = [f"  {q.moment:<{wide}}  bench {q.subject} {q.question}" for q in known]
    return "\n".join(
        ["What is in front of you:", *lines, "", "witnessmark bench SUBJECT tells what each is given."]
    )


def _told(subject: str, question: str) -> str:
    which = find_question(subject, question)
    lines = [f"{subject} {question}: {which.moment}"]
    for one in which.inputs:
        may = " (or in another way)" if one.either else " (may be left out)" if one.optional else ""
        lines.append(f"    {one.name}: {one.help}{may}, as {one.name}={one.example}")
    return "\n".join([*lines, f"    {which.call()}", ""])


def _pairs(words: tuple[str, ...]) -> dict[str, str]:
    """name=value words, each name once."""
    typed: dict[str, str] = {}
    for word in words:
        name, mark, value = word.partition("=")
        name = name.strip().lower().replace("-", "_")
        if not mark or not name:
            raise BadInput(
                given=f"{word!r} is not name=value",
                holds="a name, =, and its value, as bore=36.2mm",
                do="Put a value with blanks in quotes.",
            )
        if name in typed:
            raise BadInput(
                given=f"{name} is given twice, {typed[name]!r} and {value!r}",
                holds="each name once",
                do="Leave one out.",
            )
        typed[name] = value
    return typed


def _files(typed: dict[str, str]) -> dict[str, str]:
    """The text of each file named as @name."""
    return {value[1:]: _text(name, value[1:]) for name, value in typed.items() if value.startswith(FILE_MARK)}


def _text(name: str, file: str) -> str:
    try:
        return Path(file).read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError, ValueError) as trouble:
        raise BadInput(
            given=f"{name} is the file {file!r}, which cannot be read ({_why(trouble)})",
            holds="the name of a text file after @, as have=@drivers.csv",
            do="Look at its name and folder; save it as comma-separated text in UTF-8.",
        ) from None


def _why(trouble: Exception) -> str:
    return trouble.strerror or "no reason given" if isinstance(trouble, OSError) else "not UTF-8 text"


def _draw(file: Path, drawing: str | None) -> None:
    if drawing is None:
        raise BadInput(
            given=f"a picture was asked into {str(file)!r}",
            holds="a question that has a picture",
            do="Ask without --picture.",
        )
    beside = file.with_name(file.name + ".part")
    try:
        beside.write_text(drawing, encoding="utf-8")
        beside.replace(file)
    except OSError as trouble:
        raise BadInput(
            given=f"the picture cannot be written to {str(file)!r} ({_why(trouble)})",
            holds="a file in a folder that can be written to",
            do="Give another name.",
        ) from None
