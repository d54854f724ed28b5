"""Laws of a session: what must hold of every plan, whatever was done and wanted."""

import random

from hypothesis import given
from hypothesis import strategies as st

from tests.building import evening
from tests.jobs.garages import BASE, LAST_DAY, garages
from witnessmark.jobs.jobs import jobs_of
from witnessmark.journal.entry import Entry
from witnessmark.owed.owed import owed_by
from witnessmark.plan.check import faults_of
from witnessmark.plan.next_session import plan_session
from witnessmark.state.standing import state_from

hours_of = st.sampled_from([0.5, 1.5, 3.0, 6.0])


@given(garages(), hours_of, st.booleans())
def test_every_plan_stands_its_second_reading(entries: list[Entry], hours: float, helper: bool) -> None:
    state = state_from([*BASE, *entries])
    debts = owed_by(state, evening(LAST_DAY))
    jobs = jobs_of(state, debts)
    plan = plan_session(state, debts, jobs, hours=hours, helper=helper, draw=random.Random(1))
    assert faults_of(plan, state, debts, jobs) == ()
    assert plan.proven


@given(garages(), hours_of)
def test_a_helper_never_makes_less_possible(entries: list[Entry], hours: float) -> None:
    state = state_from([*BASE, *entries])
    debts = owed_by(state, evening(LAST_DAY))
    jobs = jobs_of(state, debts)
    paid = []
    for helper in (False, True):
        plan = plan_session(state, debts, jobs, hours=hours, helper=helper, draw=random.Random(1))
        weights = {d.id: d.if_missed for d in debts}
        paid.append(sum(weights[c] == "lets_go" for o in plan.operations for c in o.pays))
    wanted = sum(1 for o in (o for j in jobs if j.wanted for o in j.operations) if o.if_missed == "lets_go")
    assert paid[1] + wanted >= paid[0]
