"""Every sheet of the made-up vehicle, made once; and the words that stand on a sheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from tests.sheets.made_up import (
    ENTRIES,
    LINES,
    NAME,
    NEEDS,
    PLAN,
    TODAY,
    debts_of,
    made_up_state,
    road_answer,
    words_of,
)
from witnessmark.journal.entry import Entry
from witnessmark.journal.order import standing
from witnessmark.sheets.closing import closing_sheet
from witnessmark.sheets.gate import gate_sheet
from witnessmark.sheets.helper import helper_sheet
from witnessmark.sheets.history import History, history_sheet
from witnessmark.sheets.labels import label_sheet, labels
from witnessmark.sheets.lists import journal_sheet, owed_sheet, state_sheet
from witnessmark.sheets.order import needs_sheet, order_sheet
from witnessmark.sheets.rows import Sheet
from witnessmark.sheets.session import session_sheet
from witnessmark.sheets.wall import wall_sheet
from witnessmark.state.photos import Pair, Taken
from witnessmark.tables.sources import cautions
from witnessmark.vehicle.catalogue import catalogue

KINDS = (
    "wall", "session", "gate", "closing", "labels", "order", "helper", "owed", "needs", "journal", "state",
    "history",
)  # fmt: skip

# Keys whose values are no words on a sheet: what a row is, how loud it is, the day (shown in words).
_NO_WORDS = frozenset({"row", "file", "sort", "date", "day", "kind", "hollow", "days", "struck", "number"})


def history_of(entries: tuple[Entry, ...]) -> History:
    """The made-up vehicle's history, with a photo under each of its last two lines."""
    held = standing(entries)
    at = ("pinion seal",)
    taken = tuple(
        Taken(name=f"{n}.jpg", line=e.line, day=e.day, time=e.time, at=at, words=e.words, fact=e.fact)
        for n, e in enumerate(held[-2:])
    )
    state = made_up_state()
    return History(
        entries=tuple(held),
        struck=1,
        state=state,
        photos=taken,
        pairs=(Pair(thing="pinion seal", before=taken[0], after=taken[1]),),
        road=road_answer(state),
        words=words_of(state),
    )


@cache
def every_sheet() -> Mapping[str, Sheet]:
    state = made_up_state()
    debts, words = debts_of(state), words_of(state)
    answer = road_answer(state)
    line = state.last_line
    made = (
        wall_sheet(state, debts, PLAN, answer, today=TODAY),
        session_sheet(
            PLAN, state.vehicle, catalogue(), day=TODAY, line=line, cautions=cautions(), numbers=LINES
        ),
        gate_sheet(answer, vehicle=NAME, line=line),
        closing_sheet(
            "rear axle", state, debts, state.vehicle, catalogue(), today=TODAY, words=words, numbers=LINES
        ),
        label_sheet(labels(state, debts, catalogue()), vehicle=NAME, today=TODAY, line=line),
        order_sheet(NEEDS, vehicle=NAME, today=TODAY, line=line),
        helper_sheet(debts, PLAN.operations, answer.not_known, vehicle=NAME, today=TODAY, line=line),
        owed_sheet(debts, words, vehicle=NAME, today=TODAY, line=line),
        needs_sheet(NEEDS, vehicle=NAME, today=TODAY, line=line),
        journal_sheet(ENTRIES, vehicle=NAME, today=TODAY, line=line),
        state_sheet(state, words, today=TODAY),
        history_sheet(history_of(ENTRIES), today=TODAY),
    )
    return MappingProxyType({sheet.kind: sheet for sheet in made})


def words_on(value: Any, key: str = "") -> Iterator[str]:
    """Every text of a sheet's plain values that a person is meant to read, and the lines behind them."""
    if isinstance(value, dict):
        for name, item in value.items():
            if name != "empty" or not value.get("rows"):
                yield from words_on(item, name)
    elif isinstance(value, list | tuple):
        for item in value:
            yield from words_on(item, key)
    elif isinstance(value, str) and key not in _NO_WORDS and value:
        yield value
    elif key == "line" and value is not None:
        yield f"line {value}"


def run_together(text: str) -> str:
    """Text without any space, break or capital, so that wrapping does not matter."""
    return "".join(text.split()).replace("\u200b", "").casefold()
