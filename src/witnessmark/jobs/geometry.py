"""The order that access forces: outer things off first and on last, work between, proofs after."""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.jobs.building import Building
from witnessmark.jobs.operation import Operation
from witnessmark.state.joint_state import APART

_ON_A_THING = frozenset({"open", "work", "close"})


def order_by_access(b: Building) -> None:
    """Put every operation after what lets a hand reach it, and every closing after what lies behind it."""
    for operation in list(b.operations.values()):
        if operation.sort in _ON_A_THING and operation.name in b.access.numbers:
            _own_order(b, operation)
            for member in b.in_front_of(operation.name):
                for opening in _opening(b, member):
                    b.first(opening, operation.id)
                for closing in _closing(b, member):
                    _before_closing(b, operation, closing)


def _own_order(b: Building, operation: Operation) -> None:
    """Open, work, close one and the same thing in this order."""
    name = operation.name
    if operation.sort == "work":
        b.first(f"open/{name}", operation.id)
        b.first(operation.id, f"close/{name}")
    if operation.sort == "close":
        b.first(f"open/{name}", operation.id)


def _opening(b: Building, name: str) -> Iterator[str]:
    """The operations that take a thing out of the way."""
    if f"lift/{name}" in b.operations:
        yield f"lift/{name}"
    elif name in b.state.joints:
        yield from (i for i in [f"open/{name}"] if i in b.operations)
    else:
        yield from (i for h in b.holders(name) if (i := f"open/{h}") in b.operations)


def _closing(b: Building, name: str) -> Iterator[str]:
    """The operations that put a thing back in the way."""
    if f"fit/{name}" in b.operations:
        yield f"fit/{name}"
    if name in b.state.joints:
        yield from (i for i in [f"close/{name}"] if i in b.operations)
    else:
        yield from (i for h in b.holders(name) if (i := f"close/{h}") in b.operations)


def _before_closing(b: Building, operation: Operation, closing: str) -> None:
    """Of one job, or open already: never closed over. Of another: only where that is left for later."""
    outer = b.operations[closing]
    if outer.job == operation.job or (_apart(b, outer.name) and _apart(b, operation.name)):
        b.first(operation.id, closing)
    else:
        b.rather_first(operation.id, closing)


def _apart(b: Building, name: str) -> bool:
    joint = b.state.joints.get(name)
    return joint is not None and joint.position == APART
