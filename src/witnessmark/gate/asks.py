"""What each gate asks for, read from its data file."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

import msgspec
from msgspec import Struct

from witnessmark.ground.errors import BadInput
from witnessmark.tables.read import read_table
from witnessmark.vehicle.kind import Limit
from witnessmark.vehicle.things import Vehicle

GATES = ("start", "roll", "test", "road")


class Ask(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One thing a gate asks to have been looked at or tried, whatever the record holds.

    needs   features of the vehicle without which it is not asked
    limit   published fail lines with authority, place and edition; never the aim
    looks_over  the ask is a look over its whole system, and counts no more once that system was opened
    """

    id: str
    name: str
    text: str
    system: str
    stage: str
    if_missed: str
    how: str = ""
    words: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    limit: tuple[Limit, ...] = ()
    helper: str = "no"
    sources: tuple[str, ...] = ()

    @property
    def looks_over(self) -> bool:
        return self.name.startswith("look over")


class Holding(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """Which debts hold a gate: empty means any."""

    if_missed: tuple[str, ...] = ()
    systems: tuple[str, ...] = ()
    sorts: tuple[str, ...] = ()


class Gate(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A gate: the stages it asks for lie before it."""

    name: str
    screen_name: str
    stages_before: tuple[str, ...]
    note: str
    ask: tuple[Ask, ...]
    holding: Holding = Holding()
    sources: tuple[str, ...] = ()


@cache
def gates() -> Mapping[str, Gate]:
    """Every gate by its command name.

    >>> [g.screen_name for g in gates().values()]
    ['start', 'roll', 'inspection', 'road']
    """
    return MappingProxyType({name: msgspec.convert(read_table(f"gates/{name}"), Gate) for name in GATES})


def gate_called(name: str) -> Gate:
    """The gate of this command name or screen name."""
    for gate in gates().values():
        if name.lower() in (gate.name, gate.screen_name):
            return gate
    raise BadInput(
        given=f"there is no gate called {name!r}",
        holds="start, roll, test (on screens: inspection) or road",
        do="Ask for one of the four.",
        near=GATES,
    )


def asked_of(gate: Gate, vehicle: Vehicle) -> tuple[Ask, ...]:
    """The asks that concern this vehicle."""
    return tuple(
        ask for ask in gate.ask if ask.system in vehicle.systems and set(ask.needs) <= vehicle.features
    )
