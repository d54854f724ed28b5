"""The same problems asked of another solver (CP-SAT), in a plain formulation: a peer, and a check of ours.

Nothing is shared with the engines but the problems themselves.
"""

from __future__ import annotations

import time
from typing import NamedTuple

from ortools.sat.python import cp_model

from witnessmark.engines.basket import BasketProblem
from witnessmark.engines.cheapest_way import WayProblem

MOST_SESSIONS = 16


class Answer(NamedTuple):
    """What the other solver found: -1 where it found nothing."""

    cost: int
    bound: int
    proven: bool
    seconds: float


def second_way(
    problem: WayProblem, targets: tuple[int, ...], *, seconds: float = 60.0, workers: int = 1
) -> Answer:
    """The cheapest way to these targets, all of which can be reached.

    Kept from circles by levels: whatever goes stands above all that went before it.
    """
    model = cp_model.CpModel()
    size = len(problem.costs)
    goes = [model.new_bool_var("") for _ in range(size)]
    level = [model.new_int_var(0, size, "") for _ in range(size)]
    for thing in range(size):
        if thing in problem.gone:
            model.add(goes[thing] == 1)
            continue
        ways = []
        for route in problem.routes[thing] or ((),):
            way = model.new_bool_var("")
            ways.append(way)
            for member in route:
                model.add_implication(way, goes[member])
                if member not in problem.gone:
                    model.add(level[thing] > level[member]).only_enforce_if(way)
        model.add_bool_or([*ways, goes[thing].negated()])
        if thing in targets:
            model.add_bool_or(ways)
    model.minimize(sum(cost * goes[t] for t, cost in enumerate(problem.costs) if t not in problem.gone))
    return _solved(model, seconds, workers)


def second_basket(problem: BasketProblem, *, seconds: float = 60.0, workers: int = 1) -> Answer:
    """The cheapest basket; everything needed must be offered."""
    model = cp_model.CpModel()
    most = [problem.needs[o.need] for o in problem.offers]
    packs = [model.new_int_var(0, n, "") for n in most]
    lost = [model.new_bool_var("") for _ in range(MOST_SESSIONS)]
    cost = [problem.worth * z for z in lost]
    for need, wanted in enumerate(problem.needs):
        offers = [(o, p) for o, p in zip(problem.offers, packs, strict=True) if o.need == need]
        pieces = sum(o.pack * p for o, p in offers)
        model.add(pieces >= wanted)
        model.add(pieces <= wanted + max(o.pack for o, _ in offers) - 1)
    for number, sender in enumerate(problem.suppliers):
        every = zip(problem.offers, packs, most, strict=True)
        mine = [(o, p, m) for o, p, m in every if o.supplier == number]
        sent = model.new_bool_var("")
        goods, weight = sum(o.price * p for o, p, _ in mine), sum(o.weight * p for o, p, _ in mine)
        chosen = []
        for tier in sender.tiers:
            by = model.new_bool_var("")
            chosen.append(by)
            cost.append(tier.post * by)
            model.add(goods >= max(tier.least_goods, sender.minimum)).only_enforce_if(by)
            if tier.most_weight is not None:
                model.add(weight <= tier.most_weight).only_enforce_if(by)
        model.add(sum(chosen) == sent)
        for offer, pack, limit in mine:
            model.add(pack <= limit * sent)
            cost.append((offer.price + offer.duty) * pack)
            for session in offer.misses:
                model.add(pack <= limit * lost[session])
    if problem.most_lost is not None:
        model.add(sum(lost) <= problem.most_lost)
    model.minimize(sum(cost))
    return _solved(model, seconds, workers)


def _solved(model: cp_model.CpModel, seconds: float, workers: int) -> Answer:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.max_time_in_seconds = seconds
    started = time.perf_counter()
    ended = solver.solve(model)
    taken = time.perf_counter() - started
    if ended not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Answer(-1, 0, False, taken)
    bound = round(solver.best_objective_bound)
    return Answer(round(solver.objective_value), bound, ended == cp_model.OPTIMAL, taken)
