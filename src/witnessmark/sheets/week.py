"""The week as a story for those who follow it: three photos, one number, what went wrong, what is next.

Nothing private comes into it. No word as typed is used: only what the facts say, under names made of
the trade's own words, without anybody's name, without a price, a shop, or where a thing lies.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.jobs.operation import Operation
from witnessmark.journal.entry import Entry
from witnessmark.journal.facts import (
    AnyFact,
    AtFact,
    Bared,
    Closed,
    Coated,
    CutOut,
    Filled,
    Fitted,
    Found,
    LookedAt,
    Measured,
    NippedUp,
    Opened,
    Photographed,
    Proved,
    Remarked,
    Struck,
    Tightened,
    TookOff,
    Welded,
)
from witnessmark.journal.order import reading_order
from witnessmark.sheets.phrases import counted
from witnessmark.state.photos import Pair, Taken
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.things import Vehicle
from witnessmark.words.open_names import is_open, open_name

DAYS = 7
PHOTOS = 3
_FEW = 4
_OPENS = (TookOff, Opened)
_CLOSES = (Fitted, NippedUp, Tightened, Filled, Closed)
_PROVES = (Proved, LookedAt)
_WORK = (
    ("Apart", _OPENS),
    ("Metal and paint", (CutOut, Welded, Bared, Coated)),
    ("Back together", _CLOSES),
    ("Proved", _PROVES),
)
_DONE = (
    ("opening {}", _OPENS),
    ("work on {}", (CutOut, Welded, Bared, Coated)),
    ("closing {}", _CLOSES),
    ("proving {}", _PROVES),
)
_NUMBERS = (Measured, Proved, Tightened)
_NEXT = {
    "open": "opening {}",
    "close": "closing {}",
    "prove": "proving {}",
    "protect": "covering {} until then",
    "prepare": "making ready for {}",
    "record": "writing down {}",
    "watch": "the fire watch after {}",
}
_FIGURE = re.compile(r"[\d.,/ –-]{1,8} ?(mm|cm|in|thou|N·m|Nm|lbf ft|°|°C|bar|psi|min|V|A|tpi)")


class Shot(Struct, frozen=True, kw_only=True):
    """One photo of the story, with its caption."""

    name: str
    caption: str


class Story(Struct, frozen=True, kw_only=True):
    """The week, told.

    what    the vehicle by its body alone, "pickup"; its name is its owner's
    done    what was done, under a few words each
    number  the one number, and what it says; wrong: what went wrong; ahead: what is next
    """

    what: str
    first: date
    last: date
    done: tuple[tuple[str, str], ...]
    photos: tuple[Shot, ...]
    number: tuple[str, str]
    wrong: str
    ahead: str


def week_story(
    entries: Sequence[Entry],
    vehicle: Vehicle,
    photos: Sequence[Taken],
    pairs: Sequence[Pair],
    operations: Sequence[Operation],
    *,
    last: date,
) -> Story:
    """The seven days that end with `last`.

    entries     what stands in the record, and the strikes
    operations  of the next session, in their order; without any, what was done next is told instead
    """
    first = last - timedelta(days=DAYS - 1)
    own = reading_order(entry for entry in entries if first <= entry.day <= last)
    return Story(
        what=vehicle.body or "vehicle",
        first=first,
        last=last,
        done=tuple(_done(own, vehicle)),
        photos=_chosen([one for one in photos if first <= one.day <= last], pairs, vehicle),
        number=_number(own, vehicle),
        wrong=_wrong(own, vehicle),
        ahead=_ahead(operations, [e for e in entries if e.day > last], vehicle),
    )


def _done(entries: Iterable[Entry], vehicle: Vehicle) -> Iterator[tuple[str, str]]:
    facts = [entry.fact for entry in entries if isinstance(entry.fact, AtFact)]
    for heading, kinds in _WORK:
        named = [name for fact in facts if isinstance(fact, kinds) for name in fact.at]
        if named:
            yield heading, _few(named, vehicle)


def _few(names: Iterable[str], vehicle: Vehicle) -> str:
    told = list(dict.fromkeys(open_name(name, vehicle) for name in names))
    rest = len(told) - _FEW
    return "; ".join(told[:_FEW]) + (f"; and {counted(rest, 'thing')} more" if rest > 0 else "")


# ---- three photos


def _chosen(photos: Sequence[Taken], pairs: Sequence[Pair], vehicle: Vehicle) -> tuple[Shot, ...]:
    """A before and after of the week first, then what shows something else; in the order they were taken."""
    order = {one.name: n for n, one in enumerate(photos)}
    wanted = [one for p in reversed(pairs) if p.after.name in order for one in (p.after, p.before)]
    seen: set[tuple[str, ...]] = set()
    for one in reversed(photos):
        if one.at not in seen:
            seen.add(one.at)
            wanted.append(one)
    wanted += reversed(photos)
    chosen = list({one.name: one for one in wanted if one.name in order}.values())[:PHOTOS]
    chosen.sort(key=lambda one: order[one.name])
    return tuple(Shot(name=one.name, caption=_caption(one.fact, one.at, vehicle)) for one in chosen)


def _caption(fact: AnyFact, names: Sequence[str], vehicle: Vehicle) -> str:
    did = str(type(fact).__struct_config__.tag).replace("_", " ")
    told = " and ".join(dict.fromkeys(open_name(name, vehicle) for name in names))
    if isinstance(fact, Photographed | Remarked | Struck):
        did = ""
    said = f"{did} {told}".strip() or "as it stood"
    return f"{said[0].upper()}{said[1:]}."


# ---- one number, one thing that went wrong, what is next


def _number(entries: Sequence[Entry], vehicle: Vehicle) -> tuple[str, str]:
    for kind in _NUMBERS:
        for entry in reversed(entries):
            fact = entry.fact
            if isinstance(fact, kind) and isinstance(fact, AtFact) and fact.figures and fact.at:
                figure = _figure(fact.figures[0])
                if figure:
                    return figure, f"{_measure(fact)}, {open_name(fact.at[0], vehicle)}."
    for says, kinds in (("proved", _PROVES), ("put back together", _CLOSES), ("taken apart", _OPENS)):
        names = {n for e in entries if isinstance(e.fact, kinds) for n in e.fact.at}
        if names:
            return str(len(names)), f"{'thing' if len(names) == 1 else 'things'} {says} this week."
    return str(len(entries)), f"{'line' if len(entries) == 1 else 'lines'} written this week."


def _figure(quantity: Quantity) -> str:
    """The figure as typed, where it is nothing but a number and a unit of the workshop."""
    return quantity.typed if _FIGURE.fullmatch(quantity.typed) else ""


def _measure(fact: AtFact) -> str:
    if isinstance(fact, Measured):
        return f"measured: {fact.what}" if fact.what and is_open(fact.what) else "measured"
    return "proved" if isinstance(fact, Proved) else "tightened to it, at the wrench"


def _wrong(entries: Sequence[Entry], vehicle: Vehicle) -> str:
    for entry in reversed(entries):
        fact = entry.fact
        if isinstance(fact, Found) and fact.at and condition(fact.condition).bad:
            thing = f"{fact.item} of " if fact.item and is_open(fact.item) else ""
            return f"The {thing}{open_name(fact.at[0], vehicle)}: found {condition(fact.condition).word}."
    struck = sum(isinstance(entry.fact, Struck) for entry in entries)
    if struck:
        return f"{counted(struck, 'line')} had to be struck: written down wrong."
    return "Nothing that was written down."


def _ahead(operations: Sequence[Operation], later: Sequence[Entry], vehicle: Vehicle) -> str:
    told = list(dict.fromkeys(_step(one, vehicle) for one in operations if one.name))
    for entry in later:
        if told and len(told) >= PHOTOS:
            break
        said = next((said for said, kinds in _DONE if isinstance(entry.fact, kinds)), "")
        if said and isinstance(entry.fact, AtFact) and entry.fact.at:
            step = said.format(open_name(entry.fact.at[0], vehicle))
            told += [step] if step not in told else []
    return f"{'; '.join(told[:PHOTOS])}." if told else "Not decided yet."


def _step(operation: Operation, vehicle: Vehicle) -> str:
    return _NEXT.get(operation.sort, "work on {}").format(open_name(operation.name, vehicle))
