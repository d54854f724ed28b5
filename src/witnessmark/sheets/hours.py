"""Where the hours went: each finished thing with its guess above and what it took below, to one scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from witnessmark.bench.picture.svg import HAIR, PLAIN, SMALL, THIN, drawing, line, rect, text
from witnessmark.sheets.phrases import minutes_words

BROAD, NARROW = 180.0, 74.0
ROW, HEAD, EDGE = 12.0, 16.0, 4.0
MOST = 12
FILLED = "black"


class Spent(Struct, frozen=True):
    """One thing: minutes guessed, and taken; `so_far` where it is not finished."""

    name: str
    guessed: float
    taken: float
    so_far: bool = False


def hours_svg(spent: Sequence[Spent], wide: float = BROAD) -> str:
    """The picture, mm on paper, at most twelve things; "" where nothing was both guessed and timed."""
    rows = spent[:MOST]
    if not rows:
        return ""
    high = HEAD + ROW * len(rows) + 8
    return drawing(wide, high, _shapes(rows, wide), title="Guess against log")


def _shapes(rows: Sequence[Spent], wide: float) -> Iterator[str]:
    longest = max(max(one.guessed, one.taken) for one in rows)
    yield text((EDGE, 6), "Where the hours went", size=PLAIN, bold=True)
    yield rect((EDGE, 9), (EDGE + 8, 11.5), width=THIN)
    yield text((EDGE + 10, 11.6), "guessed", size=SMALL)
    yield rect((EDGE + 28, 9), (EDGE + 36, 11.5), width=THIN, fill=FILLED)
    yield text((EDGE + 38, 11.6), "taken", size=SMALL)
    room = wide - 2 * EDGE - 22
    for n, one in enumerate(rows):
        top = HEAD + n * ROW
        yield text((EDGE + 1, top + 2.6), one.name, size=SMALL)
        yield from _bar(EDGE, top + 3.6, one.guessed / longest * room, one.guessed, filled=False)
        yield from _bar(
            EDGE, top + 6.9, one.taken / longest * room, one.taken, filled=True, so_far=one.so_far
        )
    yield line((EDGE, HEAD), (EDGE, HEAD + ROW * len(rows)), width=HAIR)


def _bar(
    x: float, y: float, long: float, minutes: float, *, filled: bool, so_far: bool = False
) -> Iterator[str]:
    yield rect((x, y), (x + max(0.4, long), y + 2.8), width=THIN, fill=FILLED if filled else "white")
    said = minutes_words(minutes) + (" so far" if so_far else "")
    yield text((x + long + 1.2, y + 2.4), said, size=SMALL)
