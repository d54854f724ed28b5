"""What suppliers offer and on what terms, out of the record; what cannot be used is told in three parts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from decimal import Decimal

from msgspec import Struct

from witnessmark.buy.arrival import Days, days_told
from witnessmark.engines.basket import Supplier, Tier
from witnessmark.ground.errors import BadInput
from witnessmark.ground.money import Money, converted, currency_of, known_currency, money
from witnessmark.ground.numerals import read_number
from witnessmark.journal.facts import Offered, Quoted
from witnessmark.owed.needs import Need, renewal_item
from witnessmark.owed.stock import BY_SIZE, Held, Item, Stock, answers, bare, dimensions
from witnessmark.state.standing import State
from witnessmark.state.supply import Line

# Money that no country and no sign has told: ISO 4217 code of the sum as typed.
FALLBACK = "GBP"


class Unusable(Struct, frozen=True, kw_only=True):
    """An offer, or terms, that no basket can be made of: what, the three parts, and the line behind it."""

    what: str
    given: str
    holds: str
    do: str
    line: int


class Quote(Struct, frozen=True, kw_only=True):
    """One usable offer: money in the owner's own currency, for a pack."""

    item: str
    size: str
    number: str
    supplier: str
    at: tuple[str, ...]
    price: Money
    duty: Money
    pack: int
    grams: int
    days: Days
    line: int
    day: date


class Sender(Struct, frozen=True, kw_only=True):
    """One supplier: how it posts, in whole coins; the time of day after which it goes the next day."""

    name: str
    terms: Supplier
    cut_off: str = ""
    free_above: Money | None = None
    line: int | None = None


class Market(Struct, frozen=True, kw_only=True):
    """Everything offered that can be used, by whom, and what cannot be used."""

    currency: str
    quotes: tuple[Quote, ...]
    senders: Mapping[str, Sender]
    unusable: tuple[Unusable, ...]


def own_currency(state: State) -> str:
    """The owner's own: as the worth of a session was typed, else the country's."""
    typed = next((line.fact.currency for line in reversed(state.supply.valued) if line.fact.currency), "")
    return typed or currency_of(state.vehicle.country) or FALLBACK


def worth_told(state: State, currency: str) -> Money | None:
    """What the owner last said a lost session is worth; None where nothing was said."""
    if not state.supply.valued:
        return None
    return money(state.supply.valued[-1].fact.amount, currency)


def market_of(state: State) -> Market:
    """The latest offer of each thing by each supplier, with the supplier's latest terms."""
    currency = own_currency(state)
    terms: dict[str, Line] = {_key(line.fact.supplier): line for line in state.supply.quoted}
    quotes, unusable = [], []
    senders: dict[str, Sender] = {}
    for line in _latest(state.supply.offered):
        offer: Offered = line.fact
        quoted = terms.get(_key(offer.supplier))
        try:
            sender = senders.get(_key(offer.supplier)) or _sender(state, offer.supplier, quoted, currency)
            quotes.append(_quote(line, quoted, currency))
            senders[_key(offer.supplier)] = sender
        except BadInput as trouble:
            what = f"{offer.item} from {offer.supplier or 'nobody named'}"
            unusable.append(_unusable(what, trouble, line.line))
    return Market(currency=currency, quotes=tuple(quotes), senders=senders, unusable=tuple(unusable))


def _key(supplier: str) -> str:
    return " ".join(supplier.casefold().split())


def _latest(offered: Iterable[Line]) -> list[Line]:
    found: dict[tuple[str, frozenset[str], str, int, tuple[str, ...]], Line] = {}
    for line in offered:
        offer: Offered = line.fact
        found[_key(offer.supplier), bare(offer.item), offer.size, offer.pack, offer.at] = line
    return list(found.values())


def _unusable(what: str, trouble: BadInput, line: int) -> Unusable:
    return Unusable(what=what, given=trouble.given, holds=trouble.holds, do=trouble.do, line=line)


def _quote(line: Line, quoted: Line | None, currency: str) -> Quote:
    offer: Offered = line.fact
    terms: Quoted | None = quoted.fact if quoted else None
    if not offer.supplier:
        raise _bad("the offer names no supplier", "who sends it", "Strike it and write it with: from WHOM.")
    if offer.price is None or offer.price < 0:
        raise _bad(
            "the offer has no price" if offer.price is None else f"the price is {offer.price:g}",
            "a price of nothing or more",
            f"Strike line {line.line} and write it with its price.",
        )
    if offer.pack < 1:
        raise _bad(
            f"a pack holds {offer.pack}", "a whole number from 1", f"Strike line {line.line} and count again."
        )
    if offer.grams < 0:
        raise _bad(f"a pack weighs {offer.grams:g} g", "a weight of nothing or more", "Weigh it again.")
    price = _own(offer.price, offer.currency, terms, currency)
    duty = _duty(price, terms)
    told = (offer.quick_days, offer.days, offer.slow_days)
    if not any(days is not None for days in told) and terms is not None:
        told = (terms.quick_days, terms.days, terms.slow_days)
    return Quote(
        item=offer.item, size=offer.size, number=offer.number, supplier=offer.supplier, at=offer.at,
        price=price, duty=duty, pack=offer.pack, grams=round(offer.grams), days=days_told(*told),
        line=line.line, day=line.day,
    )  # fmt: skip


def _duty(price: Money, terms: Quoted | None) -> Money:
    share = Decimal(str(terms.duty)) / 100 if terms is not None else Decimal(0)
    if share < 0:
        raise _bad(f"the duty is {share * 100} in a hundred", "from 0 on", "Write the terms again.")
    return converted(price, share, price.currency)


def _own(amount: float, currency: str, terms: Quoted | None, own: str) -> Money:
    """A sum in the owner's own currency, by the rate the owner wrote down."""
    typed = known_currency(currency or (terms.currency if terms else "") or own)
    if typed == own:
        return money(amount, own)
    if terms is None or not terms.rate or typed != known_currency(terms.currency or own):
        raise _bad(
            f"the price is in {typed}, and no rate is written for it",
            f"how many {own} one {typed} costs",
            "Write the supplier's terms with currency and rate: no rate is looked up.",
        )
    rate = read_number(terms.rate)
    if rate <= 0:
        raise _bad(f"the rate is {terms.rate}", "a rate above 0", "Write the supplier's terms again.")
    return converted(money(amount, typed), Decimal(str(rate)), own)


def _sender(state: State, name: str, quoted: Line | None, own: str) -> Sender:
    """A supplier's post as tiers. Without terms, the flat post that its latest offer told."""
    if quoted is None:
        posts = [
            line.fact.post
            for line in state.supply.offered
            if _key(line.fact.supplier) == _key(name) and line.fact.post is not None
        ]
        if posts and posts[-1] < 0:
            raise _bad(f"the post is {posts[-1]:g}", "post of nothing or more", "Write the offer again.")
        flat = money(posts[-1], own).minor if posts else 0
        return Sender(name=name, terms=Supplier(tiers=(Tier(post=flat),)))
    terms: Quoted = quoted.fact
    for told in (*(step.price for step in terms.post), terms.free_above or 0, terms.minimum or 0):
        if told < 0:
            raise _bad(f"a sum in the terms is {told:g}", "sums of nothing or more", "Write the terms again.")
    tiers = [
        Tier(
            post=_own(step.price, "", terms, own).minor,
            most_weight=round(step.most_grams) if step.most_grams else None,
        )
        for step in terms.post
    ] or [Tier(post=0)]
    free = _own(terms.free_above, "", terms, own) if terms.free_above is not None else None
    if free is not None:
        heaviest = (
            None if any(t.most_weight is None for t in tiers) else max(t.most_weight or 0 for t in tiers)
        )
        tiers.append(Tier(post=0, least_goods=free.minor, most_weight=heaviest))
    least = _own(terms.minimum, "", terms, own).minor if terms.minimum is not None else 0
    return Sender(
        name=name, terms=Supplier(tiers=tuple(tiers), minimum=least), cut_off=terms.cut_off,
        free_above=free, line=quoted.line,
    )  # fmt: skip


def _bad(given: str, holds: str, do: str) -> BadInput:
    return BadInput(given=given, holds=holds, do=do)


# ---- which offer answers which need


def answering(state: State, stock: Stock, market: Market, need: Need) -> Iterator[Quote]:
    """The offers that answer a need: by the supplier's number, by size, or by name as stock is compared."""
    items = [_item(state, name, need) for name in need.for_] or [Item(what=need.what, size=need.size)]
    for quote in market.quotes:
        if any(_answers(stock, quote, item) for item in items):
            yield quote


def _item(state: State, name: str, need: Need) -> Item:
    if name in state.vehicle.joints:
        known = renewal_item(state, name, need.what)
        return Item(what=need.what, for_=name, size=need.size, words=known.words)
    return Item(what=need.what, for_=name, size=need.size)


def _answers(stock: Stock, quote: Quote, item: Item) -> bool:
    same = bare(quote.item) == bare(item.what)
    if quote.at and item.for_ and item.for_ not in quote.at and not same:
        return False
    if quote.number and item.size and quote.number.casefold() == item.size.casefold():
        return True
    if quote.size and item.size:
        if dimensions(quote.size) != dimensions(item.size):
            return False
        if _parts(quote.item) & _parts(item.what) & BY_SIZE:
            return True
    at = () if same else quote.at
    held = Held(what=quote.item, size=quote.size, at=at, line=quote.line, number=quote.pack)
    return answers(held, item, stock.is_own(item))


def _parts(name: str) -> frozenset[str]:
    """The telling words of a name, a hyphened one as its parts."""
    return frozenset(part for word in bare(name) for part in word.split("-"))
