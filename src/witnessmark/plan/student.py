"""Student's t with whole degrees of freedom, in the closed form of finite sums."""

from __future__ import annotations

from math import atan, cos, pi, sin, sqrt


def t_below(time: float, freedom: int) -> float:
    """The chance that a t of so many degrees of freedom lies at or below a value.

    >>> round(t_below(1.440, 6), 3)
    0.9
    """
    return 0.5 + (1 if time >= 0 else -1) * _within(abs(time), freedom) / 2


def t_quantile(chance: float, freedom: int) -> float:
    """The value below which a t lies with a chance between 0 and 1.

    >>> round(t_quantile(0.95, 10), 3)
    1.812
    """
    if chance < 0.5:
        return -t_quantile(1 - chance, freedom)
    low, high = 0.0, 1.0
    while t_below(high, freedom) < chance:
        high *= 2
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if t_below(middle, freedom) < chance else (low, middle)
    return high


def _within(value: float, freedom: int) -> float:
    """The chance of lying within a value either way of 0."""
    angle = atan(value / sqrt(freedom))
    side, flat = sin(angle), cos(angle)
    if freedom % 2 == 0:
        return side * _sum(1.0, 1, flat, freedom // 2)
    return 2 / pi * (angle + side * _sum(flat, 2, flat, freedom // 2))


def _sum(first: float, number: int, flat: float, terms: int) -> float:
    """first + first·c²·n/(n+1) + ..., each term the one before times c²·n/(n+1), n rising by two."""
    total, term = 0.0, first
    for _ in range(terms):
        total += term
        term *= flat**2 * number / (number + 1)
        number += 2
    return total
