"""A bend, folded and developed flat, to scale."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from witnessmark.bench.picture.svg import (
    HAIR,
    PLAIN,
    SMALL,
    THICK,
    THIN,
    Point,
    dimension,
    drawing,
    line,
    rect,
    round_scale,
    scale_words,
    section,
    text,
)
from witnessmark.bench.slip_text import figure


def bend_picture(
    thickness: float, radius: float, angle: float, legs: tuple[float, ...], allowance: float, deduction: float
) -> str:
    """The strip in section, and below it the flat with its bend lines; one scale for both."""
    straights = _straights(thickness, radius, angle, legs)
    outline = _folded(thickness, radius, angle, straights)
    xs, ys = [p[0] for p in outline], [p[1] for p in outline]
    flat = sum(legs) - (len(legs) - 1) * deduction
    scale = round_scale(min(130 / max(flat, max(xs) - min(xs)), 62 / (max(ys) - min(ys))))
    high = (max(ys) - min(ys)) * scale
    on_paper = [(20 + (x - min(xs)) * scale, 14 + high - (y - min(ys)) * scale) for x, y in outline]
    outside = " + ".join(f"{leg:g}" for leg in legs)
    said = f"folded, {scale_words(scale)}: outside {outside} mm, {angle:g}°, inside radius {radius:g} mm"
    shapes = [
        section(on_paper, spacing=max(0.9, thickness * scale * 0.6)),
        text((20, 8), said, size=SMALL),
        *_flat(20, 14 + high + 22, scale, straights, allowance, flat),
    ]
    wide = max(116.0, 40 + max(flat, max(xs) - min(xs)) * scale)
    return drawing(wide, 14 + high + 58, shapes, title="A bend developed flat")


def _straights(thickness: float, radius: float, angle: float, legs: tuple[float, ...]) -> list[float]:
    """The straight part of each leg, between its bends."""
    back = (radius + thickness) * math.tan(math.radians(angle) / 2)
    last = len(legs) - 1
    return [max(0.1, leg - back * ((i > 0) + (i < last))) for i, leg in enumerate(legs)]


def _folded(thickness: float, radius: float, angle: float, straights: list[float]) -> list[Point]:
    """The outline of the strip in section, in real mm: along the outside, back along the inside."""
    turn = math.radians(angle)
    x, y, way = 0.0, 0.0, 0.0
    outside: list[Point] = []
    inside: list[Point] = []

    def mark() -> None:
        nx, ny = -math.sin(way), math.cos(way)
        outside.append((x, y))
        inside.append((x + nx * thickness, y + ny * thickness))

    mark()
    for i, long in enumerate(straights):
        x, y = x + math.cos(way) * long, y + math.sin(way) * long
        mark()
        if i < len(straights) - 1:
            for _ in range(12):
                chord = 2 * (radius + thickness) * math.sin(turn / 24)
                middle = way + turn / 24
                x, y = x + math.cos(middle) * chord, y + math.sin(middle) * chord
                way += turn / 12
                mark()
    return [*outside, *reversed(inside)]


def _flat(
    x: float, y: float, scale: float, straights: list[float], allowance: float, flat: float
) -> Iterator[str]:
    wide = 12.0
    yield text((x, y - 5.5), "flat, as cut: bend between the broken lines", size=SMALL)
    yield rect((x, y), (x + flat * scale, y + wide), width=THICK)
    at = 0.0
    marks = [0.0]
    for i, long in enumerate(straights):
        at += long
        if i < len(straights) - 1:
            for edge in (at, at + allowance):
                yield line((x + edge * scale, y), (x + edge * scale, y + wide), width=THIN, dash="2 1")
            middle = x + (at + allowance / 2) * scale
            yield line((middle, y - 2), (middle, y + wide + 2), width=HAIR, dash="4 1 1 1")
            marks.append(at + allowance / 2)
            at += allowance
    yield dimension((x, y + wide), (x + flat * scale, y + wide), f"{figure(flat)} mm", off=-16)
    marks.append(flat)
    for a, b in pairwise(marks):
        ends = (x + a * scale, y + wide), (x + b * scale, y + wide)
        yield dimension(*ends, f"{b - a:.1f}", off=-8, size=PLAIN, before=a == 0)
