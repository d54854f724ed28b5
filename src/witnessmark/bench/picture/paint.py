"""The paint window: through the night from a forecast, or at one moment as a thermometer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from msgspec import Struct

from witnessmark.bench.picture.axes import Axis, Plot, apart, minus, round_ticks
from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    PLAIN,
    SMALL,
    THICK,
    THIN,
    circle,
    drawing,
    line,
    polyline,
    rect,
    section,
    text,
)


class Hour(Struct, frozen=True):
    """One hour of a forecast, judged."""

    time: str
    air: float
    humidity: float
    steel: float
    dew: float
    verdict: str


LEFT, RIGHT, FLOOR, TOP = 20.0, 160.0, 84.0, 14.0


def night_picture(hours: Sequence[Hour], margin: float) -> str:
    """Steel, air and the line that steel must stay above, hour by hour; below them the hours that do."""
    ys = [v for h in hours for v in (h.air, h.steel, h.dew + margin, h.dew)]
    low, high = min(ys) - 1, max(ys) + 1.5
    plot = Plot(Axis(0, len(hours) - 1, LEFT, RIGHT), Axis(low, high, FLOOR, TOP))
    shapes = [*_night_ground(plot, hours), *_night_lines(plot, hours, margin), *_strip(plot, hours)]
    return drawing(186, 112, shapes, title="Paint window through the hours of a forecast")


def _night_ground(plot: Plot, hours: Sequence[Hour]) -> Iterator[str]:
    ticks = round_ticks(plot.y.low, plot.y.high)
    yield from plot.frame((), ticks, x_words="", y_words="°C")
    every = -(-len(hours) // 12)
    for i, one in enumerate(hours):
        if i % every == 0:
            at = plot.x.at(i)
            yield line((at, FLOOR), (at, FLOOR + 1.2), width=THIN)
            yield text((at, FLOOR + 4.6), _clock(one.time), size=SMALL, anchor="middle")
    yield from _days(plot, [_day(one.time) for one in hours])


def _days(plot: Plot, days: Sequence[str]) -> Iterator[str]:
    """Where a day begins, in a forecast that tells more than one."""
    if len(set(days)) == 1:
        return
    for i, day in enumerate(days):
        if i == 0 or day != days[i - 1]:
            at = plot.x.at(i)
            yield line((at, FLOOR), (at, TOP), width=HAIR)
            yield text((at + 1, TOP - 1.4), day, size=SMALL)


def _day(time: str) -> str:
    """The day of a time stamp, or nothing where it tells the hour alone."""
    words = time.replace("T", " ").split(" ")
    return words[0] if len(words) > 1 else ""


def _clock(time: str) -> str:
    """The hour of a time stamp, without its day."""
    return time.replace("T", " ").split(" ")[-1][:5]


def _night_lines(plot: Plot, hours: Sequence[Hour], margin: float) -> Iterator[str]:
    needed = [plot.at(i, h.dew + margin) for i, h in enumerate(hours)]
    dew = [plot.at(i, h.dew) for i, h in enumerate(hours)]
    steel = [plot.at(i, h.steel) for i, h in enumerate(hours)]
    air = [plot.at(i, h.air) for i, h in enumerate(hours)]
    yield section([*needed, *reversed(dew)], spacing=1.8, width=HAIR)
    yield polyline(dew, width=THIN)
    yield polyline(needed, width=THIN, dash="2.4 1")
    yield polyline(air, width=THIN, dash="0.6 1")
    yield polyline(steel, width=THICK * 1.4)
    names = (
        (steel[-1][1], "steel", True),
        (air[-1][1], "air", False),
        (needed[-1][1], f"dew + {margin:g}", False),
        (dew[-1][1], "dew point", False),
    )
    for y, (_, name, bold) in zip(apart([n[0] for n in names]), names, strict=True):
        yield text((RIGHT + 2, y + 1), name, size=SMALL, bold=bold)


def _strip(plot: Plot, hours: Sequence[Hour]) -> Iterator[str]:
    """The verdict of each hour as a strip under the plot."""
    half = (plot.x.at(1) - plot.x.at(0)) / 2
    top, bottom = FLOOR + 8, FLOOR + 15
    first = 0
    for verdict, alike in groupby(hours, key=lambda one: one.verdict):
        last = first + len(list(alike)) - 1
        left, right = max(LEFT, plot.x.at(first) - half), min(RIGHT, plot.x.at(last) + half)
        first = last + 1
        if verdict == "fits":
            yield rect((left, top), (right, bottom), width=0, fill="black")
        elif verdict == "marginal":
            yield section([(left, top), (right, top), (right, bottom), (left, bottom)], spacing=1.2, width=0)
    yield rect((LEFT, top), (RIGHT, bottom), width=THIN)
    yield text((LEFT, bottom + 5), "black: paint · hatched: doubtful · white: do not", size=SMALL)


def now_picture(air: float, steel: float, dew: float, margin: float, least: float) -> str:
    """One moment: steel against the dew point and the line that it must stand above."""
    values = (air, steel, dew, dew + margin, least)
    axis = Axis(min(values) - 2, max(values) + 2, 88, 16)
    shapes = [
        text((12, 9), "steel against dew", size=PLAIN, bold=True),
        *_scale(axis),
        section(
            [
                (40, axis.at(dew)),
                (70, axis.at(dew)),
                (70, axis.at(dew + margin)),
                (40, axis.at(dew + margin)),
            ],
            spacing=1.8,
            width=HAIR,
        ),
        *_marks(axis, air, steel, dew, margin, least),
    ]
    return drawing(140, 98, shapes, title="Steel against the dew point")


def _scale(axis: Axis) -> Iterator[str]:
    yield rect((40, axis.start), (70, axis.end), width=THIN)
    for value in round_ticks(axis.low, axis.high, 8):
        yield line((38.6, axis.at(value)), (40, axis.at(value)), width=THIN)
        yield text((37.4, axis.at(value) + 1), minus(f"{value:g}"), size=SMALL, anchor="end")
    yield text((30, axis.end - 2), "°C", size=SMALL, anchor="end")


def _marks(axis: Axis, air: float, steel: float, dew: float, margin: float, least: float) -> Iterator[str]:
    marks = (
        (dew, minus(f"dew point {dew:.1f} °C"), False),
        (dew + margin, minus(f"dew point and {margin:g}: {dew + margin:.1f} °C"), False),
        (least, minus(f"least for the coat {least:g} °C"), False),
        (air, minus(f"air {air:.3g} °C"), False),
        (steel, minus(f"steel {steel:.3g} °C"), True),
    )
    levels = apart([axis.at(v) for v, _, _ in marks], 4.6)
    for level, (value, words, bold) in zip(levels, marks, strict=True):
        y = axis.at(value)
        yield line((40, y), (70, y), width=THICK * 1.6 if bold else HAIR, dash="" if bold else "2 1")
        yield line((70, y), (80, level), width=HAIR)
        if bold:
            yield circle((55, y), 1.1, fill="black")
        yield text((81, level + 1.1), words, size=LARGE if bold else PLAIN, bold=bold)
