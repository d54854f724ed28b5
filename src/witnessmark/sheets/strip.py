"""The plan as a strip of sessions: what is done in each; under them, as thin lines, what dries or comes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from witnessmark.bench.picture.svg import HAIR, LARGE, PLAIN, SMALL, THICK, THIN, drawing, line, rect, text
from witnessmark.plan.timetable import Held, Timetable, Wait
from witnessmark.sheets.phrases import counted
from witnessmark.sheets.timetable import job_words

# Paper millimetres, for a desk and for a phone; sessions beside one another, and in all.
BROAD, NARROW = 190.0, 78.0
ACROSS = {BROAD: 3, NARROW: 1}
MOST = {BROAD: 6, NARROW: 5}

EDGE, GAP = 3.0, 3.0
HEAD, LINE, LEAST_LINES = 13.0, 5.2, 2
MOST_LINES, MOST_WAITS = 6, 4
WAIT = 6.0


def strip_svg(plan: Timetable, names: Mapping[str, str], wide: float = BROAD) -> str:
    """The next sessions as boxes from left to right, mm on paper; "" where there is none.

    A box holds its jobs with their minutes; a session in which the plan comes to a gate has a heavy foot
    with the gate's name. Thin lines below the boxes run over the days in which a coat dries or a parcel
    is on its way.
    """
    shown = plan.held[: MOST[wide]]
    if not shown:
        return ""
    across = ACROSS[wide]
    shapes: list[str] = []
    top = EDGE
    for first in range(0, len(shown), across):
        row = shown[first : first + across]
        until = shown[first + across].session.day if first + across < len(shown) else None
        drawn = _Row(plan, row, until, names, top, wide)
        shapes += drawn.shapes()
        top = drawn.foot + GAP
    title = f"The next {counted(len(shown), 'session')} of {len(plan.held)}"
    return drawing(wide, top, shapes, title=title)


class _Row:
    """Boxes beside one another with the thin lines under them."""

    def __init__(
        self,
        plan: Timetable,
        row: Sequence[Held],
        until: date | None,
        names: Mapping[str, str],
        top: float,
        wide: float,
    ) -> None:
        self.plan, self.row, self.names, self.top, self.wide = plan, row, names, top, wide
        across = ACROSS[wide]
        self.broad = (wide - 2 * EDGE - GAP * (across - 1)) / across
        lines = max(LEAST_LINES, *(min(len(_jobs(h)), MOST_LINES + 1) for h in row))
        self.tall = HEAD + LINE * lines + 6
        self.first = row[0].session.day
        self.until = until or row[-1].session.day + timedelta(days=7)
        self.waits = [w for w in plan.waits if w.last >= self.first and w.first < self.until][:MOST_WAITS]
        self.foot = top + self.tall + WAIT * len(self.waits) + (2 if self.waits else 0)

    def shapes(self) -> Iterator[str]:
        for number, held in enumerate(self.row):
            yield from self._box(held, EDGE + number * (self.broad + GAP))
        for number, wait in enumerate(self.waits):
            yield from self._wait(wait, self.top + self.tall + WAIT * (number + 1))

    def _box(self, held: Held, x: float) -> Iterator[str]:
        y, foot = self.top, self.top + self.tall
        gates = [g for g in self.plan.gates if g.session is not None and g.session == held.session]
        yield rect((x, y), (x + self.broad, foot), width=THIN, fill="white")
        yield text((x + 2, y + 5), f"{held.session.day:%a} {held.session.day.day} {held.session.day:%b}",
                   size=LARGE, bold=True)  # fmt: skip
        yield text((x + self.broad - 2, y + 5), f"w {held.session.day.isocalendar().week}", size=PLAIN,
                   anchor="end")  # fmt: skip
        hands = "with the helper" if held.helper else "a helper counted on" if held.assumed else ""
        minutes = sum(s.minutes for s in held.stints)
        yield text((x + 2, y + 9.6), f"{minutes} min{', ' if hands else ''}{hands}", size=SMALL)
        yield line((x, y + HEAD - 1.5), (x + self.broad, y + HEAD - 1.5), width=HAIR)
        yield from self._work(held, x, y + HEAD + 3)
        if gates:
            named = ", ".join(self.names.get(g.gate, g.gate) for g in gates)
            yield line((x, foot), (x + self.broad, foot), width=3 * THICK)
            yield text(
                (x + 2, foot - 2.2), _cut(f"gate: {named}", int(self.broad / 1.7)), size=PLAIN, bold=True
            )

    def _work(self, held: Held, x: float, y: float) -> Iterator[str]:
        jobs = _jobs(held)
        for number, (job, minutes) in enumerate(jobs[:MOST_LINES]):
            at = y + LINE * number
            yield text((x + 2, at), _cut(job, int((self.broad - 11) / 1.62)), size=PLAIN)
            yield text((x + self.broad - 2, at), str(minutes), size=PLAIN, anchor="end")
        if len(jobs) > MOST_LINES:
            yield text((x + 2, y + LINE * MOST_LINES), f"and {len(jobs) - MOST_LINES} more", size=PLAIN)

    def _wait(self, wait: Wait, y: float) -> Iterator[str]:
        """A thin line over its days, with short ends where it begins and stops inside this row."""
        left, right = self._x(wait.first), self._x(wait.last + timedelta(days=1))
        yield line((left, y), (right, y), width=THIN, dash="1.5 1" if wait.sort == "post" else "")
        for x, inside in ((left, wait.first >= self.first), (right, wait.last < self.until)):
            if inside:
                yield line((x, y - 1), (x, y + 1), width=THIN)
        yield text((min(left + 0.5, self.wide - 60), y - 1.2), _cut(wait.what, 44), size=SMALL)

    def _x(self, day: date) -> float:
        """Where a day lies: the days of the row spread over its width."""
        whole = max(1, (self.until - self.first).days)
        part = min(1.0, max(0.0, (day - self.first).days / whole))
        return EDGE + part * (self.wide - 2 * EDGE)


def _jobs(held: Held) -> list[tuple[str, int]]:
    """The jobs in the order they are begun, with all their minutes in the session."""
    minutes: dict[str, int] = {}
    for stint in held.stints:
        job = job_words(stint)
        minutes[job] = minutes.get(job, 0) + stint.minutes
    return list(minutes.items())


def _cut(words: str, room: int) -> str:
    return words if len(words) <= room else f"{words[: room - 1].rstrip()}…"
