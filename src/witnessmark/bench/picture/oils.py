"""Pictures about oil: the viscosity line beside the grades, and a case cold and hot."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from witnessmark.bench.oils import viscosity_at
from witnessmark.bench.picture.axes import Axis, Plot, apart, minus
from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    PLAIN,
    SMALL,
    THICK,
    THIN,
    circle,
    dimension,
    drawing,
    line,
    polyline,
    rect,
    text,
)
from witnessmark.bench.slip_text import figure
from witnessmark.ground.units import Celsius, Ratio

Band = tuple[str, float, float, float]
WIDE, HIGH = 178.0, 122.0
LEVELS = (0.4, 0.5, 1, 2, 3, 5, 10, 20, 50, 100, 200, 500, 1000, 5000, 20_000, 100_000, 1e6, 2e7)


def _double_log(viscosity: float) -> float:
    return math.log10(math.log10(viscosity + 0.7))


def _log_kelvin(celsius: float) -> float:
    return math.log10(celsius + 273.15)


def viscosity_picture(
    a: float,
    b: float,
    *,
    points: Sequence[tuple[float, float]],
    wanted: tuple[float, float],
    bands: Sequence[Band],
) -> str:
    """The straight line of an oil on double-logarithmic paper, with the grades beside it.

    points, wanted  (cSt, °C)
    bands           (name, least, most, temperature they are told at)
    """
    warmest = max(120.0, *(t for _, t in points), wanted[1])
    coldest = min(-20.0, *(t for _, t in points), wanted[1])
    seen = [wanted[0], *(v for v, _ in points)]
    thinnest = 2.0 if min(seen) >= 3 else 0.5 if min(seen) >= 0.8 else 0.4
    thickest = 1e5 if max(seen) <= 1e5 else 2e7
    plot = Plot(Axis(coldest, warmest, 20, 142, _log_kelvin), Axis(thinnest, thickest, 106, 12, _double_log))
    return drawing(
        WIDE, HIGH, _viscosity(plot, a, b, points, wanted, bands), title="Viscosity and temperature"
    )


def _viscosity(
    plot: Plot,
    a: float,
    b: float,
    points: Sequence[tuple[float, float]],
    wanted: tuple[float, float],
    bands: Sequence[Band],
) -> Iterator[str]:
    xs = [t for t in range(-60, 260, 20) if plot.x.holds(t)]
    ys = [v for v in LEVELS if plot.y.holds(v)]
    yield from plot.frame(xs, ys, x_words="temperature, °C", y_words="viscosity, cSt")
    yield from _grade_column(plot, bands)
    if plot.y.holds(told := _at(a, b, bands[0][3])):
        here = plot.at(bands[0][3], told)
        yield line(here, (plot.x.end + 4, here[1]), width=THIN, dash="1.2 1")
    inside = sorted(t for _, t in points)
    span = (plot.x.low, *inside, plot.x.high)
    for (cold, hot), dash in zip(pairwise(span), ("2 1.2", "", "2 1.2"), strict=True):
        steps = (cold + (hot - cold) * i / 40 for i in range(41))
        way = plot.curve((t, _at(a, b, t)) for t in steps)
        if len(way) > 1:
            yield polyline(way, width=THICK, dash=dash)
    for value, warm in points:
        yield circle(plot.at(warm, plot.y.held(value)), 1.0, width=THIN, fill="white")
    x, y = plot.at(wanted[1], plot.y.held(wanted[0]))
    yield line((x, plot.y.start), (x, y), width=HAIR, dash="1.2 1")
    yield line((plot.x.start, y), (x, y), width=HAIR, dash="1.2 1")
    yield circle((x, y), 1.0, width=THIN, fill="black")
    aside, anchor = (-2, "end") if x > (plot.x.start + plot.x.end) / 2 else (2, "start")
    below = 4.6 if aside < 0 else -2
    said = minus(f"{figure(wanted[0])} cSt at {wanted[1]:g} °C")
    yield text((x + aside, y + below), said, bold=True, halo=True, anchor=anchor)
    yield text((plot.x.start, 7), "whole between the two points of the sheet, broken beyond them", size=SMALL)


def _at(a: float, b: float, celsius: float) -> float:
    return viscosity_at(Ratio(a), Ratio(b), Celsius(celsius))


def _grade_column(plot: Plot, bands: Sequence[Band]) -> Iterator[str]:
    """The grades as a ladder at the right, at the height of their viscosities."""
    told_at = bands[0][3]
    x = plot.x.at(told_at)
    yield line((x, plot.y.start), (x, plot.y.end), width=THIN, dash="3 1")
    yield text((x, 10.4), f"grades at {told_at:g} °C", size=SMALL, anchor="middle", halo=True)
    left = plot.x.end + 4
    spans = [(plot.y.at(plot.y.held(low)), plot.y.at(plot.y.held(high))) for _, low, high, _ in bands]
    places = apart([(bottom + top) / 2 for bottom, top in spans], 2.7)
    for i, ((bottom, top), place, (name, *_)) in enumerate(zip(spans, places, bands, strict=True)):
        yield line((plot.x.end, bottom), (left, bottom), width=HAIR)
        yield line((plot.x.end, top), (left, top), width=HAIR)
        yield rect((left, bottom), (left + 3, top), width=THIN, fill="black" if i % 2 else "white")
        yield line((left + 3, (bottom + top) / 2), (left + 5.6, place), width=HAIR)
        yield text((left + 6.4, place + 0.9), name, size=SMALL)


def case_picture(
    *,
    case_cold: float,
    oil_cold: float,
    case_hot: float,
    oil_hot: float,
    cold: float,
    hot: float,
    breather: str,
    pressure: float,
) -> str:
    """A case cold and hot, heights true to volume; pressure is absolute in MPa, were it shut in."""
    shapes = [
        *_case(14, cold, case_cold, oil_cold, case_cold, breather),
        *_case(88, hot, case_hot, oil_hot, case_cold, breather),
        *_case_words(breather, pressure),
    ]
    return drawing(160, 112, shapes, title="Oil and air in the case, cold and hot")


def _case(x: float, warm: float, case: float, oil: float, unit: float, breather: str) -> Iterator[str]:
    scale, floor, wide = 62.0 / unit, 90.0, 34.0
    roof = floor - case * scale
    surface = max(roof, floor - oil * scale)
    for i in range(int((floor - surface) / 2.2) + 1):
        y = floor - 1.1 - i * 2.2
        if y > surface + 0.3:
            yield line((x + 1.5 + (i % 2) * 2, y), (x + wide - 1.5, y), width=HAIR, dash="3 2")
    yield line((x, surface), (x + wide, surface), width=THIN)
    yield rect((x, floor), (x + wide, roof), width=THICK)
    yield from _breather(x + wide / 2, roof, breather, spills=oil > case)
    yield text(
        (x + wide / 2, 100),
        f"{'cold' if x < 50 else 'hot'}, {warm:g} °C",
        size=LARGE,
        anchor="middle",
        bold=True,
    )
    yield dimension((x + wide, floor), (x + wide, surface), "", off=-5)
    yield text((x + wide + 7, (floor + surface) / 2 + 1), f"oil {oil:.3g} L", bold=True)
    air = max(0.0, case - oil)
    if air > 0:
        yield dimension((x + wide, surface), (x + wide, roof), "", off=-5)
        yield text((x + wide + 7, (surface + roof) / 2 + 1), f"air {air:.3g} L", bold=True)
    else:
        yield text((x + wide + 8, roof + 3), "no air left", bold=True)


def _breather(x: float, roof: float, breather: str, *, spills: bool) -> Iterator[str]:
    yield rect((x - 1.6, roof), (x + 1.6, roof - 7), width=THIN, fill="white")
    if breather == "blocked":
        yield rect((x - 1.6, roof - 3), (x + 1.6, roof - 7), width=THIN, fill="black")
        return
    yield line((x, roof - 1), (x, roof - 11), width=THIN)
    yield polyline([(x - 1, roof - 9), (x, roof - 11), (x + 1, roof - 9)])
    if spills:
        for away, drop in ((2.6, 6.4), (3.8, 4.0), (4.4, 1.4)):
            for side in (-1, 1):
                yield circle((x + side * away, roof - drop), 0.65, fill="black")


def _case_words(breather: str, pressure: float) -> Iterator[str]:
    over = (pressure - 0.1013) * 10
    shut = f"{figure(over)} bar over the air outside" if over < 20 else "more than any seal bears"
    yield text((14, 9), f"breather {breather}", size=PLAIN, bold=True)
    yield text((14, 107), f"shut in and hot: {shut}; a lip seal bears 0.2 to 0.5", size=PLAIN)
