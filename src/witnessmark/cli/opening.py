"""The vehicle's record, opened for a command."""

from __future__ import annotations

from datetime import datetime

import click

from witnessmark.cli.common import folder_of
from witnessmark.restoration.begin import reopen
from witnessmark.restoration.restoration import Restoration


def opened(ctx: click.Context) -> Restoration:
    """The vehicle's record, opened now."""
    return reopen(folder_of(ctx), now=datetime.now().replace(microsecond=0))
