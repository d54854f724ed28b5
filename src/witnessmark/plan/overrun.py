"""How far this owner's own guesses fall short: a conjugate posterior over the logarithm of taken to guessed.

y = ln(taken / likely guess) of one finished thing is normal with unknown mean and spread. Both are
learned together; with few lines the start counts, with many the lines. It multiplies guesses typed by
the owner, never minutes from the catalogue. The start is a choice of this project, not a measurement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from math import exp, log, prod, sqrt
from typing import Protocol

from msgspec import Struct

from witnessmark.plan.estimate import NORMAL
from witnessmark.plan.student import t_quantile
from witnessmark.state.standing import State
from witnessmark.state.supply import Line

# A factor drawn beyond this is counted as this: the mean of the curve does not exist. Our choice.
MOST = 20.0

TRIES = 200
GRID = 15


class Draw(Protocol):
    """A seeded generator handed down from the shell; `random.Random` is one."""

    def random(self) -> float: ...
    def gauss(self, mu: float, sigma: float, /) -> float: ...
    def gammavariate(self, alpha: float, beta: float, /) -> float: ...


class Overrun(Struct, frozen=True, kw_only=True):
    """Normal-inverse-gamma over (mean, variance) of y.

    centre, weight  of the mean: how many finished things it is worth
    shape, scale    of the variance
    finished        things learned from; open: guessed and not finished
    lasted          of those, y so far where it is told: what it comes to in the end is more
    """

    centre: float = 0.25
    weight: float = 2.0
    shape: float = 3.0
    scale: float = 0.75
    finished: int = 0
    open: int = 0
    lasted: tuple[float, ...] = ()

    @property
    def factor(self) -> float:
        """The median factor on a guess.

        >>> round(Overrun().factor, 2)
        1.28
        """
        return min(MOST, exp(self._middle()))

    @property
    def factor_high(self) -> float:
        """The factor one guess in ten goes beyond.

        >>> round(Overrun().factor_high, 2)
        3.1
        """
        width = sqrt(self.scale * (self.weight + 1) / (self.shape * self.weight))
        return min(MOST, exp(self.centre + t_quantile(0.9, round(2 * self.shape)) * width))

    def _middle(self) -> float:
        """The mean of y to be expected, with what is not finished counted for having lasted so long.

        Over a grid of even chances; the gamma quantiles by the cube of a normal (Wilson and Hilferty, 1931).
        """
        if not self.lasted:
            return self.centre
        steps = [NORMAL.inv_cdf((n + 0.5) / GRID) for n in range(GRID)]
        total = worth = 0.0
        for z in steps:
            gamma = self.shape * (1 - 1 / (9 * self.shape) + z / (3 * sqrt(self.shape))) ** 3
            spread = sqrt(self.scale / max(gamma, 1e-6))
            for w in steps:
                mean = self.centre + w * spread / sqrt(self.weight)
                outlasts = prod(1 - NORMAL.cdf((y - mean) / spread) for y in self.lasted)
                total, worth = total + mean * outlasts, worth + outlasts
        return total / worth if worth > 0 else max(self.centre, *self.lasted)

    def drawn(self, draw: Draw) -> tuple[float, float]:
        """One owner: mean and spread of y. Drawn once a sample, never once an operation.

        What has lasted so long and is not finished counts: an owner who would hardly have let it is
        seldom drawn. After so many tries the last one drawn is taken.
        """
        for _ in range(TRIES):
            variance = self.scale / draw.gammavariate(self.shape, 1.0)
            mean, spread = draw.gauss(self.centre, sqrt(variance / self.weight)), sqrt(variance)
            if all(draw.random() > NORMAL.cdf((y - mean) / spread) for y in self.lasted):
                break
        return mean, spread


def learned(logs: Iterable[float], start: Overrun | None = None) -> Overrun:
    """What finished things teach, given each y.

    >>> learned([0.5, 0.7, 0.6]).finished
    3
    """
    start = start or Overrun()
    seen = list(logs)
    if not seen:
        return start
    count, average = len(seen), sum(seen) / len(seen)
    weight = start.weight + count
    around = sum((y - average) ** 2 for y in seen)
    off = start.weight * count * (average - start.centre) ** 2 / (2 * weight)
    return Overrun(
        centre=(start.weight * start.centre + sum(seen)) / weight,
        weight=weight,
        shape=start.shape + count / 2,
        scale=start.scale + around / 2 + off,
        finished=start.finished + count,
        open=start.open,
        lasted=start.lasted,
    )


def owners_overrun(state: State) -> Overrun:
    """Learned from this record: each guess with the time the same thing and job then took."""
    return overrun_of(guesses_met(state))


def overrun_of(met: Iterable[Met]) -> Overrun:
    """What guesses teach: the finished ones by what they took, the others by having lasted so long."""
    every = list(met)
    so_far = tuple(one.log for one in every if not one.finished and one.minutes > 0)
    still_open = sum(not one.finished for one in every)
    return learned((one.log for one in every if one.finished), Overrun(open=still_open, lasted=so_far))


class Met(Struct, frozen=True):
    """A guess and what came of it: minutes it took, or has taken so far; 0 where none are told."""

    name: str
    guessed: float
    minutes: float
    finished: bool
    day: date

    @property
    def log(self) -> float:
        """The logarithm of taken to guessed."""
        return log(self.minutes / self.guessed)


def guesses_met(state: State) -> Iterator[Met]:
    """Every guess that still stands, with the minutes written for it afterwards.

    A time written with "so far" does not finish it.
    """
    guesses = [(name, line) for line in state.supply.guessed for name in line.fact.at if line.fact.likely > 0]
    for name, guess in guesses:
        if _replaced(name, guess, guesses):
            continue
        took = [t for t in state.supply.took if _same(name, guess, t)]
        minutes = sum(t.fact.minutes for t in took)
        finished = minutes > 0 and "so far" not in took[-1].fact.remark
        yield Met(name, guess.fact.likely, minutes, finished, took[-1].day if took else guess.day)


def _same(name: str, guess: Line, took: Line) -> bool:
    """Whether a time taken answers a guess: the same thing and job, written down later."""
    same_job = not took.fact.job or not guess.fact.job or took.fact.job == guess.fact.job
    return name in took.fact.at and same_job and (took.day, took.line) > (guess.day, guess.line)


def _replaced(name: str, guess: Line, guesses: list[tuple[str, Line]]) -> bool:
    """Whether a later guess on the same thing and job stands in this one's place."""
    return any(
        other == name
        and later.fact.job == guess.fact.job
        and (later.day, later.line) > (guess.day, guess.line)
        for other, later in guesses
    )


def factor_words(overrun: Overrun) -> str:
    """The factor in words, with what stands behind it.

    >>> factor_words(Overrun())
    'your guesses count 1.3 times, one in ten 3 times: a start, until you have finished things you guessed'
    """
    said = f"your guesses count {overrun.factor:.1f} times, one in ten {overrun.factor_high:.0f} times"
    if not overrun.finished:
        return f"{said}: a start, until you have finished things you guessed"
    things = "thing" if overrun.finished == 1 else "things"
    told = len(overrun.lasted)
    counted = f"; {told} not finished counted as taking longer yet" if told else ""
    silent = overrun.open - told
    left = counted + (f"; {silent} not finished left out, so it may be too small" if silent else "")
    return f"{said}: from {overrun.finished} finished {things}{left}"
