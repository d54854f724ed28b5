"""The optimiser and its arrays are loaded when a session is asked for, not before; and it is quick."""

import random
import subprocess
import sys
import time

from tests.building import evening, state_of
from tests.jobs.garages import from_lists
from witnessmark.jobs.jobs import jobs_of
from witnessmark.journal import facts as f
from witnessmark.owed.owed import owed_by
from witnessmark.plan.next_session import plan_session
from witnessmark.vehicle.sides import CORNERS


def run(code: str) -> tuple[str, str]:
    """What a fresh interpreter prints, on both streams."""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, encoding="utf-8")
    return done.stdout, done.stderr


def test_nothing_heavy_is_loaded_before_a_session_is_asked_for() -> None:
    code = "import sys, witnessmark.plan.next_session; print(sorted({'highspy', 'numpy'} & set(sys.modules)))"
    assert run(code) == ("[]\n", "")


def test_nothing_is_printed_when_the_optimiser_is_asked() -> None:
    code = (
        "from witnessmark.engines.pick import PickItem, PickProblem, pick; "
        "pick(PickProblem(items=(PickItem(minutes=1, values=(1,)),) * 9, capacity=5))"
    )
    assert run(code) == ("", "")


def test_two_hundred_joints_and_twenty_five_jobs_are_planned_while_a_person_waits() -> None:
    """Warm, about a fifth of a second on two cores; a second is allowed for a busy machine."""
    lists = [("drum-brake-corner", c) for c in CORNERS]
    lists += [("outrigger-repair", c) for c in CORNERS] + [("drive-axle", ""), ("fuel-tank-and-lines", "")]
    described = from_lists(*lists, ("gearbox-refit", ""), ("cooling-system", ""), ("windscreen", ""))
    names = [j.name for fact in described for j in fact.joints]
    chance = random.Random(3)
    done = [f.Opened(at=(n,)) for n in chance.sample(names, 60)]
    wanted = [f.Wanted(at=(n,), job="renew") for n in chance.sample(names, 25)]
    owned = [f.Owned(item=item, number=9) for item in ("split pin", "wheel nuts", "gear oil", "brake fluid")]
    state = state_of(*described, *done, *wanted, *owned)
    debts = owed_by(state, evening())
    jobs = jobs_of(state, debts)
    assert len(names) >= 150
    assert len(jobs) >= 25
    plan_session(state, debts, jobs, draw=random.Random(1))
    begun = time.perf_counter()
    plan = plan_session(state, debts, jobs, draw=random.Random(1))
    assert time.perf_counter() - begun < 1.0
    assert plan.operations
