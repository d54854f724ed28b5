"""What an operation must have in hand."""

from __future__ import annotations

from collections import Counter

from msgspec.structs import replace

from witnessmark.jobs.operation import Operation
from witnessmark.owed.needs import renewal_item
from witnessmark.owed.stock import Item
from witnessmark.state.standing import State
from witnessmark.vehicle.sides import parted


def items_of(state: State, operation: Operation) -> list[Item]:
    """What an operation must have in hand, with its numbers."""
    found = []
    for what, number in Counter(operation.needs).items():
        if operation.name in state.vehicle.joints and what not in state.vehicle.parts:
            item = renewal_item(state, operation.name, what)
        else:
            item = Item(what=parted(what)[0], for_=what if what in state.vehicle.parts else operation.name)
        found.append(replace(item, quantity=number))
    return found
