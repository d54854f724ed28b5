"""Begin a vehicle's record, or come back to it."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from witnessmark.ground.errors import BadInput
from witnessmark.journal.facts import DescribedVehicle
from witnessmark.restoration.restoration import Restoration
from witnessmark.state.description import known_bodies
from witnessmark.store.opening import create, open_record


def begin(
    folder: Path, name: str, *, now: datetime, body: str = "", country: str = "", kept_at: str = ""
) -> Restoration:
    """Begin a vehicle's record in a folder; its first line says what the vehicle is.

    body     car, trailer, motorcycle ...: settles what its gates ask
    country  two letters; settles nearside and offside
    kept_at  a database and the record's name in it; else the record is a file in the folder
    """
    fact = DescribedVehicle(name=_named(name), body=_bodied(body), country=_country(country))
    restoration = Restoration(create(folder, kept_at=kept_at), now=now)
    restoration.write_fact(fact, f"began {fact.name}")
    return restoration


def reopen(folder: Path, *, now: datetime, who: str = "you") -> Restoration:
    """Open a vehicle's record."""
    return Restoration(open_record(folder), now=now, who=who)


def _named(name: str) -> str:
    if name.strip():
        return name.strip()
    raise BadInput(
        given="no name", holds="what you call the vehicle", do='Give it one, as: begin "the blue trailer".'
    )


def _bodied(body: str) -> str:
    plain = body.strip().lower()
    if not plain or plain in known_bodies():
        return plain
    raise BadInput(
        given=f"body {body!r} is not known here",
        holds=f"one of {', '.join(known_bodies())}",
        do="Take the nearest one; a line says what it has and has not, as: this vehicle has no belts.",
    )


def _country(country: str) -> str:
    plain = country.strip().upper()
    if not plain or (len(plain) == 2 and plain.isalpha()):
        return plain
    raise BadInput(given=f"country {country!r}", holds="two letters, as GB or NZ", do="Give the two letters.")
