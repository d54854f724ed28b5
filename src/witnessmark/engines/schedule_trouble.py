"""What keeps a scheduling problem from having any schedule, found before anything is searched."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.engines.schedule_model import Activity, Problem, Session, Trouble


def troubles_of(problem: Problem) -> tuple[Trouble, ...]:
    """All troubles at once; numbers that mean nothing come alone, since nothing else can be told then.

    >>> from witnessmark.engines.schedule_model import Target
    >>> problem = Problem(
    ...     activities=(Activity(minutes=90, demands=(1,), in_one_go=True),), held_over=(True,),
    ...     sessions=(Session(start=0, minutes=60, capacities=(1,)),), targets=(Target(activities=(0,)),),
    ... )
    >>> troubles_of(problem)
    (Trouble(kind='too_long', activities=(0,), resource=-1, needed=90, there=60),)
    """
    broken = (*_numbers(problem), *_sessions(problem))
    return broken or (*_aims(problem), *_circles(problem), *_each(problem))


def _numbers(problem: Problem) -> Iterator[Trouble]:
    resources, count = len(problem.held_over), len(problem.activities)
    for number, activity in enumerate(problem.activities):
        shape = len(activity.demands) == resources and -1 <= activity.group < len(problem.set_ups)
        if not shape or activity.minutes < 1 or min((0, *activity.demands, activity.earliest)) < 0:
            yield Trouble(kind="numbers", activities=(number,))
    for link in problem.links:
        if not (0 <= link.before < count and 0 <= link.then < count) or link.minutes < 0:
            yield Trouble(kind="numbers", activities=(link.before, link.then))
    for target in problem.targets:
        strange = tuple(a for a in target.activities if not 0 <= a < count)
        if strange or target.weight < 0:
            yield Trouble(kind="numbers", activities=strange)
    if any(minutes < 0 for minutes in problem.set_ups):
        yield Trouble(kind="numbers")


def _sessions(problem: Problem) -> Iterator[Trouble]:
    """None at all, or some that overlap, are empty, or name other resources."""
    resources, free = len(problem.held_over), 0
    for session in problem.sessions:
        shape = len(session.capacities) == resources and min((0, *session.capacities)) >= 0
        if not shape or session.minutes < 1 or session.start < free:
            yield Trouble(kind="sessions", there=session.start)
            return
        free = session.end
    if problem.activities and not problem.sessions:
        yield Trouble(kind="sessions")


def _aims(problem: Problem) -> Iterator[Trouble]:
    if not problem.targets or any(not target.activities for target in problem.targets):
        yield Trouble(kind="nothing_aimed_at")


def _circles(problem: Problem) -> Iterator[Trouble]:
    """One circle of links, if there is any: found by walking back from what can never begin."""
    before: list[list[int]] = [[] for _ in problem.activities]
    then: list[list[int]] = [[] for _ in problem.activities]
    for link in problem.links:
        before[link.then].append(link.before)
        then[link.before].append(link.then)
    waits = [len(b) for b in before]
    ready = [n for n, count in enumerate(waits) if not count]
    while ready:
        for number in then[ready.pop()]:
            waits[number] -= 1
            if not waits[number]:
                ready.append(number)
    stuck = [n for n, count in enumerate(waits) if count]
    if stuck:
        yield Trouble(kind="circle", activities=_walked_back(stuck[0], before, waits))


def _walked_back(start: int, before: Sequence[Sequence[int]], waits: Sequence[int]) -> tuple[int, ...]:
    seen: dict[int, int] = {}
    walk: list[int] = []
    now = start
    while now not in seen:
        seen[now] = len(walk)
        walk.append(now)
        now = next(b for b in before[now] if waits[b])
    return tuple(reversed(walk[seen[now] :]))


def _each(problem: Problem) -> Iterator[Trouble]:
    """Each activity for itself: what it takes is there, long enough, and not before it may begin."""
    columns = list(zip(*(session.capacities for session in problem.sessions), strict=True))
    most = [max(column) for column in columns]
    for number, activity in enumerate(problem.activities):
        lacking = _lacking(problem, activity, most)
        if lacking is not None:
            resource, there = lacking
            needed = activity.demands[resource] if resource >= 0 else 0
            yield Trouble(
                kind="never_there", activities=(number,), resource=resource, needed=needed, there=there
            )
            continue
        needed = activity.minutes + (problem.set_ups[activity.group] if activity.group >= 0 else 0)
        together = problem.in_one_go(number)
        if _longest(problem.sessions, activity, activity.earliest, needed, together=together) >= needed:
            continue
        longest = _longest(problem.sessions, activity, 0, needed, together=together)
        if longest < needed:
            yield Trouble(kind="too_long", activities=(number,), needed=needed, there=longest)
        else:
            last = problem.sessions[-1].end
            yield Trouble(kind="too_late", activities=(number,), needed=activity.earliest, there=last)


def _lacking(problem: Problem, activity: Activity, most: Sequence[int]) -> tuple[int, int] | None:
    """A resource of which there is never enough, with the most there is; -1 where never all at once."""
    for resource, demand in enumerate(activity.demands):
        if most[resource] < demand:
            return resource, most[resource]
    return None if any(_suits(session, activity) for session in problem.sessions) else (-1, 0)


def _suits(session: Session, activity: Activity) -> bool:
    return all(d <= c for d, c in zip(activity.demands, session.capacities, strict=True))


def _longest(
    sessions: Sequence[Session], activity: Activity, earliest: int, enough: int, *, together: bool
) -> int:
    """Minutes of the longest session, or run of sessions, that suits it; enough is enough."""
    longest = run = 0
    for session in reversed(sessions):
        free = session.end - max(session.start, earliest)
        if longest >= enough or free <= 0:
            break
        run = 0 if not _suits(session, activity) else free if together else run + free
        longest = max(longest, run)
    return longest
