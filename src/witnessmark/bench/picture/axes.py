"""Axes for pictures that are plots: a value goes to a place on paper, and the ticks go with it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence

from msgspec import Struct

from witnessmark.bench.picture.svg import HAIR, PLAIN, SMALL, THIN, Point, line, rect, text


def straight(value: float) -> float:
    """A plain scale."""
    return value


class Axis(Struct, frozen=True):
    """One axis: values low to high lie from start to end on paper, spaced by a rising function."""

    low: float
    high: float
    start: float
    end: float
    spaced: Callable[[float], float] = straight

    def at(self, value: float) -> float:
        """The place on paper."""
        low, high = self.spaced(self.low), self.spaced(self.high)
        share = (self.spaced(value) - low) / (high - low)
        return self.start + share * (self.end - self.start)

    def holds(self, value: float) -> bool:
        """Whether a value lies on the axis."""
        return self.low <= value <= self.high

    def held(self, value: float) -> float:
        """The value, or the nearer end of the axis where it lies beyond."""
        return min(max(value, self.low), self.high)


class Plot(Struct, frozen=True):
    """Two axes and what is drawn between them."""

    x: Axis
    y: Axis

    def at(self, x: float, y: float) -> Point:
        """The place on paper of a pair."""
        return self.x.at(x), self.y.at(y)

    def curve(self, pairs: Iterable[tuple[float, float]]) -> list[Point]:
        """The pairs that lie on the plot, as places on paper."""
        return [self.at(x, y) for x, y in pairs if self.x.holds(x) and self.y.holds(y)]

    def frame(self, xs: Sequence[float], ys: Sequence[float], *, x_words: str, y_words: str) -> Iterator[str]:
        """The box, thin lines at the ticks, their numbers, and the words of both axes."""
        left, right, bottom, top = self.x.start, self.x.end, self.y.start, self.y.end
        for value in xs:
            at = self.x.at(value)
            yield line((at, bottom), (at, top), width=HAIR / 2)
            yield text((at, bottom + 4), _said(value), size=SMALL, anchor="middle")
        for value in ys:
            at = self.y.at(value)
            yield line((left, at), (right, at), width=HAIR / 2)
            yield text((left - 1.2, at + 0.9), _said(value), size=SMALL, anchor="end")
        yield rect((left, bottom), (right, top), width=THIN)
        yield text(((left + right) / 2, bottom + 8.6), x_words, size=PLAIN, anchor="middle")
        yield text((left - 9, (bottom + top) / 2), y_words, size=PLAIN, anchor="middle", turn=-90)


def apart(levels: Sequence[float], least: float = 3.4) -> list[float]:
    """The same levels, pushed down so far that words beside them do not overlap.

    >>> apart([10.0, 10.5, 30.0])
    [10.0, 13.4, 30.0]
    """
    placed: dict[int, float] = {}
    below = float("-inf")
    for i in sorted(range(len(levels)), key=lambda k: levels[k]):
        below = max(levels[i], below + least)
        placed[i] = below
    return [placed[i] for i in range(len(levels))]


def minus(words: str) -> str:
    """Words with a proper sign where a number is below nought.

    >>> minus("steel -6 °C, sub-floor")
    'steel −6 °C, sub-floor'
    """
    return re.sub(r"(?<![\w)])-(?=[0-9.])", "−", words)


def _said(value: float) -> str:
    """A tick in plain digits.

    >>> _said(-5.0), _said(20_000_000)
    ('−5', '20000000')
    """
    return minus(f"{value:.0f}" if abs(value) >= 1e5 else f"{value:g}")


def round_ticks(low: float, high: float, wanted: int = 6) -> tuple[float, ...]:
    """Round values between two ends, about as many as wanted.

    >>> round_ticks(3, 21)
    (5.0, 10.0, 15.0, 20.0)
    """
    step = next(
        s * d
        for d in (0.001, 0.01, 0.1, 1.0, 10.0, 100.0, 1000.0, 10000.0)
        for s in (1, 2, 5)
        if (high - low) / (s * d) <= wanted
    )
    first = -(-low // step)
    ticks = []
    while first * step <= high + 1e-9:
        ticks.append(round(first * step, 6) + 0.0)
        first += 1
    return tuple(ticks)
