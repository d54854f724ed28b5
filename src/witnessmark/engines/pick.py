"""Choosing items for one spell of a given capacity: heaviest rank first, exactly, on integers.

Items have minutes, values in ranks, and things they use up; rules say what must come with what. The
choice pays most in the first rank, of those most in the second, and so on; then leaves most groups safe;
then pays most in the late ranks; then takes the fewest minutes.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

# Ranks are solved together as long as their packed values stay under this: far inside the solver's tolerance.
PACKED = 50_000


class PickItem(Struct, frozen=True, kw_only=True):
    """One thing that can be chosen. `uses` are (resource, amount) pairs."""

    minutes: int
    values: tuple[int, ...] = ()
    uses: tuple[tuple[int, int], ...] = ()


class Rule(Struct, frozen=True):
    """When all of `if_all` are chosen, `then` is too."""

    if_all: tuple[int, ...]
    then: int


class Group(Struct, frozen=True):
    """Left safe when each closing item is chosen, or its opening item (None: open already) is not."""

    pairs: tuple[tuple[int | None, int], ...]


class PickProblem(Struct, frozen=True, kw_only=True):
    """Items are numbered from 0.

    stocks  how much there is of each resource
    late    how many of the last ranks count only after the groups left safe
    """

    items: tuple[PickItem, ...]
    capacity: int
    rules: tuple[Rule, ...] = ()
    groups: tuple[Group, ...] = ()
    stocks: tuple[int, ...] = ()
    late: int = 0

    @property
    def ranks(self) -> int:
        return max((len(i.values) for i in self.items), default=0)


class Picked(Struct, frozen=True, kw_only=True):
    """What is chosen, what it pays in each rank, how many groups it leaves safe, and its minutes.

    proven  no better choice exists; False only where the limit of nodes was met first
    """

    items: tuple[int, ...]
    values: tuple[int, ...]
    safe: int
    minutes: int
    proven: bool = True


def pick(problem: PickProblem, *, nodes: int = 2_000) -> Picked:
    """The best choice.

    >>> items = (PickItem(minutes=50, values=(3,)), PickItem(minutes=40, values=(2,)))
    >>> pick(PickProblem(items=items, capacity=80)).items
    (0,)
    """
    able = _able(problem)
    if not able:
        return worth(problem, (), proven=True)
    chosen, proven = _lexicographic(problem, able, nodes)
    return worth(problem, chosen, proven=proven)


def worth(problem: PickProblem, chosen: Sequence[int], *, proven: bool) -> Picked:
    """A choice with all its figures added up."""
    have = set(chosen)
    return Picked(
        items=tuple(sorted(have)),
        values=tuple(sum(_value(problem, i, r) for i in have) for r in range(problem.ranks)),
        safe=sum(_is_safe(group, have) for group in problem.groups),
        minutes=sum(problem.items[i].minutes for i in have),
        proven=proven,
    )


def _value(problem: PickProblem, item: int, rank: int) -> int:
    values = problem.items[item].values
    return values[rank] if rank < len(values) else 0


def _is_safe(group: Group, have: set[int]) -> bool:
    return all(c in have or (o is not None and o not in have) for o, c in group.pairs)


def _able(problem: PickProblem) -> list[int]:
    """Items worth asking about: of some use, and fitting with everything they cannot do without."""
    along: dict[int, set[int]] = {i: set() for i in range(len(problem.items))}
    perhaps: dict[int, set[int]] = {i: set() for i in range(len(problem.items))}
    for rule in problem.rules:
        for item in rule.if_all:
            perhaps[item].add(rule.then)
        if len(rule.if_all) == 1:
            along[rule.if_all[0]].add(rule.then)
    closings = {closing for group in problem.groups for _, closing in group.pairs}
    useful: set[int] = set()
    for item, one in enumerate(problem.items):
        if item not in useful and (any(one.values) or item in closings):
            useful |= _with_all(item, perhaps)
    return [i for i in sorted(useful) if _fits(problem, _with_all(i, along))]


def _with_all(item: int, along: dict[int, set[int]]) -> set[int]:
    found, todo = {item}, [item]
    while todo:
        fresh = along[todo.pop()] - found
        found |= fresh
        todo += fresh
    return found


def _fits(problem: PickProblem, items: Iterable[int]) -> bool:
    used = [0] * len(problem.stocks)
    minutes = 0
    for item in items:
        minutes += problem.items[item].minutes
        for resource, amount in problem.items[item].uses:
            used[resource] += amount
    return minutes <= problem.capacity and all(u <= s for u, s in zip(used, problem.stocks, strict=True))


def _lexicographic(problem: PickProblem, able: list[int], nodes: int) -> tuple[list[int], bool]:
    from witnessmark.engines.pick_model import PickModel

    model = PickModel(problem, able)
    proven = True
    for weights in _stages(problem, able):
        proven = model.improve(weights, nodes) and proven
    return model.chosen, proven


def _stages(problem: PickProblem, able: list[int]) -> list[list[tuple[int, int]]]:
    """What to maximise in turn, each as (figure, weight): ranks first, then safe (-2), minutes (-1)."""
    tops = [(r, sum(_value(problem, i, r) for i in able)) for r in range(problem.ranks)]
    tops.insert(problem.ranks - problem.late, (-2, len(problem.groups)))
    tops.append((-1, problem.capacity))
    stages: list[list[tuple[int, int]]] = []
    size = PACKED + 1
    for figure, top in tops:
        if not top:
            continue
        if size * (top + 1) > PACKED:
            stages.append([])
            size = 1
        stages[-1] = [(f, w * (top + 1)) for f, w in stages[-1]] + [(figure, 1)]
        size *= top + 1
    return stages
