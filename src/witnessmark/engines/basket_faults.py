"""A second reading of a basket by plain adding up: is all there, can it be sent, is the money right?"""

from __future__ import annotations

from collections import Counter

from witnessmark.engines.basket import Basket, BasketProblem, Offer


def basket_faults(problem: BasketProblem, basket: Basket) -> tuple[str, ...]:
    """What is wrong with an answer, each in one line; nothing when it holds.

    >>> from witnessmark.engines.basket import Offer, Supplier, best_basket
    >>> offers = (Offer(need=0, supplier=0, price=500, pack=2),)
    >>> problem = BasketProblem(needs=(3,), offers=offers, suppliers=(Supplier(),))
    >>> basket_faults(problem, best_basket(problem))
    ()
    """
    wrong = [*_pieces(problem, basket), *_money(problem, basket)]
    missed: set[int] = set()
    for number, count in basket.packs.items():
        if count > 0:
            missed.update(problem.offers[number].misses)
    if missed != set(basket.lost) or len(basket.lost) != len(missed):
        wrong.append(f"the sessions lost are {sorted(missed)}, not {list(basket.lost)}")
    if problem.most_lost is not None and len(missed) > problem.most_lost:
        wrong.append(f"{len(missed)} sessions are lost, more than {problem.most_lost}")
    total = basket.goods + basket.post + basket.duty + len(missed) * problem.worth
    if total != basket.cost:
        wrong.append(f"the cost said is {basket.cost}, it is {total}")
    if basket.bound > basket.cost or (basket.proven and basket.bound != basket.cost):
        wrong.append(f"the bound {basket.bound} does not go with the cost {basket.cost}")
    return tuple(wrong)


def _pieces(problem: BasketProblem, basket: Basket) -> list[str]:
    """Every need met, or truly offered by nobody."""
    wrong = [f"offer {n} is bought {count} times" for n, count in basket.packs.items() if count < 1]
    pieces: Counter[int] = Counter()
    for number, count in basket.packs.items():
        pieces[problem.offers[number].need] += count * problem.offers[number].pack
    for need, wanted in enumerate(problem.needs):
        if need in basket.unmet:
            if any(o.need == need and _could_be_sent(problem, o) for o in problem.offers):
                wrong.append(f"need {need} is called unmet though it is offered")
        elif not wanted <= pieces[need] < wanted + max(o.pack for o in problem.offers if o.need == need):
            wrong.append(f"need {need} gets {pieces[need]} of {wanted}")
    return wrong


def _could_be_sent(problem: BasketProblem, offer: Offer) -> bool:
    """By some tier, and with all that the same sender has to offer above its minimum."""
    sender = problem.suppliers[offer.supplier]
    together = 0
    for other in problem.offers:
        limits = [t.most_weight for t in sender.tiers]
        if other.supplier == offer.supplier and other.pack > 0:
            if all(limit is not None and limit < other.weight for limit in limits):
                if other is offer:
                    return False
                continue
            together += -(-problem.needs[other.need] // other.pack) * other.price
    least = min(tier.least_goods for tier in sender.tiers)
    return offer.pack > 0 and together >= sender.minimum and together >= least


def _money(problem: BasketProblem, basket: Basket) -> list[str]:
    """Goods, duty and each parcel's post, against the tier it is said to go by and every cheaper one."""
    wrong: list[str] = []
    goods: Counter[int] = Counter()
    weight: Counter[int] = Counter()
    duty = 0
    for number, count in basket.packs.items():
        offer = problem.offers[number]
        goods[offer.supplier] += count * offer.price
        weight[offer.supplier] += count * offer.weight
        duty += count * offer.duty
    post = 0
    for supplier in set(goods) | set(basket.tiers):
        sender = problem.suppliers[supplier]
        number = basket.tiers.get(supplier, -1)
        if supplier not in goods or not 0 <= number < len(sender.tiers):
            wrong.append(f"the parcel of {supplier} goes by no tier, or is empty")
            continue
        tier = sender.tiers[number]
        post += tier.post
        if tier.most_weight is not None and weight[supplier] > tier.most_weight:
            wrong.append(f"the parcel of {supplier} weighs {weight[supplier]} g")
        if goods[supplier] < max(tier.least_goods, sender.minimum):
            wrong.append(f"the goods of {supplier} come to {goods[supplier]} only")
    if (sum(goods.values()), duty, post) != (basket.goods, basket.duty, basket.post):
        wrong.append("goods, duty or post do not add up")
    return wrong
