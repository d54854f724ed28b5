"""What to order tonight: the cheapest basket, and the few others that buy a session back for money."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import date, datetime

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.buy.arrival import chance_within, comes, posting_days, sent_on
from witnessmark.buy.needed import OnDonor, Required
from witnessmark.buy.offers import Market, Quote, Sender, Unusable, answering
from witnessmark.engines.basket import Basket, BasketProblem, Offer, best_basket, post_of
from witnessmark.engines.basket_faults import basket_faults
from witnessmark.ground.errors import WitnessMarkError
from witnessmark.ground.money import Money, total
from witnessmark.owed.needs import Need
from witnessmark.owed.stock import Stock
from witnessmark.state.standing import State

MOST_POINTS = 4


class Bought(Struct, frozen=True, kw_only=True):
    """One line of an order: so many packs of one offer, what for, and the session that needs it first."""

    quote: Quote
    need: Need
    packs: int
    by: date | None
    holds: bool

    @property
    def price(self) -> Money:
        return Money(self.quote.price.minor * self.packs, self.quote.price.currency)

    @property
    def duty(self) -> Money:
        return Money(self.quote.duty.minor * self.packs, self.quote.duty.currency)


class Parcel(Struct, frozen=True, kw_only=True):
    """What one supplier sends.

    likely, latest  the days it comes: half of such parcels by then, nine in ten by then
    sent            the day it goes, if it is ordered now; cut_off: until when on that day
    to_free_post    what is missing to post without charge; None where it is free or never is
    """

    supplier: str
    lines: tuple[Bought, ...]
    goods: Money
    post: Money
    duty: Money
    grams: int
    sent: date
    likely: date
    latest: date
    cut_off: str = ""
    to_free_post: Money | None = None

    @property
    def paid(self) -> Money:
        return self.goods + self.post + self.duty


class Choice(Struct, frozen=True, kw_only=True):
    """One basket worth knowing: its money, and the sessions it would lose if parcels came at their latest.

    at_least  no basket that loses so few sessions costs less; chance: that all which the first session
              waits for is here in time
    """

    parcels: tuple[Parcel, ...]
    money: Money
    lost: tuple[date, ...]
    proven: bool
    at_least: Money
    chance: float


class Adding(Struct, frozen=True, kw_only=True):
    """A thing for later that fits a parcel of tonight: what it costs now; what by itself another day."""

    line: Bought
    supplier: str
    now: Money
    later: Money
    post: Money


class Buying(Struct, frozen=True, kw_only=True):
    """The answer.

    chosen    which of the choices; they stand by money, the fewest sessions lost last
    worth     what a lost session is worth to the owner; None where nobody said
    even      up to this worth of a session the cheaper basket next to the chosen one would be the better
    nobody    needed, and offered by nobody; unsent: offered, but so little of it nobody sends
    donor     on the other vehicle, before anything is bought
    """

    sessions: tuple[date, ...]
    choices: tuple[Choice, ...]
    chosen: int
    worth: Money | None
    even: Money | None
    adding: tuple[Adding, ...]
    nobody: tuple[Required, ...]
    unsent: tuple[Required, ...]
    donor: tuple[OnDonor, ...]
    unusable: tuple[Unusable, ...]
    currency: str

    @property
    def choice(self) -> Choice | None:
        return self.choices[self.chosen] if self.choices else None


class Asked(Struct, frozen=True, kw_only=True):
    """The moment, the coming sessions, a lost session's worth, a seed, and what tells the seconds left."""

    now: datetime
    sessions: tuple[date, ...]
    worth: Money | None = None
    seed: int = 0
    left: Callable[[], float] | None = None


def buying(
    state: State, market: Market, wanted: Sequence[Required], donor: Sequence[OnDonor], asked: Asked
) -> Buying:
    """The baskets for what the coming sessions need, and what else may ride along without post.

    wanted  what is short, own stock set against it; donor: what of it the other vehicle has
    """
    there = {id(one.need) for one in donor if not one.doubt}
    shop = _Shop(state, market, [one for one in wanted if id(one.need) not in there], asked)
    soon = [n for n, one in enumerate(shop.wanted) if one.by < len(asked.sessions)]
    tonight = soon or list(range(len(shop.wanted)))
    choices = shop.choices(tonight)
    chosen, even = _chosen(choices, asked.worth)
    later = [n for n in range(len(shop.wanted)) if n not in tonight]
    return Buying(
        sessions=asked.sessions,
        choices=choices,
        chosen=chosen,
        worth=asked.worth,
        even=even,
        adding=shop.adding(choices[chosen], later) if choices else (),
        nobody=shop.nobody,
        unsent=tuple(shop.wanted[n] for n in sorted(shop.unsent)),
        donor=tuple(donor),
        unusable=market.unusable,
        currency=market.currency,
    )


def _chosen(choices: Sequence[Choice], worth: Money | None) -> tuple[int, Money | None]:
    """The best by the owner's worth of a session; without one, the fewest sessions lost."""
    if not choices:
        return 0, None
    last = len(choices) - 1
    chosen = last
    if worth is not None:
        chosen = min(
            range(len(choices)),
            key=lambda n: (choices[n].money.minor + worth.minor * len(choices[n].lost), -n),
        )
    if chosen == 0:
        return chosen, None
    before, here = choices[chosen - 1], choices[chosen]
    saved = len(before.lost) - len(here.lost)
    return chosen, Money((here.money.minor - before.money.minor) // saved, here.money.currency)


Meant = list[tuple[int, Quote]]


class _Shop:
    """Needs, offers and senders numbered for the engine, and its answers told in words again."""

    def __init__(self, state: State, market: Market, wanted: Iterable[Required], asked: Asked) -> None:
        self.market, self.asked = market, asked
        stock = Stock(state)
        found = [(one, tuple(answering(state, stock, market, one.need))) for one in wanted]
        self.nobody = tuple(one for one, quotes in found if not quotes)
        self.wanted = [one for one, quotes in found if quotes]
        self.quotes = [quotes for _, quotes in found if quotes]
        self.senders: list[Sender] = list(market.senders.values())
        self.sender_of = {key: n for n, key in enumerate(market.senders)}
        self.unsent: set[int] = set()
        self.sent = [sent_on(asked.now, sender.cut_off) for sender in self.senders]

    def number_of(self, quote: Quote) -> int:
        return self.sender_of[" ".join(quote.supplier.casefold().split())]

    # ---- choices

    def choices(self, needs: Sequence[int]) -> tuple[Choice, ...]:
        """Baskets from the cheapest on, each with fewer lost sessions than the one before it."""
        found: list[Choice] = []
        most: int | None = None
        while needs and (most is None or most >= 0):
            problem, meant = self.problem(needs, most)
            left = None if self.asked.left is None else max(0.05, self.asked.left())
            basket = best_basket(problem, seconds=left, seed=self.asked.seed)
            if basket is None:
                self.unsent |= set() if found else set(needs)
                break
            self.unsent |= {needs[n] for n in basket.unmet}
            if not basket.packs:
                break
            wrong = basket_faults(problem, basket)
            if wrong:
                raise WitnessMarkError(f"a basket did not stand its second reading: {'; '.join(wrong)}")
            choice = self._choice(basket, meant)
            found = [*(one for one in found if one.money < choice.money), choice]
            most = len(basket.lost) - 1
        return _few(found)

    def problem(self, needs: Sequence[int], most: int | None) -> tuple[BasketProblem, Meant]:
        """The engine's problem, and for each of its offers the need and quote that are meant."""
        meant = [(n, quote) for n in needs for quote in self.quotes[n]]
        place = {n: at for at, n in enumerate(needs)}
        offers = tuple(
            Offer(
                need=place[n],
                supplier=self.number_of(quote),
                price=quote.price.minor,
                pack=quote.pack,
                weight=quote.grams,
                duty=quote.duty.minor,
                misses=self._misses(self.wanted[n], quote),
            )
            for n, quote in meant
        )
        problem = BasketProblem(
            needs=tuple(self.wanted[n].pieces for n in needs),
            offers=offers,
            suppliers=tuple(sender.terms for sender in self.senders),
            most_lost=most,
        )
        return problem, meant

    def _misses(self, one: Required, quote: Quote) -> tuple[int, ...]:
        """The sessions from its own on that go by before a parcel at its latest is here."""
        if not one.holds:
            return ()
        latest = comes(self.sent[self.number_of(quote)], quote.days.slow)
        sessions = enumerate(self.asked.sessions)
        return tuple(n for n, day in sessions if n >= one.by and day < latest)

    def _choice(self, basket: Basket, meant: Meant) -> Choice:
        by_sender: dict[int, list[Bought]] = {}
        for number, packs in basket.packs.items():
            need, quote = meant[number]
            by_sender.setdefault(self.number_of(quote), []).append(self._bought(need, quote, packs))
        parcels = tuple(self._parcel(sender, lines) for sender, lines in sorted(by_sender.items()))
        return Choice(
            parcels=parcels,
            money=Money(basket.money, self.market.currency),
            lost=tuple(self.asked.sessions[n] for n in basket.lost),
            proven=basket.proven,
            at_least=Money(min(basket.bound, basket.money), self.market.currency),
            chance=self._chance(parcels),
        )

    def _bought(self, need: int, quote: Quote, packs: int) -> Bought:
        one = self.wanted[need]
        by = self.asked.sessions[one.by] if one.by < len(self.asked.sessions) else None
        return Bought(quote=quote, need=one.need, packs=packs, by=by, holds=one.holds)

    def _parcel(self, sender: int, lines: Sequence[Bought]) -> Parcel:
        told, currency = self.senders[sender], self.market.currency
        goods = total((line.price for line in lines), currency)
        grams = sum(line.packs * line.quote.grams for line in lines)
        post = (post_of(told.terms, goods.minor, grams) or (0, 0))[1]
        slowest = max((line.quote.days for line in lines), key=lambda days: (days.slow, days.likely))
        missing = told.free_above - goods if told.free_above and told.free_above > goods and post else None
        return Parcel(
            supplier=told.name,
            lines=tuple(sorted(lines, key=lambda line: line.quote.item)),
            goods=goods,
            post=Money(post, currency),
            duty=total((line.duty for line in lines), currency),
            grams=grams,
            sent=self.sent[sender],
            likely=comes(self.sent[sender], slowest.likely),
            latest=comes(self.sent[sender], slowest.slow),
            cut_off=told.cut_off if self.sent[sender] == self.asked.now.date() else "",
            to_free_post=missing,
        )

    def _chance(self, parcels: Iterable[Parcel]) -> float:
        """That every parcel the first session waits for is here on its day; parcels come each by itself."""
        first = self.asked.sessions[0] if self.asked.sessions else None
        chance = 1.0
        for parcel in parcels:
            waited = [line.quote.days for line in parcel.lines if line.holds and line.by == first and first]
            if waited and first:
                slowest = max(waited, key=lambda days: days.slow)
                chance *= chance_within(slowest, posting_days(parcel.sent, first))
        return chance

    # ---- riding along

    def adding(self, choice: Choice, later: Sequence[int]) -> tuple[Adding, ...]:
        """Things for later that cost no more post in a parcel of tonight, each laid in before the next."""
        weight = {p.supplier: (p.goods.minor, p.grams, p.post.minor) for p in choice.parcels}
        found = []
        for need in later:
            best = min(
                (one for quote in self.quotes[need] if (one := self._added(need, quote, weight)) is not None),
                key=lambda one: one.now,
                default=None,
            )
            if best is not None and best.now < best.later:
                found.append(best)
                goods, grams, _ = weight[best.supplier]
                line = best.line
                goods += line.price.minor
                grams += line.packs * line.quote.grams
                sender = self.senders[self.number_of(line.quote)]
                weight[best.supplier] = goods, grams, (post_of(sender.terms, goods, grams) or (0, 0))[1]
        return tuple(found)

    def _added(self, need: int, quote: Quote, weight: dict[str, tuple[int, int, int]]) -> Adding | None:
        """This offer in a parcel that goes anyway, if it changes the post by nothing or for the better."""
        number = self.number_of(quote)
        sender = self.senders[number]
        if sender.name not in weight:
            return None
        goods, grams, post = weight[sender.name]
        line = self._bought(need, quote, -(-self.wanted[need].pieces // quote.pack))
        after = post_of(sender.terms, goods + line.price.minor, grams + line.packs * quote.grams)
        alone = self._alone(need)
        if after is None or after[1] > post or alone is None:
            return None
        now = replace(line.price, minor=line.price.minor + line.duty.minor + after[1] - post)
        less = Money(after[1] - post, self.market.currency)
        return Adding(line=line, supplier=sender.name, now=now, later=alone, post=less)

    def _alone(self, need: int) -> Money | None:
        """What it costs by itself another day, at the cheapest sender."""
        problem, _ = self.problem([need], None)
        basket = best_basket(problem, seed=self.asked.seed)
        return Money(basket.money, self.market.currency) if basket and basket.packs else None


def _few(choices: Sequence[Choice]) -> tuple[Choice, ...]:
    """At most four: the cheapest, the one that loses least, and those between that save most a session."""
    if len(choices) <= MOST_POINTS:
        return tuple(choices)
    inner = sorted(
        range(1, len(choices) - 1),
        key=lambda n: (
            (choices[n].money.minor - choices[n - 1].money.minor)
            // (len(choices[n - 1].lost) - len(choices[n].lost))
        ),
    )
    kept = sorted({0, len(choices) - 1, *inner[: MOST_POINTS - 2]})
    return tuple(choices[n] for n in kept)
