"""Laws of jobs: what must hold of the operations whatever was done and whatever is wanted."""

from collections import Counter
from graphlib import TopologicalSorter

from hypothesis import given

from tests.building import evening
from tests.jobs.garages import BASE, LAST_DAY, garages
from witnessmark.jobs.building import NOT_BEFORE_DUE
from witnessmark.jobs.jobs import jobs_of
from witnessmark.jobs.operation import Job, Operation
from witnessmark.journal.entry import Entry
from witnessmark.owed.debt import Debt
from witnessmark.owed.owed import owed_by
from witnessmark.reach.access import is_gone
from witnessmark.state.standing import State, state_from


def read(entries: list[Entry]) -> tuple[State, tuple[Debt, ...], tuple[Job, ...]]:
    state = state_from([*BASE, *entries])
    debts = owed_by(state, evening(LAST_DAY))
    return state, debts, jobs_of(state, debts)


def every(jobs: tuple[Job, ...]) -> list[Operation]:
    return [o for job in jobs for o in job.operations]


@given(garages())
def test_every_debt_that_is_due_is_paid_by_exactly_one_operation(entries: list[Entry]) -> None:
    _, debts, jobs = read(entries)
    paid = Counter(code for o in every(jobs) for code in o.pays)
    due = [d.id for d in debts if d.overdue or d.sort not in NOT_BEFORE_DUE]
    assert paid == Counter(due)


@given(garages())
def test_operations_are_in_an_order_that_works_and_run_in_no_circle(entries: list[Entry]) -> None:
    _, _, jobs = read(entries)
    operations = every(jobs)
    ids = [o.id for o in operations]
    assert len(ids) == len(set(ids))
    graph = {o.id: {*o.after, *o.follows} for o in operations}
    assert set().union(*graph.values(), ()) <= set(ids)
    assert len(list(TopologicalSorter(graph).static_order())) == len(ids)
    for job in jobs:
        seen: set[str] = set()
        own = {o.id for o in job.operations}
        for operation in job.operations:
            assert (set(operation.after) & own) <= seen
            seen.add(operation.id)


@given(garages())
def test_what_a_job_opens_it_closes_again_later(entries: list[Entry]) -> None:
    _, _, jobs = read(entries)
    for job in jobs:
        order = [o.id for o in job.operations]
        for opened in (o for o in job.operations if o.sort == "open"):
            closing = f"close/{opened.name}" if opened.id.startswith("open/") else f"fit/{opened.name}"
            assert order.index(opened.id) < order.index(closing)


@given(garages())
def test_nothing_is_opened_that_is_apart_or_taken_off_that_is_off(entries: list[Entry]) -> None:
    state, _, jobs = read(entries)
    assert not [o.id for o in every(jobs) if o.sort == "open" and is_gone(state, o.name)]


@given(garages())
def test_each_joint_is_opened_once_and_closed_once_over_all_jobs(entries: list[Entry]) -> None:
    _, _, jobs = read(entries)
    for sort in ("open", "close"):
        names = Counter(o.name for o in every(jobs) if o.id.startswith(f"{sort}/"))
        assert set(names.values()) <= {1}


@given(garages())
def test_every_operation_names_its_job_and_has_minutes_in_order(entries: list[Entry]) -> None:
    _, _, jobs = read(entries)
    for job in jobs:
        for o in job.operations:
            assert o.job == job.id
            assert 0 < o.minutes.low <= o.minutes.likely <= o.minutes.high
