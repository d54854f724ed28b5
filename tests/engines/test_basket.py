"""The cheapest basket against all baskets, against another solver to the coin, and where it is cut short."""

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from benchmarks.basket import made
from benchmarks.second_solver import second_basket
from tests.engines.baskets_made import basket_problems, every_cost
from witnessmark.engines.basket import (
    BasketProblem,
    Offer,
    Supplier,
    Tier,
    best_basket,
    cheapest_each,
    priced,
    sendable,
)
from witnessmark.engines.basket_faults import basket_faults


@settings(max_examples=150)
@given(basket_problems())
def test_no_basket_is_cheaper(problem: BasketProblem) -> None:
    basket = best_basket(problem)
    costs = every_cost(problem, sendable(problem)[1])
    assert (basket is None) == (not costs)
    if basket is not None:
        assert basket_faults(problem, basket) == ()
        assert basket.proven
        assert basket.cost == basket.bound == costs[0]


@pytest.mark.parametrize("seed", range(8))
def test_two_solvers_agree_to_the_coin(seed: int) -> None:
    problem = made(14, 5, seed)
    basket = best_basket(problem)
    assert basket is not None
    assert (basket.proven, basket_faults(problem, basket)) == (True, ())
    other = second_basket(problem)
    assert other.proven
    assert basket.cost == other.cost


def test_it_is_cheaper_than_the_cheapest_offer_each() -> None:
    for seed in range(4):
        problem = made(40, 8, seed)
        problem = replace(problem, suppliers=tuple(replace(s, minimum=0) for s in problem.suppliers))
        basket, each = best_basket(problem), cheapest_each(problem)
        assert basket is not None
        assert each is not None
        assert basket.cost < priced(problem, each).cost


def test_stopped_at_once_it_states_its_distance() -> None:
    problem = made(60, 12, 1)
    whole, cut_short = best_basket(problem), best_basket(problem, nodes=0, seconds=0.02)
    assert whole is not None
    assert cut_short is not None
    assert basket_faults(problem, cut_short) == ()
    assert cut_short.bound <= whole.cost <= cut_short.cost


def test_stopped_by_nodes_it_gives_the_same_answer_again() -> None:
    problem = made(60, 12, 2)
    assert best_basket(problem, nodes=5, seed=3) == best_basket(problem, nodes=5, seed=3)


FREE_ABOVE = Supplier(tiers=(Tier(post=495), Tier(post=0, least_goods=2000)))


def test_a_dearer_offer_wins_where_it_brings_the_parcel_over_free_post() -> None:
    offers = (
        Offer(need=0, supplier=0, price=1500),
        Offer(need=1, supplier=0, price=600),
        Offer(need=1, supplier=1, price=450),
    )
    problem = BasketProblem(needs=(1, 1), offers=offers, suppliers=(FREE_ABOVE, Supplier()))
    basket = best_basket(problem)
    assert basket is not None
    assert (basket.packs, basket.post) == ({0: 1, 1: 1}, 0)


def test_a_second_one_that_nobody_needs_is_not_bought_for_the_post() -> None:
    problem = BasketProblem(
        needs=(1,), offers=(Offer(need=0, supplier=0, price=1800),), suppliers=(FREE_ABOVE,)
    )
    basket = best_basket(problem)
    assert basket is not None
    assert (basket.packs, basket.post) == ({0: 1}, 495)


def test_a_session_that_two_parcels_miss_is_lost_once() -> None:
    late = [Offer(need=n, supplier=n, price=100, misses=(0,)) for n in (0, 1)]
    problem = BasketProblem(needs=(1, 1), offers=tuple(late), suppliers=(Supplier(), Supplier()), worth=4000)
    basket = best_basket(problem)
    assert basket is not None
    assert (basket.cost, basket.lost) == (4200, (0,))
    assert best_basket(replace(problem, most_lost=0)) is None


def test_what_nobody_offers_is_named_and_the_rest_is_bought() -> None:
    heavy = Offer(need=1, supplier=0, price=100, weight=5000)
    light = Supplier(tiers=(Tier(post=300, most_weight=2000),))
    offers = (Offer(need=0, supplier=0, price=100, weight=10), heavy)
    basket = best_basket(BasketProblem(needs=(1, 1, 1), offers=offers, suppliers=(light,)))
    assert basket is not None
    assert (basket.unmet, basket.packs) == ((1, 2), {0: 1})


def test_the_second_reading_sees_each_fault() -> None:
    problem = made(6, 3, 0)
    good = best_basket(problem)
    assert good is not None
    first = next(iter(good.packs))
    sender = problem.offers[first].supplier
    for wrong in (
        replace(good, packs={n: c for n, c in good.packs.items() if n != first}),
        replace(good, packs={**good.packs, first: good.packs[first] + 9}),
        replace(good, tiers={s: n for s, n in good.tiers.items() if s != sender}),
        replace(good, post=good.post + 1),
        replace(good, cost=good.cost - 1, bound=good.cost - 1),
        replace(good, lost=(*good.lost, 9)),
        replace(good, bound=good.cost + 1),
        replace(good, unmet=(0,)),
    ):
        assert basket_faults(problem, wrong)
