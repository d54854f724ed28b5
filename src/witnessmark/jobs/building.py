"""Operations while they are put together: each joint is opened and closed once, each debt paid once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec.structs import replace

from witnessmark.jobs.operation import Operation
from witnessmark.owed.debt import Debt
from witnessmark.reach.access import access_of
from witnessmark.state.joint_state import APART, LOOSE, TIGHT
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.kind import Kind

# Follow-ups and fluids are debts before they are due; only what is due becomes an operation.
NOT_BEFORE_DUE = frozenset({"look_again", "turn", "fluid"})


class Building:
    """All operations of all jobs on their way.

    opened  joint -> the operation that opens it; free: names off by then, at no further cost
    """

    def __init__(self, state: State, debts: Iterable[Debt]) -> None:
        self.state = state
        self.access = access_of(state)
        self.depth = self.access.depths()
        self.operations: dict[str, Operation] = {}
        self.opened: dict[str, str] = {}
        self.free: dict[str, None] = {}
        self.debts = [d for d in debts if d.overdue or d.sort not in NOT_BEFORE_DUE]
        self._unpaid = {d.id or d.key: d for d in self.debts}
        self._at: dict[str, list[Debt]] = {}
        for debt in self.debts:
            self._at.setdefault(debt.joint or debt.part, []).append(debt)
        self._after: dict[str, dict[str, None]] = {}
        self._follows: dict[str, dict[str, None]] = {}
        self._held_by: dict[str, list[str]] = {}
        for joint in state.vehicle.joints.values():
            for part in joint.holds:
                self._held_by.setdefault(part, []).append(joint.name)

    # ---- the vehicle

    def kind(self, joint: str) -> Kind:
        return kind_of(self.state.vehicle.joints[joint].kind)

    def if_missed(self, joint: str) -> str:
        return self.state.vehicle.joints[joint].if_missed or self.kind(joint).if_missed

    def assembly_of(self, name: str) -> str:
        """The assembly a joint or part belongs to; "" where none is told."""
        thing = self.state.vehicle.joints.get(name) or self.state.vehicle.parts.get(name)
        return thing.assembly if thing else ""

    def holders(self, part: str) -> list[str]:
        """The joints that hold a part."""
        return self._held_by.get(part, [])

    def stands_open(self, joint: str) -> bool:
        """Apart or loose, as the record has it."""
        return self.state.joints[joint].position in (APART, LOOSE)

    def stands_tight(self, joint: str) -> bool:
        return self.state.joints[joint].position == TIGHT

    def in_front_of(self, name: str) -> tuple[str, ...]:
        """What is off or apart, or will be, so that a hand comes to a thing: one route, outer things only."""
        number = self.access.numbers.get(name)
        if number is None:
            return ()
        for route in self.access.routes[number]:
            names = tuple(self.access.names[n] for n in route)
            if all(self._open_by_then(n) and self.depth[n] < self.depth[name] for n in names):
                return names
        return ()

    def _open_by_then(self, name: str) -> bool:
        number = self.access.numbers.get(name)
        return name in self.free or number in self.access.gone

    # ---- debts

    def at(self, name: str) -> list[Debt]:
        """What is owed on a joint or part and not yet paid by an operation."""
        return [d for d in self._at.get(name, ()) if (d.id or d.key) in self._unpaid]

    def pay(self, debts: Iterable[Debt]) -> tuple[str, ...]:
        """Mark debts as paid by an operation; their ids, those only that were not paid before."""
        keys = [d.id or d.key for d in debts]
        return tuple(k for k in keys if self._unpaid.pop(k, None) is not None)

    def unpaid(self) -> Iterator[Debt]:
        """What no operation pays yet, in the order it was handed over."""
        return (d for d in self.debts if (d.id or d.key) in self._unpaid)

    # ---- operations

    def add(self, operation: Operation) -> str:
        """Add an operation, or keep the one of that id which is there and let it pay these debts too."""
        before = self.operations.get(operation.id)
        if before is not None:
            operation = replace(
                before,
                pays=(*before.pays, *operation.pays),
                needs=before.needs + tuple(n for n in operation.needs if n not in before.needs),
            )
        self.operations[operation.id] = operation
        return operation.id

    def note(self, id: str, words: str) -> None:
        """Add a remark to an operation."""
        before = self.operations[id]
        self.operations[id] = replace(before, note="; ".join(n for n in (before.note, words) if n))

    def first(self, before: str, then: str) -> None:
        """Put one operation before another, unless the other comes before it already."""
        if self._may(before, then):
            self._after.setdefault(then, {})[before] = None

    def rather_first(self, before: str, then: str) -> None:
        """The same, where both are done in one session."""
        if self._may(before, then):
            self._follows.setdefault(then, {})[before] = None

    def _may(self, before: str, then: str) -> bool:
        known = before in self.operations and then in self.operations
        return known and before != then and not self._comes_before(then, before)

    def _comes_before(self, one: str, other: str) -> bool:
        """Whether `one` stands somewhere before `other`."""
        seen, todo = {other}, [other]
        while todo:
            now = todo.pop()
            if now == one:
                return True
            fresh = {*self._after.get(now, ()), *self._follows.get(now, ())} - seen
            seen |= fresh
            todo += fresh
        return False

    def finished(self, job: str) -> tuple[Operation, ...]:
        """The operations of a job with what comes before them, in an order that works."""
        order = {id: n for n, id in enumerate(self.operations)}
        mine = [o for o in self.operations.values() if o.job == job]
        whole = [
            replace(
                o,
                after=tuple(sorted(self._after.get(o.id, ()), key=order.__getitem__)),
                follows=tuple(sorted(self._follows.get(o.id, ()), key=order.__getitem__)),
            )
            for o in mine
        ]
        return tuple(in_order(whole))


def in_order(operations: list[Operation]) -> Iterator[Operation]:
    """Operations so that each comes after what must come before it, else in the order handed over."""
    left = {o.id: o for o in operations}
    while left:
        ready = next(o for o in left.values() if not any(b in left for b in (*o.after, *o.follows)))
        del left[ready.id]
        yield ready
