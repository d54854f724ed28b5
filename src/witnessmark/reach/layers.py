"""What lies behind what at one place, in layers to be lifted away, the outermost first."""

from __future__ import annotations

from collections.abc import Iterable

from witnessmark.reach.access import Access


def layers(access: Access, names: Iterable[str]) -> tuple[tuple[str, ...], ...]:
    """These things and all that can stand in front of them, layer by layer, as on a whole vehicle.

    A thing lies in the first layer from which a hand comes to it once the layers before are off, along any
    of its ways in. Things described as being behind each other come last, together.
    """
    inside = _with_all_in_front(access, names)
    found: list[tuple[str, ...]] = []
    off: set[int] = set()
    while left := inside - off:
        fresh = {n for n in left if _comes_to(access, n, off)} or left
        found.append(tuple(access.names[n] for n in sorted(fresh)))
        off |= fresh
    return tuple(found)


def _with_all_in_front(access: Access, names: Iterable[str]) -> set[int]:
    todo = [access.numbers[name] for name in names if name in access.numbers]
    inside: set[int] = set()
    while todo:
        thing = todo.pop()
        if thing not in inside:
            inside.add(thing)
            todo += [member for route in access.routes[thing] for member in route]
    return inside


def _comes_to(access: Access, thing: int, off: set[int]) -> bool:
    routes = access.routes[thing]
    return not routes or any(off.issuperset(route) for route in routes)
