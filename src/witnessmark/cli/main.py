"""The command `witnessmark`."""

import click

from witnessmark.ground.version import VERSION


@click.group()
@click.version_option(VERSION, prog_name="witnessmark")
def main() -> None:
    """What a vehicle apart still owes before it may roll."""
