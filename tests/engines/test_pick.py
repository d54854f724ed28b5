"""The choice against trying every set, and its second reading against broken answers."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from witnessmark.engines.pick import Group, Picked, PickItem, PickProblem, Rule, pick, worth
from witnessmark.engines.pick_faults import pick_faults

RANKS, RESOURCES = 3, 2


@st.composite
def pick_problems(draw: st.DrawFn) -> PickProblem:
    size = draw(st.integers(1, 7))
    number = st.integers(0, size - 1)
    item = st.builds(
        PickItem,
        minutes=st.integers(0, 9),
        values=st.tuples(*[st.integers(0, 3)] * RANKS),
        uses=st.lists(st.tuples(st.integers(0, RESOURCES - 1), st.just(1)), max_size=1).map(tuple),
    )
    rule = st.builds(Rule, st.lists(number, min_size=1, max_size=2, unique=True).map(tuple), number)
    pair = st.tuples(st.none() | number, number)
    return PickProblem(
        items=tuple(draw(st.lists(item, min_size=size, max_size=size))),
        capacity=draw(st.integers(0, 20)),
        rules=tuple(draw(st.lists(rule, max_size=size))),
        groups=tuple(draw(st.lists(st.builds(Group, st.lists(pair, max_size=2).map(tuple)), max_size=3))),
        stocks=(2, 1),
        late=draw(st.integers(0, RANKS)),
    )


def figures(problem: PickProblem, choice: Picked) -> tuple[tuple[int, ...], int, tuple[int, ...], int]:
    """What a choice is measured by, heaviest first."""
    early = problem.ranks - problem.late
    return choice.values[:early], choice.safe, choice.values[early:], -choice.minutes


def best_of_all(problem: PickProblem) -> tuple[tuple[int, ...], int, tuple[int, ...], int]:
    """The best figures over every choice that keeps the rules."""
    every = [
        worth(problem, chosen, proven=True)
        for size in range(len(problem.items) + 1)
        for chosen in combinations(range(len(problem.items)), size)
    ]
    return max(figures(problem, c) for c in every if not pick_faults(problem, c))


@settings(max_examples=150)
@given(pick_problems())
def test_no_choice_pays_more_or_is_safer_or_shorter(problem: PickProblem) -> None:
    answer = pick(problem)
    assert pick_faults(problem, answer) == ()
    assert answer.proven
    assert figures(problem, answer) == best_of_all(problem)


def test_one_heavy_thing_beats_any_number_of_light_ones() -> None:
    items = (PickItem(minutes=60, values=(1, 0)), *(PickItem(minutes=2, values=(0, 9)) for _ in range(30)))
    assert pick(PickProblem(items=items, capacity=60)).items == (0,)


def test_what_must_come_along_comes_along_or_neither_does() -> None:
    items = (PickItem(minutes=10, values=(5,)), PickItem(minutes=10))
    tied = PickProblem(items=items, capacity=20, rules=(Rule((0,), 1),))
    assert pick(tied).items == (0, 1)
    assert pick(replace(tied, capacity=15)).items == ()


def test_what_is_opened_is_closed_again_where_nothing_better_can_be_done() -> None:
    items = (PickItem(minutes=10, values=(1,)), PickItem(minutes=10), PickItem(minutes=5))
    problem = PickProblem(items=items, capacity=25, groups=(Group(((0, 1),)),), rules=(Rule((1,), 0),))
    assert pick(problem).items == (0, 1)
    assert pick(replace(problem, capacity=12)).items == (0,)


def test_two_pins_close_two_joints_of_three() -> None:
    items = tuple(PickItem(minutes=5, values=(1,), uses=((0, 1),)) for _ in range(3))
    assert len(pick(PickProblem(items=items, capacity=60, stocks=(2,))).items) == 2


def test_many_ranks_are_solved_in_turn_and_stay_exact() -> None:
    items = tuple(PickItem(minutes=7 + n % 5, values=(n % 3, n % 4, n % 7, n % 5, n % 11)) for n in range(60))
    problem = PickProblem(items=items, capacity=60)
    answer = pick(problem)
    assert pick_faults(problem, answer) == ()
    greedy = sorted(range(60), key=lambda i: (-(i % 3) / items[i].minutes, i))
    chosen: list[int] = []
    for item in greedy:
        if sum(items[i].minutes for i in [*chosen, item]) <= 60:
            chosen.append(item)
    assert answer.values >= worth(problem, chosen, proven=True).values


def test_nothing_fits_and_nothing_is_chosen() -> None:
    assert pick(PickProblem(items=(PickItem(minutes=9, values=(1,)),), capacity=8)).items == ()


def test_the_second_reading_sees_each_fault() -> None:
    problem = PickProblem(
        items=tuple(PickItem(minutes=5, values=(v,), uses=((0, 1),)) for v in (1, 2)),
        capacity=9, rules=(Rule((1,), 0),), groups=(Group(((None, 1),)),), stocks=(1,),
    )  # fmt: skip
    good = pick(problem)
    assert pick_faults(problem, good) == ()
    assert len(pick_faults(problem, worth(problem, (0, 1), proven=True))) == 2
    assert pick_faults(problem, worth(problem, (1,), proven=True)) == ("item 0 is missing beside (1,)",)
    untrue = ({"minutes": 4}, {"values": (9,)}, {"safe": 1}, {"items": (0, 0)})
    assert all(pick_faults(problem, replace(good, **figure)) for figure in untrue)
