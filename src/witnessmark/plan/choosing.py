"""The choice of operations for one session, put to the exact engine and read twice.

Ranks, heaviest first: what is paid off of what lets go, warns first, wrecks, wets, looks; then jobs left
safe; then headway on long jobs, and the small things of the garage. Working on, closing and proving what
is wanted counts like paying one debt of its job's rank. Opening does not: nothing is opened to fill the
time while something owed can be paid, and nothing that could not be closed again for want of parts.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil

from witnessmark.engines.pick import Group, Picked, PickItem, PickProblem, Rule, pick
from witnessmark.engines.pick_faults import pick_faults
from witnessmark.ground.errors import WitnessMarkError
from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.jobs.operation import Job, Operation
from witnessmark.owed.debt import Debt
from witnessmark.plan.doable import Doable, Terms
from witnessmark.plan.estimate import planned
from witnessmark.plan.loosening import loosened_by
from witnessmark.state.standing import State

HEADWAY, GARAGE_RANK = len(IfMissed), len(IfMissed) + 1
RANKS = len(IfMissed) + 2

# What of a wanted job counts like a debt paid.
COUNTS = frozenset({"work", "close", "prove", "put_right", "protect", "record"})


class Choice:
    """The numbered problem and its answer, as operations again."""

    def __init__(
        self, state: State, debts: Iterable[Debt], jobs: Sequence[Job], able: Doable, terms: Terms
    ) -> None:
        self.state = state
        self.able = able
        self.terms = terms
        self.weights = {d.id: if_missed(d.if_missed) for d in debts}
        self.jobs = {job.id: job for job in jobs}
        self.ids = list(able.operations)
        self.numbers = {id: n for n, id in enumerate(self.ids)}
        self.never = len(self.ids)
        self._every = {*able.operations, *able.because}
        self.long = {job.id for job in jobs if self._length(job) > terms.work_minutes}
        self.not_to_open = {job.id: self._not_to_open(job) for job in jobs}

    def best(self) -> tuple[list[Operation], bool]:
        """The operations to do, in no order yet, and whether no better choice exists."""
        problem = self.problem()
        answer = _checked(problem, pick(problem))
        return [self.able.operations[self.ids[n]] for n in answer.items], answer.proven

    def problem(self) -> PickProblem:
        """One item for each operation that could be done; the last item can never be chosen."""
        items = [self._item(self.able.operations[id]) for id in self.ids]
        capacity = int(self.terms.work_minutes)
        return PickProblem(
            items=(*items, PickItem(minutes=capacity + 1, values=(0,) * RANKS)),
            capacity=capacity,
            rules=tuple(self._rules()),
            groups=tuple(self._groups()),
            stocks=self.able.stocks,
            late=2,
        )

    # ---- items

    def _minutes(self, operation: Operation) -> float:
        return planned(operation, self.terms.factor, most=self.terms.work_minutes)

    def _length(self, job: Job) -> float:
        return sum(self._minutes(o) for o in job.operations)

    def _item(self, operation: Operation) -> PickItem:
        values = [0] * RANKS
        for code in operation.pays:
            values[self.weights[code]] += 1
        rank = self._counted_in(operation)
        if rank is not None:
            values[rank] += 1
        return PickItem(
            minutes=max(1, ceil(self._minutes(operation))),
            values=tuple(values),
            uses=self.able.uses.get(operation.id, ()),
        )

    def _counted_in(self, operation: Operation) -> int | None:
        """The rank an operation counts in besides the debts it pays."""
        job = self.jobs.get(operation.job)
        if job is None:
            return GARAGE_RANK
        spell = operation.id in self.able.spells
        if operation.name in self.not_to_open.get(job.id, ()):
            return None
        if operation.sort == "open" or spell:
            return HEADWAY if spell or job.id in self.long else None
        return self._rank(job) if operation.sort in COUNTS and job.wanted is not None else None

    def _not_to_open(self, job: Job) -> frozenset[str]:
        """What this job opens, where something of it could not be closed again for want of parts."""
        opened = frozenset(o.name for o in job.operations if o.sort == "open")
        closings = (o.id for o in job.operations if o.sort == "close" and o.name in opened)
        waits = any(self.able.because.get(id, "").startswith("not in hand") for id in closings)
        return opened if waits else frozenset()

    def _rank(self, job: Job) -> int:
        """The rank of a job: that of the heaviest thing it works on, else of what it closes or proves."""
        for sorts in (("work",), ("close", "prove")):
            found = [if_missed(o.if_missed) for o in job.operations if o.sort in sorts]
            if found:
                return min(found)
        return IfMissed.LOOKS

    # ---- rules

    def _number(self, id: str) -> int:
        return self.numbers.get(id, self.never)

    def _rules(self) -> Iterable[Rule]:
        for id, number in self.numbers.items():
            operation = self.able.operations[id]
            yield from (
                Rule((number,), self._number(before)) for before in operation.after if before in self._known()
            )
            yield from (Rule((number,), self._number(c)) for c in loosened_by(self.state, operation))
            if operation.sort == "watch":
                yield from (
                    Rule((self.numbers[hot],), number) for hot in operation.follows if hot in self.numbers
                )
                continue
            for inner in operation.follows:
                closing = inner.replace("open/", "close/", 1).replace("lift/", "fit/", 1)
                if inner in self.numbers and closing != inner:
                    yield Rule((number, self.numbers[inner]), self._number(closing))

    def _known(self) -> set[str]:
        return self._every

    def _groups(self) -> Iterable[Group]:
        """A job is left safe when all it opened, and all that stands open in it, is closed.

        A job longer than a session cannot be closed in it: of that, only what stands open counts.
        """
        for job in self.jobs.values():
            pairs = []
            for closing in job.operations:
                if not closing.id.startswith(("close/", "fit/")):
                    continue
                opening = closing.id.replace("close/", "open/", 1).replace("fit/", "lift/", 1)
                stands_open = not any(o.id == opening for o in job.operations)
                if stands_open or (opening in self.numbers and job.id not in self.long):
                    pairs.append((None if stands_open else self.numbers[opening], self._number(closing.id)))
            if pairs:
                yield Group(tuple(pairs))


def _checked(problem: PickProblem, answer: Picked) -> Picked:
    wrong = pick_faults(problem, answer)
    if wrong:
        raise WitnessMarkError(f"a choice did not stand its second reading: {'; '.join(wrong)}")
    return answer
