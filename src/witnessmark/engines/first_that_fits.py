"""A row of numbers in which the first one small enough is found in a few steps.

The row is kept as a tree of least numbers: place 1 is the least of all, places 2n and 2n + 1 the least
of the two halves of what place n covers, and the row itself stands in the upper half.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from witnessmark.engines.compiled import compiled

NOTHING = 1 << 20


def empty_row(count: int) -> NDArray[np.int32]:
    """A row with room for `count` numbers, nothing in it."""
    size = 1
    while size < count:
        size *= 2
    return np.full(2 * size, NOTHING, dtype=np.int32)


@compiled
def put(row: Any, at: int, number: int) -> None:
    """Write a number at a place; NOTHING takes it out."""
    place = at + (len(row) >> 1)
    row[place] = number
    place >>= 1
    while place >= 1:
        least = min(row[2 * place], row[2 * place + 1])
        if row[place] == least:
            return
        row[place] = least
        place >>= 1


@compiled
def first_from(row: Any, at: int, most: int) -> int:
    """The first place from `at` on whose number is not over `most`; -1 where there is none.

    >>> row = empty_row(4)
    >>> for at, number in enumerate((30, 10, 20, 10)): put(row, at, number)
    >>> first_from(row, 0, 20), first_from(row, 2, 15), first_from(row, 0, 5)
    (1, 3, -1)
    """
    size = len(row) >> 1
    if row[1] > most or at >= size:
        return -1
    place = at + size
    while row[place] > most:
        while place & 1:
            place >>= 1
        if place == 0:
            return -1
        place += 1
    while place < size:
        place *= 2
        if row[place] > most:
            place += 1
    return int(place - size)
