"""Makespans of published instances against the best values known for them.

PSPLIB (Kolisch and Sprecher 1996), single mode, 30 activities: proven optima, as listed on the solution
page of the operations research group at Ghent University, read 2024-09-18 in a public copy of its table.
Job shops: Fisher and Thompson (1963), Lawrence (1984); optima as carried with the instances.
"""

import json
from pathlib import Path

import pytest

from benchmarks.instances import read_instance
from benchmarks.jobshop import job_shop
from witnessmark.engines.schedule import by_steps, schedule
from witnessmark.engines.schedule_check import answer_faults

HERE = Path(__file__).parent
PSPLIB = HERE / "psplib"
J30 = {
    "j301_1": 43, "j305_4": 63, "j309_3": 68, "j3013_1": 58,
    "j3013_9": 71, "j3029_5": 98, "j3041_7": 92, "j3045_2": 125,
}  # fmt: skip
HARD = {
    "j6013_2": (103, 106), "j6025_6": (112, 112), "j6041_3": (98, 98), "j6045_9": (123, 123),
    "j1206_3": (135, 135), "j12011_2": (147, 157), "j12031_4": (194, 218), "j12046_2": (186, 198),
}  # fmt: skip
SHOPS = {"ft06": 55, "la01": 666, "la05": 593}


@pytest.mark.parametrize(("name", "optimum"), J30.items())
def test_thirty_activities_are_scheduled_at_their_optimum(name: str, optimum: int) -> None:
    problem = read_instance(PSPLIB / f"{name}.sm")
    answer = schedule(problem, by_steps(20_000))
    assert answer_faults(problem, answer) == ()
    assert answer.value == optimum
    assert answer.bound <= optimum


@pytest.mark.parametrize("name", ["j301_1", "j305_4", "j3041_7"])
def test_the_exact_solver_proves_it(name: str) -> None:
    answer = schedule(read_instance(PSPLIB / f"{name}.sm"), by_steps(200, exact=30.0))
    assert answer.proven
    assert answer.value == J30[name]


@pytest.mark.parametrize(("name", "known"), HARD.items())
def test_bounds_and_makespans_of_hard_instances_lie_around_the_best_known(
    name: str, known: tuple[int, int]
) -> None:
    """Nothing lies below the lower bound known, no bound above the best known; a short run comes near."""
    problem = read_instance(PSPLIB / f"{name}.sm")
    answer = schedule(problem, by_steps(2_000))
    assert answer_faults(problem, answer) == ()
    assert known[0] <= answer.value <= 1.07 * known[1]
    assert answer.bound <= known[1]


@pytest.mark.parametrize(("name", "optimum"), SHOPS.items())
def test_job_shops_are_scheduled_at_their_optimum(name: str, optimum: int) -> None:
    instances = json.loads((HERE / "job_shops.json").read_text(encoding="utf-8"))
    problem = job_shop(instances[name])
    answer = schedule(problem, by_steps(500, exact=20.0))
    assert answer_faults(problem, answer) == ()
    assert answer.value == answer.bound == optimum
