"""How long the cheapest way in to many things takes on a made graph, and what opening together saves.

    .venv/bin/python benchmarks/reach.py --operations 2000 --relations 5000 --targets 20 --seed 0
    .venv/bin/python benchmarks/reach.py --operations 200 --relations 500 --graph adversarial --seconds 10

Prints one line of JSON. How the graphs are made stands in docs/performance.md.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
from pathlib import Path

from witnessmark.engines.cheapest_way import Way, WayProblem
from witnessmark.engines.way_faults import way_faults

PLACE = 50
LAYERS = 6


def vehicle_like(operations: int, relations: int, targets: int, seed: int) -> WayProblem:
    """Places of some fifty things in six layers, most behind one to three things of the layers above.

    Of ten relations nine stay in their place. Four things in five have one way in, the others two or
    three. One relation in fifty points inwards, which makes circles. The targets lie in the three
    deepest layers. Minutes are skewed: most take a few, some an hour and more.
    """
    draw = random.Random(seed)
    layer = [draw.randrange(LAYERS) for _ in range(operations)]
    place = [n // PLACE for n in range(operations)]
    by_layer: dict[tuple[int, int], list[int]] = {}
    for thing in range(operations):
        by_layer.setdefault((place[thing], layer[thing]), []).append(thing)
    routes: list[list[list[int]]] = [[] for _ in range(operations)]
    inner = [thing for thing in range(operations) if layer[thing]]
    left = relations
    while left:
        thing = draw.choice(inner)
        ways = routes[thing]
        member = _in_front(draw, thing, place, layer, by_layer)
        if not ways or (len(ways) < 3 and draw.random() < 0.12):
            ways.append([])
        way = draw.choice(ways) if ways[-1] else ways[-1]
        if member not in way:
            way.append(member)
            left -= 1
    deep = [thing for thing in inner if layer[thing] >= LAYERS - 3]
    return _problem(draw, routes, draw.sample(deep, min(targets, len(deep))))


def _in_front(
    draw: random.Random,
    thing: int,
    place: list[int],
    layer: list[int],
    by_layer: dict[tuple[int, int], list[int]],
) -> int:
    """A thing of a layer above, mostly of the same place; one in fifty of a layer below."""
    where = place[thing] if draw.random() < 0.9 else draw.randrange(place[-1] + 1)
    inwards = draw.random() < 0.02 and layer[thing] < LAYERS - 1
    outwards = max(0, layer[thing] - draw.choice((1, 1, 1, 2)))
    at = draw.randrange(layer[thing] + 1, LAYERS) if inwards else outwards
    found = [other for other in by_layer.get((where, at), ()) if other != thing]
    return draw.choice(found) if found else (thing + 1) % len(layer)


def deep(operations: int, relations: int, targets: int, seed: int) -> WayProblem:
    """Harder than any vehicle: some sixty layers, and every other thing has two or three ways in."""
    draw = random.Random(seed)
    first = max(2, operations // 12)
    routes: list[list[list[int]]] = [[] for _ in range(operations)]
    left = relations
    while left > 0:
        thing = draw.randrange(first, operations)
        ways = routes[thing]
        if ways and draw.random() < 0.55 and len(ways[-1]) < 4:
            member = _near(draw, thing, operations)
            if member not in ways[-1]:
                ways[-1].append(member)
                left -= 1
        elif len(ways) < 3:
            ways.append([_near(draw, thing, operations)])
            left -= 1
    inmost = range(2 * operations // 3, operations)
    return _problem(draw, routes, draw.sample(inmost, min(targets, len(inmost))))


def _near(draw: random.Random, thing: int, operations: int) -> int:
    """A thing a little further out; one in fifty a little further in, which makes circles."""
    if draw.random() < 0.02 and thing + 1 < operations:
        return draw.randrange(thing + 1, min(operations, thing + 60))
    return draw.randrange(max(0, thing - 60), thing)


def adversarial(operations: int, relations: int, targets: int, seed: int) -> WayProblem:
    """Relations between any two things, so that nearly everything stands in circles with everything else."""
    draw = random.Random(seed)
    first = max(2, operations // 50)
    routes: list[list[list[int]]] = [[] for _ in range(operations)]
    for _ in range(relations):
        thing = draw.randrange(first, operations)
        ways = routes[thing]
        member = draw.randrange(operations)
        if ways and draw.random() < 0.45:
            draw.choice(ways).append(member)
        else:
            ways.append([member])
    return _problem(draw, routes, draw.sample(range(first, operations), targets))


def _problem(draw: random.Random, routes: list[list[list[int]]], targets: list[int]) -> WayProblem:
    return WayProblem(
        costs=tuple(max(1, round(draw.lognormvariate(2.2, 0.9))) for _ in routes),
        routes=tuple(tuple(tuple(sorted(set(way))) for way in ways) for ways in routes),
        targets=tuple(sorted(targets)),
    )


def main() -> None:
    """Make a graph, find the way, read it a second time, and tell it beside the single best ways."""
    asked = _asked()
    make = {"vehicle": vehicle_like, "deep": deep, "adversarial": adversarial}[asked.graph]
    problem = make(asked.operations, asked.relations, asked.targets, asked.seed)
    before = time.perf_counter()
    from witnessmark.engines.way_exact import exact_way

    loaded = time.perf_counter()
    way = exact_way(problem, left=lambda: asked.seconds - (time.perf_counter() - loaded))
    taken = time.perf_counter() - loaded
    told: dict[str, object] = {
        "operations": asked.operations,
        "relations": sum(len(way) for ways in problem.routes for way in ways),
        "targets": asked.targets,
        "cost": way.cost,
        "bound": way.bound,
        "proven": way.proven,
        "gap": round((way.cost - (way.bound or 0)) / max(1, way.cost), 4),
        "seconds": round(taken, 4),
        "loading_seconds": round(loaded - before, 4),
        "faults": list(way_faults(problem, way)),
    }
    if asked.graph == "vehicle":
        told |= _apart(problem, way)
    if asked.peer:
        told |= _peer(problem, way, asked.peer)
    print(json.dumps(told))


def _apart(problem: WayProblem, way: Way) -> dict[str, object]:
    """The same targets each by its own best way: their sum, and their union opened at once."""
    from msgspec.structs import replace

    from witnessmark.engines.way_exact import exact_way

    single = [exact_way(replace(problem, targets=(target,))) for target in problem.targets]
    union = {thing for one in single for thing in one.remove}
    cost = sum(problem.costs[thing] for thing in union)
    return {"sum_of_single": sum(one.cost for one in single), "union_of_single": cost, "together": way.cost}


def _peer(problem: WayProblem, way: Way, seconds: float) -> dict[str, object]:
    """Another solver on the same problem, two workers, and how its cost and time stand to ours."""
    sys.path.insert(0, str(Path(__file__).resolve().parent.parent))
    from benchmarks.second_solver import second_way

    reached = tuple(target for target in problem.targets if target not in way.no_way)
    other = second_way(problem, reached, seconds=seconds, workers=2)
    return {"peer_cost": other.cost, "peer_proven": other.proven, "peer_seconds": round(other.seconds, 4)}


def _asked() -> argparse.Namespace:
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    words.add_argument("--operations", type=int, default=2000)
    words.add_argument("--relations", type=int, default=5000)
    words.add_argument("--targets", type=int, default=20)
    words.add_argument("--seed", type=int, default=0)
    words.add_argument("--seconds", type=float, default=10.0)
    words.add_argument("--graph", choices=("vehicle", "deep", "adversarial"), default="vehicle")
    words.add_argument("--peer", type=float, default=0, metavar="SECONDS", help="also ask another solver")
    return words.parse_args()


if __name__ == "__main__":
    main()
