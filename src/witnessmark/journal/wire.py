"""Facts as JSON and back, with lifting of older shapes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

import msgspec

from witnessmark.ground.errors import RecordDamaged
from witnessmark.journal.entry import VERSION, Entry
from witnessmark.journal.facts import AnyFact

Lift = Callable[[dict[str, Any]], dict[str, Any]]

# One step for each version that is no longer written: step n turns a fact of shape n into shape n + 1.
LIFTS: Mapping[int, Lift] = {}

_encode = msgspec.json.Encoder().encode
_decode: Callable[[bytes | str], AnyFact] = msgspec.json.Decoder(AnyFact).decode
_convert: Callable[[object], AnyFact] = partial(msgspec.convert, type=AnyFact)
_decode_entry = msgspec.json.Decoder(Entry).decode


def fact_to_json(fact: AnyFact) -> bytes:
    """The fact alone, compact."""
    return _encode(fact)


def fact_from_json(raw: bytes | str, version: int = VERSION) -> AnyFact:
    """Read a fact, lifting it first when it was written in an older shape.

    Raises RecordDamaged when it cannot be read, or is of a shape newer than this program.
    """
    try:
        if version == VERSION:
            return _decode(raw)
        plain = lifted(msgspec.json.decode(raw), version, VERSION, LIFTS)
        return _convert(plain)
    except (msgspec.DecodeError, msgspec.ValidationError) as trouble:
        raise RecordDamaged(f"a fact cannot be read: {trouble}") from trouble


def lifted(fact: dict[str, Any], version: int, wanted: int, lifts: Mapping[int, Lift]) -> dict[str, Any]:
    """Carry a fact's plain values from one shape to a later one, step by step.

    >>> lifted({"did": "took_off"}, 1, 2, {1: lambda f: {**f, "at": ["wheel"]}})
    {'did': 'took_off', 'at': ['wheel']}
    """
    if version > wanted:
        raise RecordDamaged(f"a fact has shape {version}, this program knows {wanted}: renew the program")
    for step in range(version, wanted):
        if step not in lifts:
            raise RecordDamaged(f"no way is known to lift a fact from shape {step}")
        fact = lifts[step](fact)
    return fact


def entry_to_json(entry: Entry) -> bytes:
    """A whole line, for the archive."""
    return _encode(entry)


def entry_from_json(raw: bytes | str) -> Entry:
    """A whole line back from the archive; an older shape is lifted."""
    try:
        plain = msgspec.json.decode(raw)
        version = plain.get("version", 0) if isinstance(plain, dict) else 0
        if version == VERSION:
            return _decode_entry(raw)
        fact = lifted(plain["fact"], version, VERSION, LIFTS)
        return msgspec.convert({**plain, "fact": fact, "version": VERSION}, Entry)
    except (msgspec.DecodeError, msgspec.ValidationError, KeyError, TypeError) as trouble:
        raise RecordDamaged(f"a line of the archive cannot be read: {trouble}") from trouble


def fact_to_plain(fact: AnyFact) -> dict[str, Any]:
    """The fact as plain values, as they stand in the archive."""
    plain: dict[str, Any] = msgspec.to_builtins(fact)
    return plain
