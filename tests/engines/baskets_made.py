"""Small baskets for tests, and the answer found by trying all of them."""

from __future__ import annotations

from itertools import product

from hypothesis import strategies as st

from witnessmark.engines.basket import BasketProblem, Offer, Supplier, Tier

SESSIONS = 3


@st.composite
def tiers(draw: st.DrawFn) -> Tier:
    return Tier(
        post=draw(st.integers(0, 900)),
        most_weight=draw(st.none() | st.integers(0, 900)),
        least_goods=draw(st.sampled_from((0, 0, 500, 1500))),
    )


@st.composite
def basket_problems(draw: st.DrawFn) -> BasketProblem:
    """Any problem of up to three needs, three senders and seven offers."""
    needs = draw(st.lists(st.integers(1, 4), min_size=1, max_size=3).map(tuple))
    sender = st.builds(
        Supplier,
        tiers=st.lists(tiers(), min_size=1, max_size=3).map(tuple),
        minimum=st.sampled_from((0, 0, 400)),
    )
    senders = draw(st.lists(sender, min_size=1, max_size=3).map(tuple))
    offer = st.builds(
        Offer,
        need=st.integers(0, len(needs) - 1),
        supplier=st.integers(0, len(senders) - 1),
        price=st.integers(1, 900),
        pack=st.integers(1, 3),
        weight=st.integers(0, 400),
        duty=st.integers(0, 50),
        misses=st.lists(st.integers(0, SESSIONS - 1), max_size=2, unique=True).map(
            lambda s: tuple(sorted(s))
        ),
    )
    return BasketProblem(
        needs=needs,
        offers=draw(st.lists(offer, min_size=1, max_size=7).map(tuple)),
        suppliers=senders,
        worth=draw(st.sampled_from((0, 100, 4000))),
        most_lost=draw(st.none() | st.integers(0, SESSIONS)),
    )


def every_cost(problem: BasketProblem, unmet: tuple[int, ...]) -> list[int]:
    """What each basket costs that brings all but the unmet and can be sent, cheapest first."""
    counts = [range(5) if offer.need not in unmet else (0,) for offer in problem.offers]
    found = (_cost(problem, packs, unmet) for packs in product(*counts))
    return sorted(cost for cost in found if cost is not None)


def _cost(problem: BasketProblem, packs: tuple[int, ...], unmet: tuple[int, ...]) -> int | None:
    for need, wanted in enumerate(problem.needs):
        if need in unmet:
            continue
        offers = [(o, n) for o, n in zip(problem.offers, packs, strict=True) if o.need == need]
        pieces = sum(o.pack * n for o, n in offers)
        if not wanted <= pieces <= wanted + max(o.pack for o, _ in offers) - 1:
            return None
    total, missed = 0, set()
    for number, sender in enumerate(problem.suppliers):
        mine = [(o, n) for o, n in zip(problem.offers, packs, strict=True) if n and o.supplier == number]
        if not mine:
            continue
        goods, weight = sum(o.price * n for o, n in mine), sum(o.weight * n for o, n in mine)
        posts = [
            t.post
            for t in sender.tiers
            if (t.most_weight is None or weight <= t.most_weight) and goods >= t.least_goods
        ]
        if goods < sender.minimum or not posts:
            return None
        total += goods + min(posts) + sum(o.duty * n for o, n in mine)
        missed |= {session for o, _ in mine for session in o.misses}
    if problem.most_lost is not None and len(missed) > problem.most_lost:
        return None
    return total + problem.worth * len(missed)
