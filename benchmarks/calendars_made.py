"""Made-up restorations for measuring: jobs of a few operations each, sessions by the week, four gates.

Described in docs/performance.md; nothing here is measured on anybody. The same numbers give the same
problem. Resources: hands, a bench that can be held over the week, a welder and a spray corner that
cannot; a coat cures on the clock.
"""

from __future__ import annotations

import random

from witnessmark.engines.schedule_model import Activity, Link, Problem, Session, Target

DAY = 24 * 60
HANDS, BENCH, WELDER, SPRAY = range(4)
GATE_WEIGHTS = (4, 3, 2, 1)


def calendar_problem(operations: int, *, hard: bool, seed: int, set_ups: bool = False) -> Problem:
    """A problem with so many activities; hard: less help, longer cures, more in one go, later parts."""
    chance = random.Random(f"{operations}/{hard}/{seed}")
    activities: list[Activity] = []
    links: list[Link] = []
    jobs: list[list[int]] = []
    while len(activities) < operations:
        jobs.append(_job(chance, activities, links, min(operations - len(activities), 14), hard=hard))
    for later in range(1, len(jobs)):
        if chance.random() < (0.6 if hard else 0.35):
            earlier = jobs[chance.randrange(max(0, later - 6), later)]
            links.append(Link(chance.choice(earlier), jobs[later][0]))
    work = sum(a.minutes * a.demands[HANDS] for a in activities)
    return Problem(
        activities=tuple(activities),
        sessions=_sessions(chance, work, hard=hard),
        held_over=(True, True, False, False),
        targets=_targets(chance, jobs),
        links=tuple(links),
        set_ups=(20, 25) if set_ups else (0, 0),
    )


def _job(
    chance: random.Random, activities: list[Activity], links: list[Link], most: int, *, hard: bool
) -> list[int]:
    """Open, work, coat, close, prove: a chain with side branches, and parts that arrive for closing."""
    size = min(most, chance.randint(5, 14))
    numbers = list(range(len(activities), len(activities) + size))
    arrives = chance.randrange(1, 20 if hard else 9) * 7 * DAY if chance.random() < 0.4 else 0
    for place, number in enumerate(numbers):
        activities.append(_activity(chance, place / size, arrives, hard=hard))
        if place:
            before = numbers[max(0, place - chance.choice((1, 1, 1, 2, 3)))]
            wet = activities[before].demands[SPRAY]
            links.append(Link(before, number, chance.randint(1, 10 if hard else 5) * DAY if wet else 0))
    return numbers


def _activity(chance: random.Random, place: float, arrives: int, *, hard: bool) -> Activity:
    minutes = 5 * max(1, min(30, round(chance.lognormvariate(1.8 if hard else 1.6, 0.7))))
    sort = chance.random()
    welds, sprays = 0.35 < place < 0.6 and sort < 0.3, 0.5 < place < 0.8 and sort > 0.7
    return Activity(
        minutes=minutes,
        demands=(
            2 if chance.random() < (0.15 if hard else 0.08) else 1,
            1 if not welds and not sprays and chance.random() < 0.25 else 0,
            int(welds),
            int(sprays),
        ),
        in_one_go=chance.random() < (0.4 if hard else 0.2),
        earliest=arrives if place > 0.6 else 0,
        group=0 if welds else 1 if sprays else -1,
    )


def _sessions(chance: random.Random, work: int, *, hard: bool) -> tuple[Session, ...]:
    """Saturday mornings, some Wednesday evenings, none in August; a helper now and then."""
    found: list[Session] = []
    room, week = 0, 0
    while room < 1.6 * work + 60 * 180 or week < 40:
        week += 1
        if week % 52 in (31, 32, 33, 34) or chance.random() < 0.08:
            continue
        if chance.random() < (0.2 if hard else 0.4):
            found.append(_session(week * 7 * DAY + 2 * DAY + 19 * 60, 90, help_comes=False))
        found.append(
            _session(
                week * 7 * DAY + 5 * DAY + 9 * 60, 180, help_comes=chance.random() < (0.25 if hard else 0.4)
            )
        )
        room += found[-1].minutes
    return tuple(found)


def _session(start: int, minutes: int, *, help_comes: bool) -> Session:
    return Session(start=start, minutes=minutes, capacities=(2 if help_comes else 1, 1, 1, 1))


def _targets(chance: random.Random, jobs: list[list[int]]) -> tuple[Target, ...]:
    """Four gates, each asking for the jobs of the one before it and more; the last asks for all."""
    mixed = jobs[:]
    chance.shuffle(mixed)
    shares = (0.25, 0.5, 0.75, 1.0)
    counts = [max(1, round(share * len(mixed))) for share in shares]
    return tuple(
        Target(activities=tuple(sorted(n for job in mixed[:count] for n in job)), weight=weight)
        for count, weight in zip(counts, GATE_WEIGHTS, strict=True)
    )
