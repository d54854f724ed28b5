"""Quantities as they are said: money, hours with their minutes, and number words before a unit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from witnessmark.ground.errors import BadInput
from witnessmark.ground.measures import INCH, MEASURES, Spelling, spellings
from witnessmark.ground.numerals import NUMBER, read_number
from witnessmark.ground.quantity import FoundQuantity, Quantity
from witnessmark.ground.spoken import OF_AN_INCH, PART, SAID, read_said

_HOURS = re.compile(
    r"(?<![\w.,/:])([0-9]{1,3})\s?(?:h|hr|hrs|hour|hours)"
    r"(?:([0-5][0-9])(?![\w:.,])|\s?(?:and )?([0-5]?[0-9])\s?(?:m|min|mins|minutes)\b"
    r"|\s(?:and )?([0-5][0-9])(?=\s*$|\s*[,;.)]|\s+(?:on|for|over|to|spent|all|in)\b))",
    re.I,
)
_END = r"(?=\s*$|\s*[,;.)]|\s(?:the|for|each|a|from|plus|all|to|post)\b)"
_MONEY = re.compile(
    rf"(?<![\w.,])(?:([£€$])\s?({NUMBER})|({NUMBER}|\b{SAID})\s?(€|quid\b|euros?\b|eur\b|gbp\b|dollars?\b)"
    rf"(?: ({SAID}|[0-9]{{2}}){_END})?|([0-9]{{1,3}})p\b)",
    re.I,
)
_POUNDS = re.compile(
    rf"(?<![\w.,])({NUMBER}|\b{SAID}) (?:pounds? ({SAID}|[0-9]{{2}}){_END}|(tenner|fiver)s?\b)"
    r"|\b(?:(an?) )?(tenner|fiver)\b",
    re.I,
)
_NOTES = {"tenner": 10.0, "fiver": 5.0}
_SIGNS = {"quid": "£", "gbp": "£", "euro": "€", "euros": "€", "eur": "€", "dollar": "$", "dollars": "$"}

# With "a" before them only these are units: "a second coat", "a foot on it" and "a bar across" are none.
_WITH_AN = "hour|minute|day|week|fortnight|pint|litre|liter|gallon|mile|inch|quart"
_SHORT = frozenset({"day", "hr", "hrs", "min", "amp", "mm", "km", "psi"})
_NOT_SAID = frozenset({"foot", "bars", "second", "seconds", "pound", "grams"})
_LIKE = r"(?:whole |good |full |solid |odd )?"


@cache
def _said_pattern() -> re.Pattern[str]:
    known = [k for k, s in _spelt().items() if not s.exact_case and _is_word(k)]
    units = "|".join(sorted((re.escape(k) for k in known), key=len, reverse=True))
    more = rf"(?: and (?P<more>{PART}|[0-9]{{1,2}}|(?:[a-z]+)))?"
    return re.compile(
        rf"(?<![\w.,/:\-])(?:(?P<number>{NUMBER} of an?|{SAID}(?: of)?(?: an?)?"
        rf"|{NUMBER}(?= {_LIKE}(?:{_WITH_AN}|hr)s? and )) {_LIKE}(?P<unit>{units})"
        rf"|(?:(?P<one>an?) {_LIKE}|(?<=[,;/] ))(?P<single>{_WITH_AN})){more}(?![\w/²])",
        re.I,
    )


def _is_word(unit: str) -> bool:
    return unit not in _NOT_SAID and unit.replace(" ", "").isalpha() and (len(unit) > 3 or unit in _SHORT)


@cache
def _spelt() -> dict[str, Spelling]:
    return spellings()


def money_in(text: str) -> Iterator[FoundQuantity]:
    """Sums with their sign or its name: "£6.40", "23 quid fifty", "three quid", "50p"."""
    for match in _MONEY.finditer(text):
        before, first, second, after, more, pence = match.groups()
        number = _number(first or second or pence)
        if number is not None:
            sign = before or _SIGNS.get((after or "quid").lower(), after)
            value = number / 100 if pence else number + (_number(more) or 0.0) / 100 if more else number
            yield FoundQuantity(match.start(), match.end(), Quantity(match[0], value, sign), "money")
    for match in _POUNDS.finditer(text):
        number = _number(match[1] or "one") or 0.0
        note = (match[3] or match[5] or "").lower()
        value = number * _NOTES[note] if note else number + (_number(match[2]) or 0.0) / 100
        yield FoundQuantity(match.start(), match.end(), Quantity(match[0], value, "£"), "money")


def hours_in(text: str) -> Iterator[FoundQuantity]:
    """Hours with minutes behind them: "1 h 20", "2 hrs and 10 min"."""
    for match in _HOURS.finditer(text):
        minutes = next(g for g in match.groups()[1:] if g is not None)
        value = int(match[1]) * 60.0 + int(minutes)
        yield FoundQuantity(match.start(), match.end(), Quantity(match[0], value, "min"), "time")


def said_in(text: str) -> Iterator[FoundQuantity]:
    """Number words with a unit, and parts of an inch alone: "two and a half pints", "seven sixteenths"."""
    for match in _said_pattern().finditer(text):
        yield _said(match, text)
    for match in re.finditer(rf"\b(?:an?|[a-z]+)[ -](?:{OF_AN_INCH})\b", text, re.I):
        number = read_said(match[0])
        if number is not None:
            yield FoundQuantity(match.start(), match.end(), Quantity(match[0], number * INCH, "mm"), "length")


def _said(match: re.Match[str], text: str) -> FoundQuantity:
    unit = " ".join((match["unit"] or match["single"]).lower().split())
    said = re.sub(r"(?i) of(?: an?)?$|(?<=[a-z]) an?$", "", match["number"] or match["one"] or "an")
    number = 1.0 if said.lower() in ("a", "an") else _number(said)
    kind, factor = next(iter(_spelt()[unit].factors.items()))
    end, more = match.end(), 0.0
    if match["more"]:
        more = _more(match["more"], kind, factor)
        end = match.end() if more else match.start("more") - len(" and ")
    value = (number or 0.0) * factor + more
    quantity = Quantity(text[match.start() : end], value, MEASURES[kind].unit)
    return FoundQuantity(match.start(), end, quantity, kind)


def _more(said: str, kind: str, factor: float) -> float:
    """ "An hour and a half", "a pint and a quarter"; behind hours also minutes: "an hour and ten"."""
    number = _number(said) or 0.0
    if number < 1:
        return number * factor
    return number if kind == "time" and factor == 60.0 and number % 5 == 0 and number < 60 else 0.0


def _number(said: str) -> float | None:
    value = read_said(said)
    if value is not None:
        return value
    try:
        return read_number(said)
    except BadInput:
        return None
