"""A second reading of a schedule, minute by minute on the clock; it shares no code with what made it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from witnessmark.engines.schedule_model import Answer, Placed, Problem, Schedule


def schedule_faults(problem: Problem, schedule: Schedule) -> tuple[str, ...]:
    """What is wrong with a schedule, each in one line; nothing when it holds.

    >>> from witnessmark.engines.schedule_model import Activity, Piece, Placed, Session, Target
    >>> problem = Problem(
    ...     activities=(Activity(minutes=60, demands=(1,)),), held_over=(True,),
    ...     sessions=(Session(start=540, minutes=120, capacities=(1,)),), targets=(Target(activities=(0,)),),
    ... )
    >>> schedule_faults(problem, Schedule((Placed((Piece(0, 600, 60),)),)))
    ()
    >>> schedule_faults(problem, Schedule((Placed((Piece(0, 610, 60),)),)))
    ('0 runs outside session 0',)
    """
    if len(schedule.placed) != len(problem.activities) or not all(p.pieces for p in schedule.placed):
        return ("not every activity is placed",)
    return (
        *_lengths(problem, schedule),
        *_inside(problem, schedule),
        *_carried_on(problem, schedule),
        *_waits(problem, schedule),
        *_capacities(problem, schedule),
        *_set_ups(problem, schedule),
    )


def answer_faults(problem: Problem, answer: Answer) -> tuple[str, ...]:
    """What is wrong with an answer: its schedule, its value, its ends, or a bound above its value."""
    if answer.troubles:
        return ()
    wrong = list(schedule_faults(problem, answer.schedule))
    if wrong:
        return tuple(wrong)
    ends = tuple(max(answer.schedule.placed[a].end for a in t.activities) for t in problem.targets)
    if ends != answer.ends:
        wrong.append("the ends said are not those of the targets")
    if sum(t.weight * end for t, end in zip(problem.targets, ends, strict=True)) != answer.value:
        wrong.append(f"the value said is {answer.value}")
    if answer.bound > answer.value:
        wrong.append(f"the bound {answer.bound} lies above the value {answer.value}")
    return tuple(wrong)


def _lengths(problem: Problem, schedule: Schedule) -> Iterator[str]:
    for number, (activity, placed) in enumerate(zip(problem.activities, schedule.placed, strict=True)):
        if placed.set_up and activity.group < 0:
            yield f"{number} has a set-up and needs none"
            continue
        due = activity.minutes + (problem.set_ups[activity.group] if placed.set_up else 0)
        got = sum(piece.minutes for piece in placed.pieces)
        if got != due:
            yield f"{number} runs {got} minutes, not {due}"


def _inside(problem: Problem, schedule: Schedule) -> Iterator[str]:
    for number, placed in enumerate(schedule.placed):
        for piece in placed.pieces:
            if not 0 <= piece.session < len(problem.sessions):
                yield f"{number} runs in no session"
                continue
            session = problem.sessions[piece.session]
            late = piece.start + piece.minutes > session.start + session.minutes
            if piece.minutes < 1 or piece.start < session.start or late:
                yield f"{number} runs outside session {piece.session}"


def _carried_on(problem: Problem, schedule: Schedule) -> Iterator[str]:
    """In one go in one piece; else to each session's end and on from the next one's start."""
    for number, placed in enumerate(schedule.placed):
        activity = problem.activities[number]
        kept = all(problem.held_over[r] for r, demand in enumerate(activity.demands) if demand)
        if len(placed.pieces) > 1 and (activity.in_one_go or not kept):
            yield f"{number} is put down and may not be"
        for one, other in zip(placed.pieces, placed.pieces[1:], strict=False):
            if not 0 <= one.session < other.session < len(problem.sessions):
                yield f"{number} goes back in time"
                continue
            left, right = problem.sessions[one.session], problem.sessions[other.session]
            to_the_end = one.start + one.minutes == left.start + left.minutes
            if other.session != one.session + 1 or not to_the_end or other.start != right.start:
                yield f"{number} is not carried on from session {one.session}"


def _waits(problem: Problem, schedule: Schedule) -> Iterator[str]:
    for number, (activity, placed) in enumerate(zip(problem.activities, schedule.placed, strict=True)):
        if placed.pieces[0].start < activity.earliest:
            yield f"{number} begins before minute {activity.earliest}"
    for link in problem.links:
        ready = _end(schedule.placed[link.before]) + link.minutes
        if schedule.placed[link.then].pieces[0].start < ready:
            yield f"{link.then} begins too soon after {link.before}"


def _end(placed: Placed) -> int:
    return max(piece.start + piece.minutes for piece in placed.pieces)


def _capacities(problem: Problem, schedule: Schedule) -> Iterator[str]:
    """What begins and ends in each session, swept along its minutes."""
    changes: dict[tuple[int, int], dict[int, int]] = defaultdict(lambda: defaultdict(int))
    for activity, placed in zip(problem.activities, schedule.placed, strict=True):
        for piece in placed.pieces:
            for resource, demand in enumerate(activity.demands):
                if demand:
                    changes[piece.session, resource][piece.start] += demand
                    changes[piece.session, resource][piece.start + piece.minutes] -= demand
    for (number, resource), steps in sorted(changes.items()):
        if not 0 <= number < len(problem.sessions):
            continue
        taken = 0
        for minute in sorted(steps):
            taken += steps[minute]
            if taken > problem.sessions[number].capacities[resource]:
                yield f"resource {resource} is taken {taken} times in session {number} at minute {minute}"
                break


def _set_ups(problem: Problem, schedule: Schedule) -> Iterator[str]:
    """Without a set-up of its own, another of the group has set up before it in the same session."""
    for number, placed in enumerate(schedule.placed):
        group, first = problem.activities[number].group, placed.pieces[0]
        if group < 0 or placed.set_up:
            continue
        ready = any(
            other.set_up
            and problem.activities[n].group == group
            and other.pieces[0].session == first.session
            and other.pieces[0].start + problem.set_ups[group] <= first.start
            for n, other in enumerate(schedule.placed)
        )
        if not ready and problem.set_ups[group] > 0:
            yield f"{number} begins and nothing was set up for it"
