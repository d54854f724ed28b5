"""How long the cheapest basket takes on made needs, offers and posts, and what it saves.

    .venv/bin/python benchmarks/basket.py --items 200 --suppliers 25 --seed 0

Prints one line of JSON, money in the smallest coin. How the baskets are made stands in docs/performance.md.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
from pathlib import Path

from witnessmark.engines.basket import (
    BasketProblem,
    Offer,
    Supplier,
    Tier,
    best_basket,
    cheapest_each,
    priced,
)
from witnessmark.engines.basket_faults import basket_faults

SESSIONS = 4
WORTH = 4000


def made(items: int, suppliers: int, seed: int) -> BasketProblem:
    """Suppliers that carry a third of everything each, most with post by weight, some free above a sum.

    A thing costs 60 pence to 120 pounds, most of them little; suppliers differ by a tenth or so. Small
    things come in packs too. One supplier in four takes no order below a sum, one in five asks duty.
    Each is quick or slow; a thing needed for an early session misses it where the post is slow.
    """
    draw = random.Random(seed)
    senders = tuple(_sender(draw) for _ in range(suppliers))
    slow = [draw.choice((0, 0, 0, 1, 1, 2)) for _ in range(suppliers)]
    dutiable = [draw.random() < 0.2 for _ in range(suppliers)]
    needs, offers = [], []
    for need in range(items):
        needs.append(draw.choice((1, 1, 1, 1, 2, 2, 4, 6)))
        base = max(60, round(draw.lognormvariate(6.5, 1.1)))
        weight = max(5, round(draw.lognormvariate(4.6, 1.2)))
        by = draw.choice((0, 1, 2, 3, SESSIONS, SESSIONS))
        carried = [s for s in range(suppliers) if draw.random() < 0.33] or [draw.randrange(suppliers)]
        for s in carried:
            price = max(10, round(base * draw.lognormvariate(0, 0.12)))
            pack = draw.choice((1, 1, 1, 2, 5)) if base < 500 else 1
            offers.append(
                Offer(
                    need=need,
                    supplier=s,
                    price=round(price * pack * (0.9 if pack > 1 else 1)),
                    pack=pack,
                    weight=weight * pack,
                    duty=price * pack // 10 if dutiable[s] else 0,
                    misses=tuple(range(by, min(SESSIONS, by + slow[s]))),
                )
            )
    return BasketProblem(needs=tuple(needs), offers=tuple(offers), suppliers=senders, worth=WORTH)


def _sender(draw: random.Random) -> Supplier:
    first = draw.randrange(250, 600)
    tiers = [
        Tier(post=first, most_weight=1000),
        Tier(post=first + draw.randrange(100, 300), most_weight=5000),
        Tier(post=first + draw.randrange(400, 900), most_weight=30000),
        Tier(post=first + 2500),
    ]
    if draw.random() < 0.6:
        tiers.append(Tier(post=0, least_goods=draw.randrange(4000, 15000), most_weight=30000))
    return Supplier(tiers=tuple(tiers), minimum=draw.choice((0, 0, 0, draw.randrange(1000, 3000))))


def main() -> None:
    """Make needs and offers, find the basket, read it a second time, tell it beside the cheapest each."""
    words = argparse.ArgumentParser()
    words.add_argument("--items", type=int, default=200)
    words.add_argument("--suppliers", type=int, default=25)
    words.add_argument("--seed", type=int, default=0)
    words.add_argument("--seconds", type=float, default=10.0)
    words.add_argument("--peer", type=float, default=0, metavar="SECONDS", help="also ask another solver")
    asked = words.parse_args()
    problem = made(asked.items, asked.suppliers, asked.seed)
    started = time.perf_counter()
    import witnessmark.engines.basket_model  # noqa: F401  read before the clock runs

    loaded = time.perf_counter()
    basket = best_basket(problem, seconds=asked.seconds, seed=asked.seed)
    taken = time.perf_counter() - loaded
    each = cheapest_each(problem)
    assert basket is not None
    assert each is not None
    told: dict[str, object] = {
        "items": asked.items,
        "suppliers": asked.suppliers,
        "offers": len(problem.offers),
        "cost": basket.cost,
        "bound": basket.bound,
        "proven": basket.proven,
        "seconds": round(taken, 4),
        "loading_seconds": round(loaded - started, 4),
        "cheapest_each": priced(problem, each).cost,
        "money": basket.money,
        "sessions_lost": len(basket.lost),
        "parcels": len(basket.tiers),
        "faults": list(basket_faults(problem, basket)),
    }
    if asked.peer:
        sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
        from benchmarks.second_solver import second_basket

        other = second_basket(problem, seconds=asked.peer, workers=2)
        told |= {
            "peer_cost": other.cost,
            "peer_proven": other.proven,
            "peer_seconds": round(other.seconds, 4),
        }
    print(json.dumps(told))


if __name__ == "__main__":
    main()
