"""The order of a session: what must come first, then what takes two, then one job at a time."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from witnessmark.jobs.operation import Job, Operation


def in_session_order(
    picked: Iterable[Operation], jobs: Sequence[Job], *, helper: bool
) -> tuple[Operation, ...]:
    """Put picked operations into an order that works.

    With a helper there, what takes two pairs of hands comes as early as it can. Otherwise a job is
    carried on as far as it goes before the next is begun; small things of the garage come last.
    """
    left = {o.id: o for o in picked}
    places = {o.id: n for n, o in enumerate(o for job in jobs for o in job.operations)}
    order: list[Operation] = []
    while left:
        ready = [o for o in left.values() if not any(b in left for b in (*o.after, *o.follows))]
        last = order[-1].job if order else ""
        chosen = min(
            ready,
            key=lambda o: (
                not (helper and o.hands > 1),
                o.sort == "garage",
                o.job != last,
                places.get(o.id, len(places)),
            ),
        )
        order.append(left.pop(chosen.id))
    return tuple(order)
