"""What follows from links alone: which activities a target needs, and what comes after each."""

from __future__ import annotations

from typing import Any

import numpy as np

from witnessmark.engines.schedule_axis import Axis

Array = Any


def in_order_of_links(axis: Axis) -> list[int]:
    """Activities so that each comes after those it waits for."""
    waits = np.diff(axis.before_at).tolist()
    ready = [n for n, count in enumerate(waits) if not count]
    order: list[int] = []
    while ready:
        number = ready.pop()
        order.append(number)
        for then in axis.then[axis.then_at[number] : axis.then_at[number + 1]].tolist():
            waits[then] -= 1
            if not waits[then]:
                ready.append(then)
    return order


def needed(axis: Axis, order: list[int]) -> Array:
    """Target by activity: whether the target waits for it, itself or through links."""
    found = np.zeros((len(axis.weight), len(axis.length)), dtype=np.bool_)
    for target in range(len(axis.weight)):
        found[target, axis.aim[axis.aim_at[target] : axis.aim_at[target + 1]]] = True
    for number in reversed(order):
        then = axis.then[axis.then_at[number] : axis.then_at[number + 1]]
        if len(then):
            found[:, number] |= found[:, then].any(axis=1)
    return found


def tails(axis: Axis, order: list[int], spans: Array, pause: float = 0.0) -> Array:
    """Clock minutes that are thought to pass between the end of each activity and of all that waits for it.

    spans  clock minutes each activity is thought to take, with the waiting for a session that suits it
    pause  clock minutes until the next session after a lag
    """
    tail = [0.0] * len(order)
    took = spans.tolist()
    then_at, then, lag = axis.then_at.tolist(), axis.then.tolist(), axis.then_lag.tolist()
    for number in reversed(order):
        for k in range(then_at[number], then_at[number + 1]):
            more = lag[k] + took[then[k]] + tail[then[k]] + (pause if lag[k] else 0.0)
            tail[number] = max(tail[number], more)
    return np.array(tail)


def target_tails(axis: Axis, order: list[int], need: Array, target: int) -> Array:
    """The same towards one target only; of no use for activities that it does not need."""
    tail = np.zeros(len(order), dtype=np.int64)
    wanted = need[target]
    for number in reversed(order):
        if wanted[number]:
            for k in range(axis.then_at[number], axis.then_at[number + 1]):
                after = axis.then[k]
                if wanted[after]:
                    more = axis.then_lag[k] + axis.length[after] * axis.unit + tail[after]
                    tail[number] = max(tail[number], more)
    return tail
