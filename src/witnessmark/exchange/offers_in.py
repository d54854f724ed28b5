"""Rows about buying: what a supplier offers, and on what terms; each cell refused in three parts."""

from __future__ import annotations

import re

from witnessmark.exchange.cells import Names, read_whole
from witnessmark.exchange.grid import Row
from witnessmark.exchange.row_read import Read
from witnessmark.ground.errors import BadInput
from witnessmark.ground.money import known_currency, read_money
from witnessmark.ground.numerals import read_number
from witnessmark.ground.quantities import read_quantity
from witnessmark.journal.facts import Offered, PostStep, Quoted
from witnessmark.vehicle.things import Vehicle

NOBODY: tuple[str, ...] = ()
NO_PRICE: tuple[float | None, str] = (None, "")
NO_POST: tuple[PostStep, ...] = ()
_STEP = re.compile(r"(.+?)\s+(?:up )?to\s+(.+)", re.IGNORECASE)
_CLOCK = re.compile(r"([01]?[0-9]|2[0-3])[:.]([0-5][0-9])")


def offer_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """One thing from one supplier."""
    price, currency = _price(row, "price")
    quick, likely, slow = days_in(row)
    at = row.read("for", Names(known).several, NOBODY)
    offer = Offered(
        at=at,
        item=row.text("item"),
        supplier=row.text("supplier"),
        size=row.text("size"),
        number=row.text("their number"),
        price=price,
        currency=currency,
        pack=row.read("pack", read_whole, 1),
        grams=row.read("weight", read_grams, 0.0),
        quick_days=quick,
        days=likely,
        slow_days=slow,
    )
    return Read(row=row, facts=(offer,), leans_on=tuple(("for", name) for name in at))


def supplier_in(row: Row, vehicle: Vehicle, known: frozenset[str]) -> Read:
    """One supplier's terms."""
    quick, likely, slow = days_in(row)
    currency = row.read("currency", known_currency, "")
    sums = {heading: _price(row, heading)[0] for heading in ("free above", "minimum")}
    terms = Quoted(
        supplier=row.text("supplier"),
        post=row.read("post", read_post, NO_POST),
        free_above=sums["free above"],
        minimum=sums["minimum"],
        currency=currency,
        rate=str(row.read("rate", read_rate, "")),
        duty=row.read("duty", read_percent, 0.0),
        quick_days=quick,
        days=likely,
        slow_days=slow,
        cut_off=row.read("cut-off", read_clock, ""),
    )
    return Read(row=row, facts=(terms,))


def _price(row: Row, heading: str) -> tuple[float | None, str]:
    """A sum that is not below nothing, and the currency typed with it."""
    return row.read(heading, _not_negative, NO_PRICE)


def _not_negative(text: str) -> tuple[float | None, str]:
    amount, currency = read_money(text)
    if amount < 0:
        raise BadInput(
            given=f"the sum is {text}",
            holds="a sum of nothing or more; what is paid back is no offer",
            do="Write what it costs, without the minus.",
        )
    return float(amount), currency


def days_in(row: Row) -> tuple[float | None, float | None, float | None]:
    """Quick, likely and slow, in order; likely alone will do."""
    found = [row.read(heading, read_days, None) for heading in ("quick", "days", "slow")]
    told = [days for days in found if days is not None]
    if told and found[1] is None and not row.troubles:
        row.note("days", _no_likely())
    if sorted(told) != told:
        row.note("days", _out_of_order())
    return found[0], found[1], found[2]


def _no_likely() -> BadInput:
    return BadInput(
        given="quick or slow days are told, and not the likely ones",
        holds="the likely days, as 3",
        do="Fill in days, or empty quick and slow.",
    )


def _out_of_order() -> BadInput:
    return BadInput(
        given="quick, days and slow are not in order",
        holds="quick the fewest, slow the most",
        do="Write them in that order.",
    )


def read_days(text: str) -> float | None:
    """Days on the way; a bare number is days.

    >>> read_days("4"), read_days("1 week")
    (4.0, 7.0)
    """
    try:
        days = read_number(text)
    except BadInput:
        days = read_quantity(text, "time").value / 1440
    if not 0 <= days <= 365:
        raise BadInput(given=f"the days are {text}", holds="from 0 to 365 days", do="Count again.")
    return days


def read_grams(text: str) -> float:
    """A weight in grams; a bare number is grams.

    >>> read_grams("250"), read_grams("1.2 kg")
    (250.0, 1200.0)
    """
    try:
        grams = read_number(text)
    except BadInput:
        grams = round(read_quantity(text, "mass").value * 1000, 3)
    if grams < 0:
        raise BadInput(given=f"the weight is {text}", holds="a weight of nothing or more", do="Weigh again.")
    return grams


def read_post(text: str) -> tuple[PostStep, ...]:
    """Post by weight, lightest first; a semicolon between steps, the last may be without a weight.

    >>> [(step.price, step.most_grams) for step in read_post("3.50 to 1 kg; 4.95 to 5 kg; 9")]
    [(3.5, 1000.0), (4.95, 5000.0), (9.0, 0)]
    """
    steps = tuple(_step(part) for part in text.split(";") if part.strip())
    weights = [step.most_grams or float("inf") for step in steps]
    if not steps or sorted(set(weights)) != weights:
        raise BadInput(
            given=f"the post is {text!r}",
            holds="steps by weight, lightest first, as: 3.50 to 1 kg; 4.95 to 5 kg; 9.50",
            do="Write each weight once, in that order.",
        )
    return steps


def _step(text: str) -> PostStep:
    found = _STEP.fullmatch(text.strip())
    price = _not_negative(found[1] if found else text)[0] or 0.0
    return PostStep(price=price, most_grams=read_grams(found[2]) if found else 0)


def read_rate(text: str) -> str:
    """So many of the owner's own currency for one of theirs, kept as typed.

    >>> read_rate("0.86")
    '0.86'
    """
    if not 0 < read_number(text) < 1e6:
        raise BadInput(given=f"the rate is {text}", holds="a rate above 0, as 0.86", do="Look it up again.")
    return text.strip().replace(",", ".")


def read_percent(text: str) -> float:
    """A share of the goods in a hundred.

    >>> read_percent("4.5 %"), read_percent("20")
    (4.5, 20.0)
    """
    share = read_number(text.replace("%", " ").strip())
    if not 0 <= share <= 200:
        raise BadInput(given=f"the duty is {text}", holds="from 0 to 200 in a hundred", do="Write it as 4.5.")
    return share


def read_clock(text: str) -> str:
    """A time of day.

    >>> read_clock("16:00"), read_clock("9.30")
    ('16:00', '09:30')
    """
    found = _CLOCK.fullmatch(text.strip())
    if found is None:
        raise BadInput(given=f"the time is {text!r}", holds="a time of day, as 16:00", do="Write it so.")
    return f"{int(found[1]):02d}:{found[2]}"
