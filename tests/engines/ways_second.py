"""The cheapest way asked of another solver, by levels: whatever goes stands above all that went before it."""

from __future__ import annotations

from ortools.sat.python import cp_model

from witnessmark.engines.cheapest_way import WayProblem


def second_cost(problem: WayProblem, targets: tuple[int, ...]) -> int:
    """The cost of the cheapest way to these targets, all of which can be reached."""
    model = cp_model.CpModel()
    size = len(problem.costs)
    goes = [model.new_bool_var("") for _ in range(size)]
    level = [model.new_int_var(0, size, "") for _ in range(size)]
    for thing in range(size):
        if thing in problem.gone:
            model.add(goes[thing] == 1)
            continue
        ways = []
        for route in problem.routes[thing] or ((),):
            way = model.new_bool_var("")
            ways.append(way)
            for member in route:
                model.add_implication(way, goes[member])
                if member not in problem.gone:
                    model.add(level[thing] > level[member]).only_enforce_if(way)
        model.add_bool_or([*ways, goes[thing].negated()])
        if thing in targets:
            model.add_bool_or(ways)
    model.minimize(sum(cost * goes[t] for t, cost in enumerate(problem.costs) if t not in problem.gone))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return round(solver.objective_value)
