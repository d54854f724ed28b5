"""The cheapest basket: what to buy from whom so that all that is needed comes, with post and lost sessions.

Everything is a whole number: money in the smallest coin, weight in grams, pieces in packs. A session is
lost once, however many parcels miss it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil, inf

from msgspec import Struct
from msgspec.structs import replace

NODES = 20_000


class Tier(Struct, frozen=True, kw_only=True):
    """The post of a parcel that weighs no more than `most_weight` and whose goods come to `least_goods`."""

    post: int
    most_weight: int | None = None
    least_goods: int = 0


class Supplier(Struct, frozen=True, kw_only=True):
    """One sender: one parcel, by the cheapest tier that fits; nothing is sent below the minimum of goods."""

    tiers: tuple[Tier, ...] = (Tier(post=0),)
    minimum: int = 0


class Offer(Struct, frozen=True, kw_only=True):
    """Packs of one needed thing from one sender.

    price   of a pack, as the sender counts it; duty: what comes on top and counts towards no free post
    pack    pieces in a pack
    misses  sessions, by number, that are lost where this is waited for
    """

    need: int
    supplier: int
    price: int
    pack: int = 1
    weight: int = 0
    duty: int = 0
    misses: tuple[int, ...] = ()


class BasketProblem(Struct, frozen=True, kw_only=True):
    """Needs, offers and senders are numbered from 0.

    needs      pieces needed of each thing
    worth      what a lost session costs
    most_lost  how many sessions may be lost; None where only their worth counts
    """

    needs: tuple[int, ...]
    offers: tuple[Offer, ...]
    suppliers: tuple[Supplier, ...]
    worth: int = 0
    most_lost: int | None = None

    def most_packs(self, offer: Offer) -> int:
        """More packs than these of one offer are never bought."""
        return ceil(self.needs[offer.need] / offer.pack)

    def most_pieces(self) -> list[int]:
        """For each need the pieces that are never exceeded: what is over is less than the largest pack."""
        largest = [1] * len(self.needs)
        for offer in self.offers:
            if offer.need >= 0:
                largest[offer.need] = max(largest[offer.need], offer.pack)
        return [needed + pack - 1 for needed, pack in zip(self.needs, largest, strict=True)]


class Basket(Struct, frozen=True, kw_only=True):
    """What is bought.

    packs   offer -> how many packs; tiers: sender -> number of its tier
    goods, post, duty  the money; lost: the sessions lost
    cost    money, and the worth of the lost sessions; bound: no basket costs less
    unmet   needs that nobody offers, or that nobody can send
    """

    packs: Mapping[int, int]
    tiers: Mapping[int, int]
    goods: int
    post: int
    duty: int
    lost: tuple[int, ...]
    cost: int
    bound: int
    proven: bool
    unmet: tuple[int, ...] = ()

    @property
    def money(self) -> int:
        return self.goods + self.post + self.duty


def best_basket(
    problem: BasketProblem, *, nodes: int = NODES, seconds: float | None = None, seed: int = 0
) -> Basket | None:
    """The cheapest basket, or a good one with its bound; None where the lost sessions cannot be kept so few.

    nodes    where to stop; by these alone the same problem gives the same answer
    seconds  only a shell passes them; where they were too few to find any, None as well

    >>> offers = (Offer(need=0, supplier=0, price=640), Offer(need=0, supplier=1, price=600))
    >>> posts = (Supplier(tiers=(Tier(post=100),)), Supplier(tiers=(Tier(post=350),)))
    >>> best = best_basket(BasketProblem(needs=(1,), offers=offers, suppliers=posts))
    >>> best.packs, best.cost, best.proven
    ({0: 1}, 740, True)
    """
    problem, unmet = sendable(problem)
    if not any(n not in unmet for n in range(len(problem.needs))):
        return replace(priced(problem, {}), unmet=unmet, proven=True)
    from witnessmark.engines.basket_model import BasketModel

    first = quick_basket(problem)
    model = BasketModel(problem, unmet)
    solved = model.solve(first, nodes=nodes, seconds=seconds, seed=seed)
    found = [packs for packs in (model.packs(solved), first) if packs is not None and allowed(problem, packs)]
    if not found:
        return None
    best = min((priced(problem, packs) for packs in found), key=lambda basket: basket.cost)
    bound = max(ceil(solved.bound - 1e-4), 0) if solved.bound > -inf else 0
    return replace(best, bound=min(bound, best.cost), proven=bound >= best.cost, unmet=unmet)


def sendable(problem: BasketProblem) -> tuple[BasketProblem, tuple[int, ...]]:
    """The problem without offers that could never be sent, and the needs that are left with none.

    A pack may be too heavy for every tier, or all that is needed from a sender stay below its minimum.
    The others' numbers stay: an offer nobody can send is one of no need.
    """
    light = {n for n, offer in enumerate(problem.offers) if _light(problem, offer)}
    most = [0] * len(problem.suppliers)
    for n in light:
        offer = problem.offers[n]
        most[offer.supplier] += offer.price * problem.most_packs(offer)
    able = {n for n in light if _worth_sending(problem, n, most)}
    met = {problem.offers[n].need for n in able}
    offers = tuple(offer if n in able else replace(offer, need=-1) for n, offer in enumerate(problem.offers))
    return replace(problem, offers=offers), tuple(n for n in range(len(problem.needs)) if n not in met)


def _light(problem: BasketProblem, offer: Offer) -> bool:
    tiers = problem.suppliers[offer.supplier].tiers
    return offer.pack > 0 and any(t.most_weight is None or offer.weight <= t.most_weight for t in tiers)


def _worth_sending(problem: BasketProblem, number: int, most: Sequence[int]) -> bool:
    supplier = problem.offers[number].supplier
    sender = problem.suppliers[supplier]
    return most[supplier] >= max(sender.minimum, min(tier.least_goods for tier in sender.tiers))


# ---- money


def post_of(supplier: Supplier, goods: int, weight: int) -> tuple[int, int] | None:
    """The cheapest tier that fits a parcel, as (number, post); None where nothing is sent.

    >>> by_weight = Supplier(tiers=(Tier(post=350, most_weight=1000), Tier(post=0, least_goods=6000)))
    >>> post_of(by_weight, 6000, 800), post_of(by_weight, 5999, 800), post_of(by_weight, 5999, 2000)
    ((1, 0), (0, 350), None)
    """
    if goods < supplier.minimum:
        return None
    fitting = [
        (tier.post, number)
        for number, tier in enumerate(supplier.tiers)
        if goods >= tier.least_goods and (tier.most_weight is None or weight <= tier.most_weight)
    ]
    return (min(fitting)[1], min(fitting)[0]) if fitting else None


def parcels(problem: BasketProblem, packs: Mapping[int, int]) -> dict[int, tuple[int, int]]:
    """Sender -> goods and weight of its parcel."""
    found: dict[int, tuple[int, int]] = {}
    for number, count in packs.items():
        offer = problem.offers[number]
        goods, weight = found.get(offer.supplier, (0, 0))
        found[offer.supplier] = goods + count * offer.price, weight + count * offer.weight
    return found


def allowed(problem: BasketProblem, packs: Mapping[int, int]) -> bool:
    """Whether every parcel can be sent, nothing needed is missing, and few enough sessions are lost."""
    have = [0] * len(problem.needs)
    for number, count in packs.items():
        have[problem.offers[number].need] += count * problem.offers[number].pack
    offered = {offer.need for offer in problem.offers}
    most = problem.most_pieces()
    enough = all(problem.needs[n] <= have[n] <= most[n] for n in offered if n >= 0)
    sent = all(
        post_of(problem.suppliers[supplier], *parcel) is not None
        for supplier, parcel in parcels(problem, packs).items()
    )
    few = problem.most_lost is None or len(lost_sessions(problem, packs)) <= problem.most_lost
    return enough and sent and few


def lost_sessions(problem: BasketProblem, packs: Mapping[int, int]) -> tuple[int, ...]:
    """The sessions that something bought misses, each once."""
    return tuple(sorted({session for number in packs for session in problem.offers[number].misses}))


def priced(problem: BasketProblem, packs: Mapping[int, int]) -> Basket:
    """A choice of packs with its money added up; every parcel by its cheapest tier."""
    tiers, post = {}, 0
    sums = parcels(problem, packs)
    for supplier, parcel in sorted(sums.items()):
        number, paid = post_of(problem.suppliers[supplier], *parcel) or (-1, 0)
        tiers[supplier] = number
        post += paid
    goods = sum(goods for goods, _ in sums.values())
    duty = sum(count * problem.offers[number].duty for number, count in packs.items())
    lost = lost_sessions(problem, packs)
    return Basket(
        packs=dict(sorted(packs.items())),
        tiers=tiers,
        goods=goods,
        post=post,
        duty=duty,
        lost=lost,
        cost=goods + post + duty + problem.worth * len(lost),
        bound=0,
        proven=False,
    )


# ---- a good one, quickly


def cheapest_each(problem: BasketProblem, senders: frozenset[int] | None = None) -> dict[int, int] | None:
    """Of each need the offer whose packs come cheapest, before any post; None where one is missing."""
    by_need: dict[int, tuple[int, int, int]] = {}
    for number, offer in enumerate(problem.offers):
        if offer.need < 0 or (senders is not None and offer.supplier not in senders):
            continue
        count = problem.most_packs(offer)
        price = count * (offer.price + offer.duty) + problem.worth * len(offer.misses)
        by_need[offer.need] = min(by_need.get(offer.need, (price, number, count)), (price, number, count))
    if by_need.keys() != {offer.need for offer in problem.offers if offer.need >= 0}:
        return None
    return {number: count for _, number, count in by_need.values()}


def quick_basket(problem: BasketProblem) -> dict[int, int] | None:
    """The cheapest offer each, then one sender after the other left out as long as that saves."""
    senders = frozenset(range(len(problem.suppliers)))
    best = _within(problem, senders)
    while best is not None:
        cost = priced(problem, best).cost
        used = sorted({problem.offers[number].supplier for number in best})
        tried = [(s, _within(problem, frozenset(used) - {s})) for s in used]
        cheaper = [(priced(problem, packs).cost, s, packs) for s, packs in tried if packs is not None]
        least = min(cheaper, key=lambda one: one[:2], default=None)
        if least is None or least[0] >= cost:
            return best
        best = least[2]
    return best


def _within(problem: BasketProblem, senders: frozenset[int]) -> dict[int, int] | None:
    """The cheapest offer each of these senders; those that would send nothing are left out, one by one."""
    while True:
        packs = cheapest_each(problem, senders)
        if packs is None:
            return None
        refusing = [
            s for s, p in parcels(problem, packs).items() if post_of(problem.suppliers[s], *p) is None
        ]
        if not refusing:
            return packs if allowed(problem, packs) else None
        senders -= {min(refusing)}
