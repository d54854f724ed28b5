"""What stands in front of what, as the record knows it: the numbered problem behind a way in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct

from witnessmark.engines.cheapest_way import WayProblem
from witnessmark.reach.minutes import opening_minutes
from witnessmark.state.joint_state import APART, JointState
from witnessmark.state.parts import ON
from witnessmark.state.standing import State
from witnessmark.vehicle.things import Routes


class Access(Struct, frozen=True, kw_only=True):
    """The vehicle as a problem of reach.

    names    every part, joint and thing named as being in the way
    numbers  the same the other way round
    gone     off or apart already
    """

    names: tuple[str, ...]
    numbers: Mapping[str, int]
    costs: tuple[int, ...]
    routes: tuple[tuple[tuple[int, ...], ...], ...]
    gone: frozenset[int]

    def problem(self, targets: Iterable[str], *, free: Iterable[str] = ()) -> WayProblem:
        """The problem of getting at these things; `free` will be gone by then and costs nothing."""
        opened = {self.numbers[n] for n in free if n in self.numbers}
        return WayProblem(
            costs=self.costs,
            routes=self.routes,
            targets=tuple(self.numbers[t] for t in targets),
            gone=self.gone | opened,
        )

    def depths(self) -> dict[str, int]:
        """How many layers stand in front of each thing on a whole vehicle; circles come last."""
        depth: dict[int, int] = {}
        left, layer = set(range(len(self.names))), 0
        while left:
            fresh = {
                n for n in left if not self.routes[n] or any(depth.keys() >= set(r) for r in self.routes[n])
            }
            fresh = fresh or set(left)
            depth |= dict.fromkeys(fresh, layer)
            left -= fresh
            layer += 1
        return {self.names[n]: layer for n, layer in depth.items()}

    def reached(self, name: str, gone: frozenset[int]) -> bool:
        """Whether a hand comes to a thing with these gone."""
        routes = self.routes[self.numbers[name]]
        return not routes or any(gone.issuperset(route) for route in routes)


def access_of(state: State, targets: Iterable[str] = ()) -> Access:
    """Read the access problem out of a state.

    A joint is reached along one of its routes. A part is off when every joint that holds it is apart.
    """
    held_by = _holders(state)
    routes = _routes(state, held_by)
    named = [member for ways in routes.values() for route in ways for member in route]
    names = tuple(dict.fromkeys([*routes, *named, *targets]))
    numbers = {name: n for n, name in enumerate(names)}
    return Access(
        names=names,
        numbers=numbers,
        costs=tuple(opening_minutes(state, name, held=name in held_by) for name in names),
        routes=tuple(tuple(tuple(numbers[m] for m in r) for r in routes.get(name, ())) for name in names),
        gone=frozenset(n for n, name in enumerate(names) if is_gone(state, name, held_by.get(name, ()))),
    )


def _holders(state: State) -> dict[str, list[str]]:
    """For each part the joints that hold it."""
    held_by: dict[str, list[str]] = {}
    for joint in state.vehicle.joints.values():
        for part in joint.holds:
            held_by.setdefault(part, []).append(joint.name)
    return held_by


def _routes(state: State, held_by: Mapping[str, list[str]]) -> dict[str, Routes]:
    routes: dict[str, Routes] = {joint.name: joint.behind for joint in state.vehicle.joints.values()}
    for part in [*state.vehicle.parts, *held_by]:
        if part not in routes:
            routes[part] = (tuple(held_by[part]),) if part in held_by else ()
    return routes


def is_gone(state: State, name: str, held_by: Iterable[str] = ()) -> bool:
    """Off the vehicle, or apart. A part never described is off when all that holds it is apart."""
    joint = state.joints.get(name)
    if joint is not None:
        return is_apart(joint)
    part = state.parts.get(name)
    if part is not None:
        return part.where != ON
    holders = [state.joints[j] for j in held_by]
    return bool(holders) and all(is_apart(j) for j in holders)


def is_apart(joint: JointState) -> bool:
    """Apart, or scrapped and so no longer in the way."""
    return joint.scrapped or joint.position == APART
