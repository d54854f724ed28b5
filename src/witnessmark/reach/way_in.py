"""The way in: what must come off to get at something, cheapest first, and what that opens besides."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Protocol

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.engines.cheapest_way import Way, WayProblem
from witnessmark.engines.way_faults import way_faults
from witnessmark.engines.ways import best_way, next_best
from witnessmark.ground.errors import WitnessMarkError
from witnessmark.reach.access import Access, access_of
from witnessmark.state.standing import State

OTHER_WAYS = 2


class Owing(Protocol):
    """A debt, as far as reach asks: the joint or part it is owed on, and what is owed."""

    @property
    def joint(self) -> str: ...
    @property
    def part(self) -> str: ...
    @property
    def what(self) -> str: ...


class OtherWay(Struct, frozen=True, kw_only=True):
    """Another way in, with its likely minutes."""

    remove: tuple[str, ...]
    minutes: int


class WorthNow(Struct, frozen=True, kw_only=True):
    """Something wanted or owed that this opening lets a hand reach.

    minutes_saved  likely minutes of opening it would take to come back for it another day
    """

    name: str
    because: str
    minutes_saved: int


class Together(Struct, frozen=True, kw_only=True):
    """Several things in one opening, against each by its own best way; likely minutes of taking off.

    at_once     the best way to all of them
    one_by_one  opened, closed and opened again: the sum of the single best ways
    same_day    the single best ways all opened once: their union
    """

    at_once: int
    one_by_one: int
    same_day: int


class WayIn(Struct, frozen=True, kw_only=True):
    """What comes off, outermost first, and what follows from it.

    minutes        likely minutes of taking it off; putting back is not counted
    alternatives   next best ways, cheapest first
    open_anyway    wanted or owed things this lets a hand reach; worth_now says why and what it saves
    joints_opened  joints this opens: each will owe its closing
    proven         no cheaper way exists as far as the record knows
    no_way         targets that nothing lets a hand reach: things described as being behind each other
    at_least       no way takes fewer minutes, as far as the record knows
    together       where several things are asked for: what opening them together saves
    """

    targets: tuple[str, ...]
    remove: tuple[str, ...]
    minutes: int
    alternatives: tuple[OtherWay, ...] = ()
    open_anyway: tuple[str, ...] = ()
    joints_opened: tuple[str, ...] = ()
    proven: bool = True
    worth_now: tuple[WorthNow, ...] = ()
    no_way: tuple[str, ...] = ()
    at_least: int = 0
    together: Together | None = None


def way_in(
    targets: Sequence[str],
    state: State,
    *,
    debts: Iterable[Owing] = (),
    free: Iterable[str] = (),
    access: Access | None = None,
    others: int = OTHER_WAYS,
    left: Callable[[], float] | None = None,
) -> WayIn:
    """The cheapest way in to all targets together; what they share is opened once.

    debts   what is owed, for what is open anyway
    free    names opened by then at no cost
    access  the access problem, where it was worked out already
    others  how many other ways to look for, and whether to look at each target by itself
    left    seconds that are left; only a shell passes it
    """
    access = access or access_of(state, targets)
    problem = access.problem(targets, free=free)
    way = _checked(problem, best_way(problem, left=left))
    next_ways = next_best(problem, way, number=others, left=left) if others and way.remove else ()
    remove = tuple(access.names[n] for n in way.remove)
    asked = _asked_for(state, debts) if targets else {}
    worth = tuple(_worth_now(access, problem, way, asked))
    return WayIn(
        targets=tuple(targets),
        remove=remove,
        minutes=way.cost,
        alternatives=tuple(
            OtherWay(remove=tuple(access.names[n] for n in other.remove), minutes=other.cost)
            for other in next_ways
        ),
        open_anyway=tuple(w.name for w in worth),
        joints_opened=tuple(name for name in remove if name in state.vehicle.joints),
        proven=way.proven,
        worth_now=worth,
        no_way=tuple(access.names[n] for n in way.no_way),
        at_least=way.cost if way.proven or way.bound is None else way.bound,
        together=_together(problem, way, left) if others and len(problem.targets) > 1 else None,
    )


def _checked(problem: WayProblem, way: Way) -> Way:
    wrong = way_faults(problem, way)
    if wrong:
        raise WitnessMarkError(f"a way in did not stand its second reading: {'; '.join(wrong)}")
    return way


def _together(problem: WayProblem, way: Way, left: Callable[[], float] | None) -> Together:
    """The same targets, each by its own best way."""
    single = [best_way(replace(problem, targets=(target,)), left=left) for target in problem.targets]
    union = {thing for one in single for thing in one.remove}
    return Together(
        at_once=way.cost,
        one_by_one=sum(one.cost for one in single),
        same_day=sum(problem.costs[thing] for thing in union),
    )


def _asked_for(state: State, debts: Iterable[Owing]) -> dict[str, str]:
    """Names wanted or owed, each with its reason; what is wanted says more than what is owed."""
    asked = {name: debt.what for debt in debts for name in (debt.joint, debt.part) if name}
    for line in state.supply.wanted:
        asked |= {name: f"wanted: {line.fact.job or 'put right'}" for name in line.fact.at}
    return asked


def _worth_now(access: Access, problem: WayProblem, way: Way, asked: dict[str, str]) -> Iterable[WorthNow]:
    """What this opening lets a hand reach that it could not reach before."""
    fresh = {*way.remove, *problem.targets} - problem.gone
    with_targets = problem.gone | fresh
    for name, because in asked.items():
        number = access.numbers.get(name)
        if number is None or number in with_targets:
            continue
        if all(fresh.isdisjoint(route) for route in access.routes[number]):
            continue
        if not access.reached(name, problem.gone) and access.reached(name, with_targets):
            alone = best_way(access.problem([name]))
            yield WorthNow(name=name, because=because, minutes_saved=alone.cost)
