"""A group of commands whose files are read only when one of them is called: help must be quick."""

from __future__ import annotations

from importlib import import_module

import click

COMMANDS = {
    "begin": "writing",
    "write": "writing",
    "photo": "photographs",
    "strike": "writing",
    "journal": "writing",
    "owed": "asking",
    "gate": "asking",
    "state": "asking",
    "reach": "asking",
    "session": "asking",
    "needs": "asking",
    "buy": "buying",
    "plan": "planning",
    "chance": "ahead",
    "calendar": "ahead",
    "whatif": "ahead",
    "check": "asking",
    "sheet": "paper",
    "week": "telling",
    "history": "telling",
    "pages": "pages",
    "people": "people",
    "import": "carrying",
    "export": "carrying",
    "backup": "backing_up",
    "restore": "backing_up",
    "bench": "bench",
    "demo": "demonstration",
}

HELP = {
    "begin": "Begin a vehicle's record in the folder.",
    "write": "Write what was done, in trade words; it is read back first.",
    "photo": "Put photos with a line, or with a part or joint.",
    "strike": "Strike a line that was wrong, saying why.",
    "journal": "Show the lines of the record.",
    "owed": "Show everything owed, heaviest first.",
    "gate": "Ask a gate what holds it: start, roll, test, road.",
    "state": "Show how every joint stands.",
    "reach": "Show the cheapest way in to something.",
    "session": "Show what fits the next session.",
    "needs": "Show what must be in hand, and for which session.",
    "buy": "Show what to order tonight, from whom, and what it costs.",
    "plan": "Show what is done in each session to come, and what changed.",
    "chance": "Show when each gate may be reached, and what drives it.",
    "whatif": "Answer a snag or a change of plan in one line.",
    "calendar": "Say when there is time, or bring it in and out as a calendar file.",
    "check": "Read the whole record back and report faults in it.",
    "sheet": "Make a sheet, on the screen or as PDF.",
    "week": "Tell the week for those who follow it, with nothing private in it.",
    "history": "Put the whole restoration into one file, for an inspector or a buyer.",
    "pages": "Serve the pages for phone and desk, and open them.",
    "people": "Say who may read and write on the house network.",
    "import": "Take in a spreadsheet or an archive.",
    "export": "Write the whole record as one archive, or as a spreadsheet.",
    "backup": "Copy everything into one file, while others write.",
    "restore": "Take a backup back into an empty folder.",
    "bench": "Ask the bench for a number, with its working, its source and its doubt.",
    "demo": "Run the main job on the demo vehicle.",
}


class LazyGroup(click.Group):
    """Knows its commands by name; reads the file of the one asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        module = import_module(f"witnessmark.cli.{COMMANDS[cmd_name]}")
        command = getattr(module, f"{cmd_name}_command")
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl([(name, HELP[name]) for name in COMMANDS])

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        name = args[0] if args else ""
        if name and not name.startswith("-") and name not in COMMANDS:
            from witnessmark.cli.common import unknown_command

            raise unknown_command(name, tuple(COMMANDS))
        return super().resolve_command(ctx, args)
