"""What to bring to a session, and what to order tonight."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from witnessmark.jobs.needs import items_of
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.debt import listed
from witnessmark.owed.needs import needs_from
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of

# A hint for each way of closing; what else is needed the person knows. Common practice, no source.
TOOLS = {
    "tighten": "torque wrench",
    "set": "dial gauge or feeler gauges",
    "weld": "welder, mask, extinguisher",
    "coat": "thermometer for the steel",
    "bleed": "clear tube and jar",
    "fill": "funnel and rag",
}


def bring(state: State, operations: Sequence[Operation]) -> tuple[str, ...]:
    """Things to have at hand: what goes in new, then tools by how joints are closed."""
    counted = Counter(what for o in operations for what in o.needs)
    things = [what if number == 1 else f"{number} × {what}" for what, number in counted.items()]
    return tuple(dict.fromkeys([*things, *_tools(state, operations)]))


def _tools(state: State, operations: Sequence[Operation]) -> Iterator[str]:
    for operation in operations:
        joint = state.vehicle.joints.get(operation.name)
        if operation.sort == "close" and operation.leaves and joint is not None:
            kind = kind_of(joint.kind)
            if kind.closed_by in TOOLS:
                yield TOOLS[kind.closed_by]
            if kind.closed_by in ("fill", "bleed") and (joint.fluid or kind.fluid):
                yield joint.fluid or kind.fluid
        if operation.sort == "open":
            yield "camera, bags, labels"


def order_tonight(state: State, jobs: Iterable[Job]) -> tuple[str, ...]:
    """What the jobs still need and is neither to hand nor in the post."""
    items = [item for job in jobs for o in job.operations for item in items_of(state, o)]
    return tuple(
        " ".join(p for p in (f"{need.short:g} ×", need.what, need.size) if p)
        + f" ({listed(list(need.for_))})"
        for need in needs_from((), state, items)
        if need.short > 0
    )
