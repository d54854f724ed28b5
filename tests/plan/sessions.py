"""Sessions planned for small vehicles in tests."""

from __future__ import annotations

import random
from datetime import datetime

from tests.building import evening, state_of
from witnessmark.jobs.jobs import jobs_of
from witnessmark.jobs.operation import Job
from witnessmark.journal.facts import AnyFact
from witnessmark.owed.debt import Debt
from witnessmark.owed.owed import owed_by
from witnessmark.plan.next_session import plan_session
from witnessmark.plan.session import SessionPlan
from witnessmark.state.standing import State


def read(*facts: AnyFact, days_apart: int = 1) -> tuple[State, tuple[Debt, ...], tuple[Job, ...]]:
    """A state, what it owes, and the jobs that follow."""
    state = state_of(*facts, days_apart=days_apart)
    debts = owed_by(state, evening())
    return state, debts, jobs_of(state, debts)


def session(
    *facts: AnyFact,
    hours: float = 3.0,
    helper: bool = False,
    now: datetime | None = None,
    work_minutes: float | None = None,
    seed: int = 1,
) -> SessionPlan:
    """The session planned after these facts."""
    draw = random.Random(seed)
    return plan_session(
        *read(*facts), hours=hours, helper=helper, draw=draw, now=now, work_minutes=work_minutes
    )


def ids(plan: SessionPlan) -> list[str]:
    return [o.id for o in plan.operations]


def reasons(plan: SessionPlan) -> dict[str, str]:
    """Why each thing waits, by its name."""
    return {row.name: row.because for row in plan.waiting}
