"""Reading numbers with their units, as typed on the rim: the inside units are told in `measures`.

`read_quantity` is strict and refuses what it cannot be sure of; `find_quantities` looks through
a line and takes only what is plainly a quantity. What was typed is always kept.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache

from witnessmark.ground.errors import BadInput
from witnessmark.ground.measures import FAHRENHEIT, INCH, MEASURES, TOUCHING, Spelling, spellings
from witnessmark.ground.numerals import NUMBER, read_number
from witnessmark.ground.quantities_said import hours_in, money_in, said_in
from witnessmark.ground.quantity import FoundQuantity, Quantity
from witnessmark.ground.threads_typed import find_thread, find_threads

__all__ = ["FoundQuantity", "find_quantities", "find_thread", "read_quantity"]

_SIGN = r"(?:(?<![\w).\-])[-+−])?"
_SIZE = re.compile(
    rf"(?<![\w.,/])({NUMBER})(\"|″)?\s?[x×]\s?({NUMBER})(?:\"|″)?(?:\s?[x×]\s?({NUMBER}))?(?:\s?(mm|in|inch|inches|cm|\"|″))?(?![\w/])",
    re.I,
)
_OF_AN_INCH = ("2", "4", "8", "16", "32", "64")
_AFTER_INCHES = re.compile(
    r"\s*(?:$|[,;.)x×/]|(?:of|long|wide|deep|thick|dia|diameter|bore|od|id|bolts?|nuts?|pipe|spanner|socket|drive|at)\b)",
    re.I,
)


def read_quantity(text: str, kind: str | None = None) -> Quantity:
    """One quantity, and nothing beside it.

    kind is one of `measures.MEASURES`, "count" for a plain number, or None for any.

    >>> read_quantity("35 lbf ft", "torque").unit, round(read_quantity("35 lbf ft").value, 2)
    ('N·m', 47.45)

    Raises BadInput for a bare number where a unit is needed, for a unit of another kind, and for
    what is not finite or beyond all sense.
    """
    typed = " ".join(text.split())
    if kind is not None and kind != "count" and kind not in MEASURES:
        raise ValueError(f"no kind of quantity is called {kind!r}")
    if kind == "count":
        return Quantity(typed, read_number(typed))
    whole = [f for f in _found(typed, kind) if (f.start, f.end) == (0, len(typed))]
    if not whole:
        return _bare(typed, kind)
    found = whole[0]
    if kind is not None and found.kind != kind:
        raise BadInput(
            given=f"{typed!r} is a {found.kind}, and a {kind} is asked",
            holds=MEASURES[kind].holds,
            do=f"Give the {kind} with its own unit.",
        )
    _refuse_absurd(found)
    return Quantity(text.strip(), found.quantity.value, found.quantity.unit)


def _bare(typed: str, kind: str | None) -> Quantity:
    try:
        value = read_number(typed)
    except BadInput:
        holds = MEASURES[kind].holds if kind else "a number with its unit, as 47 N·m or 5/16 in"
        raise BadInput(
            given=f"{typed!r} is not a {kind or 'quantity'} that can be read",
            holds=holds,
            do="Type one number with its unit.",
        ) from None
    if kind is None:
        return Quantity(typed, value)
    raise BadInput(given=f"{kind} is {typed}", holds=MEASURES[kind].holds, do="Add the unit.")


def _refuse_absurd(found: FoundQuantity) -> None:
    measure = MEASURES[found.kind]
    if not measure.low <= found.quantity.value <= measure.high:
        raise BadInput(
            given=f"{found.quantity.typed} is beyond all sense for a {found.kind}",
            holds=f"{measure.low:g} to {measure.high:g} {measure.unit}, as {measure.holds}",
            do="Look at the number and its unit again.",
        )


def find_quantities(text: str) -> tuple[FoundQuantity, ...]:
    """Every quantity in a line, in order; none overlap, threads are left alone, absurd ones are passed over.

    >>> [(f.quantity.value, f.quantity.unit) for f in find_quantities("1,5 L in, plug 25 Nm")]
    [(1.5, 'L'), (25.0, 'N·m')]
    """
    found: list[FoundQuantity] = []
    taken = [(t.start, t.end) for t in find_threads(text) if not t.thread.endswith("tpi")]
    for one in _found(text, None):
        measure = MEASURES[one.kind]
        sensible = measure.low <= one.quantity.value <= measure.high
        if sensible and all(one.end <= a or b <= one.start for a, b in taken):
            found.append(one)
            taken.append((one.start, one.end))
    return tuple(sorted(found, key=lambda f: f.start))


def _found(text: str, kind: str | None) -> Iterator[FoundQuantity]:
    """Everything that could be a quantity, those that take precedence first."""
    yield from _pitches(text)
    yield from money_in(text)
    yield from hours_in(text)
    yield from said_in(text)
    yield from _sizes(text)
    yield from _measured(text, kind)


def _pitches(text: str) -> Iterator[FoundQuantity]:
    for thread in find_threads(text):
        if thread.thread.endswith("tpi") and thread.pitch:
            typed = text[thread.start : thread.end]
            yield FoundQuantity(thread.start, thread.end, Quantity(typed, thread.pitch, "mm"), "pitch")


def _sizes(text: str) -> Iterator[FoundQuantity]:
    threads = find_threads(text)
    for match in _SIZE.finditer(text):
        if any(t.start < match.end() and match.start() < t.end for t in threads):
            continue
        last = 4 if match[4] else 3
        unit, end = (match[5] or match[2] or "").lower(), match.end()
        if unit == "in" and not _is_inches(match[last], " ", text[end:]):
            unit, end = "", match.end(last)
        inches = unit in ("in", "inch", "inches", '"', "″") or (not unit and "/" in text[match.start() : end])
        factor = INCH if inches else 10.0 if unit == "cm" else 1.0
        size = text[match.start() : end].strip()
        for group in (1, 3, 4):
            number = _value(match[group]) if match[group] else None
            if number is not None:
                quantity = Quantity(match[group], number * factor, "mm")
                yield FoundQuantity(
                    match.start(group), end if group == last else match.end(group), quantity, "length", size
                )


def _measured(text: str, kind: str | None) -> Iterator[FoundQuantity]:
    for match in _pattern().finditer(text):
        spelling = _spelling(match, text)
        if spelling is None:
            continue
        which = kind if kind is not None and kind in spelling.factors else next(iter(spelling.factors))
        for group in ("low", "number"):
            number = _value(match[group]) if match[group] else None
            if number is None:
                continue
            typed = match[0] if group == "number" and not match["low"] else f"{match[group]} {match['unit']}"
            start = match.start(group)
            end = match.end() if group == "number" else match.end(group)
            yield FoundQuantity(
                start,
                end,
                Quantity(typed, _inside(number, spelling, which, match), MEASURES[which].unit),
                which,
            )


def _inside(number: float, spelling: Spelling, kind: str, match: re.Match[str]) -> float:
    unit = match["unit"] if match["unit"] in FAHRENHEIT else " ".join(match["unit"].lower().split())
    shifted = number - 32 if kind == "temperature" and unit in FAHRENHEIT else number
    return shifted * spelling.factors[kind]


def _spelling(match: re.Match[str], text: str) -> Spelling | None:
    """The unit meant, or None where the word is not a unit here."""
    unit, gap = match["unit"], match["gap"]
    after = text[match.end() :]
    if unit[-1].isalnum() and re.match(r"[\w/²]", after):
        return None
    if len(unit) == 1 and unit.isalpha():
        if (unit in TOUCHING and gap) or (unit == "l" and re.match(r"\s+(?:rear|front|r\b|h\b)", after)):
            return None
        return _known_spellings().get(unit)
    if unit.lower() == "in" and not _is_inches(match["number"], gap, after):
        return None
    key = unit.lower()
    return _known_spellings().get(key) or _known_spellings().get(" ".join(key.split())) or _closed_up(key)


def _is_inches(number: str, gap: str, after: str) -> bool:
    """Whether "in" after a number is an inch: always after a fraction or decimal, else by what follows."""
    if "/" in number and number.rpartition("/")[2] not in _OF_AN_INCH:
        return False
    return (
        not number.isdigit() or (not gap.isspace() and number.isdigit()) or bool(_AFTER_INCHES.match(after))
    )


@cache
def _known_spellings() -> dict[str, Spelling]:
    return spellings()


@cache
def _closed() -> dict[str, Spelling]:
    return {key.replace(" ", ""): s for key, s in _known_spellings().items() if not s.exact_case}


def _closed_up(key: str) -> Spelling | None:
    return _closed().get("".join(key.split()))


@cache
def _pattern() -> re.Pattern[str]:
    long = sorted((k for k, s in _known_spellings().items() if not s.exact_case), key=len, reverse=True)
    letters = "".join(k for k, s in _known_spellings().items() if s.exact_case)
    units = "|".join(re.escape(k).replace(r"\ ", r"\s?") for k in long)
    return re.compile(
        rf"(?<![\w.,/:])(?:(?P<low>{_SIGN}{NUMBER})\s?(?:-|–|to)\s?)??(?P<number>{_SIGN}{NUMBER})(?P<gap>\s{{0,2}}|-)"
        rf"(?P<unit>(?i:{units})|[{letters}])"
    )


def _value(typed: str) -> float | None:
    try:
        value = read_number(typed)
    except BadInput:
        return None
    return value if math.isfinite(value) else None
