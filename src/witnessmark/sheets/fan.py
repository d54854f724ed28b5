"""How the road moved: for each month asked, the band from likely to nearly sure, drawn upright as a fan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct

from witnessmark.bench.picture.svg import (
    HAIR,
    PLAIN,
    SMALL,
    THICK,
    THIN,
    Point,
    drawing,
    line,
    polyline,
    text,
)

BROAD, NARROW = 180.0, 74.0
TALL, LEFT, TOP, FOOT, RIGHT = 96.0, 16.0, 12.0, 16.0, 6.0
MOST_MARKS = 9


class Asked(Struct, frozen=True):
    """What was known on a day: the day likely, and the day nearly sure; None beyond what can be told."""

    day: date
    likely: date | None
    high: date | None


def fan_svg(asked: Sequence[Asked], wide: float = BROAD) -> str:
    """The picture, mm on paper; "" where fewer than two days were asked about.

    Along: when it was asked. Upwards: when the road may be reached; the slanting line is the day of asking
    itself, which the band comes down to as the work gets done.
    """
    told = [one for one in asked if one.likely is not None]
    if len(told) < 2:
        return ""
    plot = _Plot(asked, told, wide)
    return drawing(
        wide, TALL, plot.shapes(), title="When the road may be reached, as it moved over the months"
    )


class _Plot:
    def __init__(self, asked: Sequence[Asked], told: Sequence[Asked], wide: float) -> None:
        self.asked, self.told, self.wide = asked, told, wide
        self.first, self.last = asked[0].day.toordinal(), asked[-1].day.toordinal()
        ends = [d.toordinal() for one in told for d in (one.likely, one.high) if d is not None]
        self.low, self.high = self.first, max(ends) + 30

    def at(self, along: date, up: date) -> Point:
        x = LEFT + 5 + (along.toordinal() - self.first) / max(1, self.last - self.first) * self._broad
        y = (up.toordinal() - self.low) / max(1, self.high - self.low)
        return x, TALL - FOOT - y * (TALL - FOOT - TOP)

    @property
    def _broad(self) -> float:
        return self.wide - LEFT - RIGHT - 10

    def shapes(self) -> Iterator[str]:
        yield text((LEFT, 6), "The road, month by month", size=PLAIN, bold=True)
        yield from self._years()
        yield from self._months()
        day = self.asked[-1].day
        yield polyline(
            [self.at(self.asked[0].day, self.asked[0].day), self.at(day, day)], width=HAIR, dash="2 1.5"
        )
        yield text(self.at(day, day), "asked", size=SMALL, anchor="end", halo=True)
        yield from self._bands()

    def _years(self) -> Iterator[str]:
        for year in range(date.fromordinal(self.low).year, date.fromordinal(self.high).year + 1):
            for month in (1, 7):
                day = date(year, month, 1)
                if not self.low <= day.toordinal() <= self.high:
                    continue
                _, y = self.at(self.asked[0].day, day)
                yield line((LEFT, y), (self.wide - RIGHT, y), width=HAIR)
                yield text(
                    (LEFT - 1.5, y + 1), f"{day:%b %Y}" if month == 1 else "July", size=SMALL, anchor="end"
                )

    def _months(self) -> Iterator[str]:
        step = max(1, -(-len(self.asked) // (MOST_MARKS if self.wide > NARROW else 4)))
        for one in self.asked[::step]:
            x, _ = self.at(one.day, one.day)
            yield text((x, TALL - FOOT + 5), f"{one.day:%b}", size=SMALL, anchor="middle")
            yield text((x, TALL - FOOT + 8.5), f"{one.day:%Y}", size=SMALL, anchor="middle")

    def _bands(self) -> Iterator[str]:
        """A thick stroke at the likely session, a line up to the nearly sure; open where far later."""
        middles = []
        for one in self.told:
            assert one.likely is not None
            x, y = self.at(one.day, one.likely)
            middles.append((x, y))
            end = self.at(one.day, one.high) if one.high is not None else (x, TOP - 2)
            yield line((x, y), end, width=THIN if one.high else HAIR, dash="" if one.high else "1 1")
            if one.high is not None:
                yield line((end[0] - 1.6, end[1]), (end[0] + 1.6, end[1]), width=THIN)
            yield line((x - 2.2, y), (x + 2.2, y), width=2 * THICK)
        yield polyline(middles, width=HAIR)
        x, y = middles[-1]
        yield text((x + 1, y + 4), "as likely as not", size=SMALL, anchor="end", halo=True)
        last = self.told[-1]
        if last.high is not None:
            x, y = self.at(last.day, last.high)
            yield text((x + 1, y - 1.5), "nine in ten", size=SMALL, anchor="end", halo=True)
