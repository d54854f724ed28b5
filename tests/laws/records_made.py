"""Records made by chance: every fact there is, in any order, with struck and corrected lines."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from functools import cache
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

import msgspec
from hypothesis import strategies as st
from msgspec.structs import fields

from witnessmark.journal.entry import END_OF_DAY, Entry
from witnessmark.journal.facts import AnyFact, Doing, Struck

WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
PLAIN: dict[type, st.SearchStrategy[Any]] = {
    str: WORDS,
    int: st.integers(-(2**53), 2**53),
    float: st.floats(allow_nan=False, allow_infinity=False),
    bool: st.booleans(),
    NoneType: st.none(),
}
DAYS = st.dates(date(2025, 1, 1), date(2025, 1, 12))
TIMES = st.sampled_from(["00:00", "08:30", "10:40", "17:05", END_OF_DAY])


def values(hint: Any) -> st.SearchStrategy[Any]:
    """Values of a type as a fact's field may name it."""
    if hint in PLAIN:
        return PLAIN[hint]
    if get_origin(hint) is tuple:
        inner = get_args(hint)[0]
        return st.lists(values(inner), max_size=2).map(tuple)
    if get_origin(hint) in (UnionType, Union):
        return st.one_of([values(one) for one in get_args(hint)])
    return structs(hint)


@cache
def structs(kind: type[msgspec.Struct]) -> st.SearchStrategy[Any]:
    """Values of one struct, each field filled or left at its default."""

    def made() -> st.SearchStrategy[Any]:
        hints = get_type_hints(kind)
        given = {f.encode_name: values(hints[f.name]) for f in fields(kind)}
        needed = {name: given.pop(name) for name in [f.name for f in fields(kind) if f.required]}
        return st.fixed_dictionaries(needed, optional=given).map(lambda named: kind(**named))

    return st.deferred(made)


DOINGS: st.SearchStrategy[AnyFact] = st.one_of([structs(kind) for kind in get_args(Doing)])
FACTS: st.SearchStrategy[AnyFact] = st.one_of(DOINGS, structs(Struck))


@st.composite
def records(
    draw: Callable[[st.SearchStrategy[Any]], Any],
    most: int = 12,
    doings: st.SearchStrategy[AnyFact] = DOINGS,
) -> list[Entry]:
    """Entries numbered from 1; some are strikes, sound or not, with or without a correction."""
    count = draw(st.integers(0, most))
    strike = st.builds(
        Struck,
        line=st.integers(0, most + 1),
        why=WORDS,
        instead=st.none() | doings,
        words=WORDS,
    )
    return [
        Entry(
            id=f"id-{line}",
            day=draw(DAYS),
            time=draw(TIMES),
            written=f"{draw(DAYS).isoformat()}T12:00:00",
            line=line,
            who=draw(st.sampled_from(["you", "the helper"])),
            words=draw(WORDS),
            fact=draw(doings | strike),
        )
        for line in range(1, count + 1)
    ]
