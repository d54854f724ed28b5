"""The way in to something, as a sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from witnessmark.jobs.while_open import WhileOpen, Worth
from witnessmark.reach.way_in import Together, WayIn
from witnessmark.sheets.phrases import counted, minutes_words, missed_words, sheet_code
from witnessmark.sheets.rows import Section, Sheet, Step, Words

MOST_TARGETS = 3
SHOWN = 12


def reach_sheet(way: WayIn, more: WhileOpen, *, vehicle: str, today: date, line: int) -> Sheet:
    """What comes off first, what is worth doing then, what opening together saves, the next best ways."""
    wanted = _several(way.targets)
    steps = tuple(Step(number=n, text=name) for n, name in enumerate(way.remove, 1))
    sections = [
        Section(heading="Off first, outermost first", rows=steps, empty="Nothing: it can be reached.")
    ]
    if way.joints_opened:
        rows = tuple(Words(text=name) for name in way.joints_opened)
        sections.append(Section(heading="Opened on the way: each will owe its closing", rows=rows))
    if way.together:
        sections.append(Section(heading="Together, or one by one", rows=tuple(_together(way.together))))
    sections += _while_open(more)
    if way.alternatives:
        rows = tuple(
            Words(text=f"{', '.join(a.remove)} ({minutes_words(a.minutes)})") for a in way.alternatives
        )
        sections.append(Section(heading="Next best ways", rows=rows))
    unproven = f" A better way may exist: none takes less than {minutes_words(way.at_least)}."
    best = "" if way.proven else unproven
    return Sheet(
        kind="reach",
        title=f"Way in: {wanted}",
        vehicle=vehicle,
        date=today,
        line=line,
        code=sheet_code("reach", wanted, vehicle, today, line),
        headline=f"{counted(len(way.remove), 'thing')} off first, about {minutes_words(way.minutes)}.{best}",
        sections=tuple(sections),
    )


def _several(targets: Sequence[str]) -> str:
    if len(targets) > MOST_TARGETS:
        return f"{targets[0]} and {len(targets) - 1} more"
    return " and ".join(targets)


def _together(told: Together) -> Iterator[Words]:
    """Against opening and closing for each, and against each one's own best way opened at once."""
    at_once = minutes_words(told.at_once)
    yield Words(label="all in one opening", text=at_once)
    yield Words(label="each by itself, one after the other", text=minutes_words(told.one_by_one))
    same = "the same" if told.same_day == told.at_once else minutes_words(told.same_day)
    yield Words(label="each its own best way, all opened once", text=same)


def _while_open(more: WhileOpen) -> Iterator[Section]:
    note = (
        f"No more than {minutes_words(more.cap)}, a quarter of the {minutes_words(more.planned)} planned; "
        "what lets go is not bound by that. Common practice, no source."
    )
    if more.worth:
        rows = tuple(Words(label=w.name, text=_worth(w)) for w in more.worth)
        refuse = f'A no is kept with its reason: write "{more.worth[-1].refuse}"'
        rows = (*rows, Words(text=refuse, sort="aside"))
        yield Section(heading="Worth doing while it is open", rows=rows, note=note)
    if more.beyond:
        text = "; ".join(w.name for w in more.beyond[:SHOWN])
        rest = f" and {len(more.beyond) - SHOWN} more" if len(more.beyond) > SHOWN else ""
        yield Section(heading="Beyond that, for another day", rows=(Words(text=f"{text}{rest}"),))
    if more.refused:
        rows = tuple(
            Words(label=r.name, text=f"{r.why or 'no reason written'} (line {r.line})") for r in more.refused
        )
        yield Section(heading="Left as it is, and why", rows=rows)


def _worth(one: Worth) -> str:
    later = f"{minutes_words(one.now)} now, {minutes_words(one.later)} later"
    things = f": {', '.join(one.needs)}" if one.needs else ""
    return f"{one.what}. {later}. {missed_words(one.if_missed)}. {one.parts}{things}."
