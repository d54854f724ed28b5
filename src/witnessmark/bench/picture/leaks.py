"""Looks for a leak in their order: wide as they take long, high as they are likely to show it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.bench.picture.axes import Axis, round_ticks
from witnessmark.bench.picture.svg import (
    HAIR,
    PLAIN,
    SMALL,
    THICK,
    THIN,
    drawing,
    line,
    polyline,
    rect,
    text,
)

Look = tuple[str, float, float, float]
LEFT, RIGHT, FLOOR, TOP = 24.0, 158.0, 82.0, 16.0


def leaks_picture(looks: Sequence[Look], elsewhere: float) -> str:
    """Minutes to the right, and how likely it is to have been found by then; one step a look."""
    minutes = sum(took for _, _, took, _ in looks)
    time = Axis(0, minutes, LEFT, RIGHT)
    share = Axis(0, 1, FLOOR, TOP)
    high = FLOOR + 22 + 5 * len(looks)
    shapes = [
        *_ground(time, share),
        *_steps(looks, time, share),
        *_names(looks, time),
        *_left_over(looks, elsewhere, share),
    ]
    return drawing(172, high, shapes, title="Looks for a leak, in order")


def _ground(time: Axis, share: Axis) -> Iterator[str]:
    for value in (0, 0.25, 0.5, 0.75, 1):
        yield line((LEFT, share.at(value)), (RIGHT, share.at(value)), width=HAIR / 2)
        yield text((LEFT - 1.5, share.at(value) + 1), f"{value * 100:g} %", size=SMALL, anchor="end")
    for value in round_ticks(0, time.high):
        yield line((time.at(value), FLOOR), (time.at(value), FLOOR + 1.2), width=THIN)
        yield text((time.at(value), FLOOR + 4.6), f"{value:g}", size=SMALL, anchor="middle")
    yield line((LEFT, FLOOR), (RIGHT, FLOOR), width=THIN)
    yield text((RIGHT, FLOOR + 9.5), "minutes of looking", size=SMALL, anchor="end")
    yield text((LEFT, 9), "chance of having found it by then", size=PLAIN, bold=True)


def _steps(looks: Sequence[Look], time: Axis, share: Axis) -> Iterator[str]:
    spent, sure = 0.0, 0.0
    way = [(LEFT, FLOOR)]
    for i, (_, chance, took, finds) in enumerate(looks, 1):
        start, end = time.at(spent), time.at(spent + took)
        after = sure + chance * finds
        yield rect((start, share.at(sure)), (end, share.at(after)), width=THIN, fill="white")
        yield rect((start, share.at(after)), (end, share.at(min(1.0, sure + chance))), width=HAIR, dash="1 1")
        inside = (start + end) / 2, share.at((sure + after) / 2) + 1.2
        above = (start + end) / 2, share.at(min(1.0, sure + chance)) - 1.2
        yield text(inside if end - start > 4 else above, str(i), bold=True, anchor="middle", halo=True)
        way += [(end, share.at(sure)), (end, share.at(after))]
        spent, sure = spent + took, after
    yield polyline(way, width=THICK)
    yield text((RIGHT + 1.5, share.at(sure) + 1), f"{sure * 100:.0f} %", bold=True, size=SMALL)


def _names(looks: Sequence[Look], time: Axis) -> Iterator[str]:
    spent = 0.0
    for i, (name, chance, took, finds) in enumerate(looks, 1):
        spent += took
        said = (
            f"{i}  {name}: {chance * 100:.3g} % likely, {took:g} min, a look shows it "
            f"{finds * 100:.3g} times in 100"
        )
        yield text((LEFT, FLOOR + 14 + 5 * i), said, size=SMALL)


def _left_over(looks: Sequence[Look], elsewhere: float, share: Axis) -> Iterator[str]:
    if elsewhere > 0.005:
        yield text(
            (RIGHT, TOP - 2), f"a place not on the list: {elsewhere * 100:.3g} %", size=SMALL, anchor="end"
        )
