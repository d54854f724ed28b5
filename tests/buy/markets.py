"""Small markets for tests: needs, offers and terms without typing a record."""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

from tests.building import state_of
from witnessmark.buy.buying import Asked, Buying, buying
from witnessmark.buy.needed import Required
from witnessmark.buy.offers import market_of
from witnessmark.ground.money import Money
from witnessmark.journal.facts import AnyFact, Offered, PostStep, Quoted
from witnessmark.owed.needs import Need

TUESDAY = datetime(2026, 11, 24, 19, 0)
SATURDAYS = (date(2026, 11, 28), date(2026, 12, 5), date(2026, 12, 12), date(2026, 12, 19))


def need(what: str, size: str = "", *, pieces: int = 1, by: int = 0, holds: bool = True) -> Required:
    return Required(need=Need(what=what, size=size, quantity=pieces), pieces=pieces, by=by, holds=holds)


def offer(item: str, supplier: str, price: float, size: str = "", **more: Any) -> Offered:
    return Offered(item=item, supplier=supplier, price=price, size=size, **more)


def terms(supplier: str, post: float, days: tuple[float, float, float], **more: Any) -> Quoted:
    quick, likely, slow = days
    steps = (PostStep(price=post),)
    return Quoted(supplier=supplier, post=steps, quick_days=quick, days=likely, slow_days=slow, **more)


def bought(
    facts: list[AnyFact], wanted: list[Required], worth: int | None = None, now: datetime = TUESDAY
) -> Buying:
    """What to order on a Tuesday evening for the coming Saturdays."""
    state = state_of(*facts)
    told = Money(worth, "GBP") if worth is not None else None
    return buying(state, market_of(state), wanted, (), Asked(now=now, sessions=SATURDAYS, worth=told))
