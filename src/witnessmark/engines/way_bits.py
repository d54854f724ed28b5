"""Sets of small numbers as the bits of one integer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator


def bits(sets: Iterable[int]) -> int:
    """The union of sets.

    >>> bits([0b001, 0b100])
    5
    """
    union = 0
    for one in sets:
        union |= one
    return union


def set_of(numbers: Iterable[int]) -> int:
    """A set holding these numbers.

    >>> set_of([0, 2])
    5
    """
    return bits(1 << n for n in numbers)


def members(one: int) -> Iterator[int]:
    """The numbers in a set, smallest first.

    >>> list(members(5))
    [0, 2]
    """
    while one:
        lowest = one & -one
        yield lowest.bit_length() - 1
        one ^= lowest
