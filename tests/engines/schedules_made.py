"""Small scheduling problems drawn by lot, and the best value by trying every order; written to be plain."""

from itertools import permutations

from hypothesis import strategies as st

from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target

FOREVER = 40


@st.composite
def schedule_problems(draw: st.DrawFn, *, most: int = 5, groups: bool = False) -> Problem:
    """A few activities in short sessions, the last of which is long enough for all; hands and a bench."""
    size = draw(st.integers(1, most))
    whole = st.integers
    activity = st.builds(
        Activity,
        minutes=whole(1, 4),
        demands=st.tuples(whole(1, 2), whole(0, 1)),
        in_one_go=st.booleans(),
        earliest=whole(0, 30),
        group=whole(-1, 0) if groups else st.just(-1),
    )
    later = [(a, b) for a in range(size) for b in range(a + 1, size)]
    pairs = draw(st.lists(st.sampled_from(later), max_size=size, unique=True)) if later else []
    target = st.builds(
        Target,
        activities=st.lists(whole(0, size - 1), min_size=1, max_size=size, unique=True).map(tuple),
        weight=whole(0, 5),
    )
    return Problem(
        activities=tuple(draw(st.lists(activity, min_size=size, max_size=size))),
        sessions=draw(calendars()),
        held_over=(True, draw(st.booleans())),
        targets=tuple(draw(st.lists(target, min_size=1, max_size=3))),
        links=tuple(Link(a, b, draw(st.sampled_from((0, 0, 1, 3, 7, 12)))) for a, b in pairs),
        set_ups=(draw(whole(0, 3)),) if groups else (),
    )


@st.composite
def calendars(draw: st.DrawFn) -> tuple[Session, ...]:
    """Short sessions with gaps between them, then one of forty minutes with everything there."""
    found, clock = [], 0
    for _ in range(draw(st.integers(0, 4))):
        clock += draw(st.integers(0, 9))
        minutes = draw(st.integers(1, 6))
        found.append(Session(start=clock, minutes=minutes, capacities=(draw(st.integers(1, 2)), 1)))
        clock += minutes
    clock += draw(st.integers(0, 9))
    return (*found, Session(start=clock, minutes=30 + FOREVER * 2, capacities=(2, 1)))


def best_value(problem: Problem) -> int:
    """Every order that keeps the links, each activity as early as it goes; without set-ups."""
    count = len(problem.activities)
    orders = permutations(range(count))
    kept = (o for o in orders if all(o.index(k.before) < o.index(k.then) for k in problem.links))
    return min(_value(problem, order) for order in kept)


def _value(problem: Problem, order: tuple[int, ...]) -> int:
    """The value when activities are laid down in this order, minute by minute."""
    minutes = [(n, s.start + m) for n, s in enumerate(problem.sessions) for m in range(s.minutes)]
    free = [list(problem.sessions[n].capacities) for n, _ in minutes]
    ends: dict[int, int] = {}
    for number in order:
        activity = problem.activities[number]
        ready = max(
            [activity.earliest, *(ends[k.before] + k.minutes for k in problem.links if k.then == number)]
        )
        first = next(
            at
            for at in range(len(minutes))
            if minutes[at][1] >= ready and _fits(problem, number, at, minutes, free)
        )
        for at in range(first, first + activity.minutes):
            free[at] = [f - d for f, d in zip(free[at], activity.demands, strict=True)]
        ends[number] = minutes[first + activity.minutes - 1][1] + 1
    return sum(t.weight * max(ends[a] for a in t.activities) for t in problem.targets)


def _fits(
    problem: Problem, number: int, at: int, minutes: list[tuple[int, int]], free: list[list[int]]
) -> bool:
    activity = problem.activities[number]
    stretch = range(at, at + activity.minutes)
    if stretch[-1] >= len(minutes):
        return False
    if problem.in_one_go(number) and len({minutes[m][0] for m in stretch}) > 1:
        return False
    return all(f >= d for m in stretch for f, d in zip(free[m], activity.demands, strict=True))
