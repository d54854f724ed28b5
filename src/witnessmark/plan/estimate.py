"""One operation's minutes: three guesses kept exactly, and what a finding adds to them.

The shape is log-normal with one spread below the likely figure and one above it, so that the three
guesses come out as P10, P50 and P90. A finding is a second part of the mixture: with its own chance it
brings its own minutes.
"""

from __future__ import annotations

from functools import cache
from math import exp, inf, log
from statistics import NormalDist

from witnessmark.jobs.operation import Minutes, Operation

NORMAL = NormalDist()
Z90 = NORMAL.inv_cdf(0.9)

# What one finding takes: one seized fastener, by soak, heat, drill and tap. Common practice, no source.
FINDING = Minutes(5, 30, 240)

# How finely the sum of an operation and its finding is added up for a band.
SLICES = 40


def spreads(minutes: Minutes) -> tuple[float, float]:
    """The spread of the logarithm below and above the likely figure.

    >>> [round(s, 3) for s in spreads(Minutes(60, 120, 335))]
    [0.541, 0.801]
    """
    return log(minutes.likely / minutes.low) / Z90, log(minutes.high / minutes.likely) / Z90


def quantile(minutes: Minutes, chance: float) -> float:
    """The minutes not exceeded with a chance in 0..1.

    >>> [round(quantile(Minutes(30, 60, 240), p)) for p in (0.1, 0.5, 0.9)]
    [30, 60, 240]
    """
    return at(minutes, NORMAL.inv_cdf(chance))


def at(minutes: Minutes, z: float) -> float:
    """The minutes at a standard normal deviate: the sampler, when `z` is drawn."""
    below, above = spreads(minutes)
    return minutes.likely * exp((above if z > 0 else below) * z)


def deviate(minutes: Minutes, time: float) -> float:
    """The standard normal deviate at which an operation takes a time; infinite beyond what it can take."""
    if time <= 0:
        return -inf
    below, above = spreads(minutes)
    ratio = log(time / minutes.likely)
    spread = above if ratio >= 0 else below
    return ratio / spread if spread else (inf if ratio >= 0 else -inf)


def done_within(minutes: Minutes, time: float) -> float:
    """The chance, 0..1, of being done within a time in minutes, without findings.

    >>> round(done_within(Minutes(60, 120, 335), 180), 2)
    0.69
    """
    return _below(deviate(minutes, time))


@cache
def mean(minutes: Minutes, *, most: float = inf) -> float:
    """The mean in minutes; what goes beyond `most` is counted as `most`.

    >>> round(mean(Minutes(43.05, 120, 334.5)))
    165
    """
    below, above = spreads(minutes)
    cut = deviate(minutes, most) if most < inf else inf
    inside = _part_of_mean(below, -inf, min(cut, 0.0)) + _part_of_mean(above, 0.0, max(cut, 0.0))
    return minutes.likely * inside + (most * (1 - _below(cut)) if most < inf else 0.0)


def _part_of_mean(spread: float, low: float, high: float) -> float:
    """What a log-normal of median 1 gives to its mean between two deviates."""
    return exp(spread**2 / 2) * (_below(high - spread) - _below(low - spread))


def _below(z: float) -> float:
    return 0.0 if z == -inf else 1.0 if z == inf else NORMAL.cdf(z)


def planned(operation: Operation, factor: float = 1.0, *, most: float = inf) -> float:
    """Minutes to plan with: the mean of the mixture, a finding counted up to `most`.

    Sums of these are what a session is packed with. The curve leans to the long side, so a sum is
    met rather more often than not. `factor` is the owner's median factor; it counts on typed guesses only.
    """
    own = mean(operation.minutes) * (factor if operation.minutes.owner else 1.0)
    return own + operation.finding * mean(FINDING, most=most)


def band(operation: Operation) -> tuple[float, float, float]:
    """P10, P50 and P90 of one operation with the chance of a finding in it, before the owner's factor.

    >>> plain = Operation(id="a", what="", sort="open", name="", job="", minutes=Minutes(3, 5, 10))
    >>> [round(m) for m in band(plain)]
    [3, 5, 10]
    """
    if not operation.finding:
        return (operation.minutes.low, operation.minutes.likely, operation.minutes.high)
    low, likely, high = (_mixed_quantile(operation.minutes, operation.finding, p) for p in (0.1, 0.5, 0.9))
    return low, likely, high


def mixed_within(minutes: Minutes, finding: float, time: float) -> float:
    """The chance of being done within a time when a finding comes with the chance `finding`."""
    slices = (quantile(minutes, (n + 0.5) / SLICES) for n in range(SLICES))
    found = sum(done_within(FINDING, time - own) for own in slices) / SLICES
    return (1 - finding) * done_within(minutes, time) + finding * found


@cache
def _mixed_quantile(minutes: Minutes, finding: float, chance: float) -> float:
    low, high = minutes.low / 10, minutes.high + 20 * FINDING.high
    for _ in range(40):
        middle = (low * high) ** 0.5
        if mixed_within(minutes, finding, middle) < chance:
            low = middle
        else:
            high = middle
    return high
