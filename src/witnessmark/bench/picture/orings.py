"""A ring in its groove, squeezed, at the nominal sizes and at both ends of the tolerances, to scale."""

from __future__ import annotations

import math
from collections.abc import Iterator

from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    SMALL,
    Frame,
    Point,
    arc,
    circle,
    dimension,
    drawing,
    hatching,
    line,
    polyline,
    round_scale,
    scale_words,
    section,
    text,
)
from witnessmark.bench.ring_search import Fit, Gland

WIDTH, TOP = 180.0, 14.0


def squeezed_outline(section_mm: float, depth: float, width: float) -> list[Point]:
    """A round section pressed flat between two faces, its area kept, as points about its middle.

    Where the groove is too narrow for it, the outline is the groove's: it cannot be drawn in.
    """
    if section_mm <= depth:
        return arc((0, 0), section_mm / 2, 0, 360, 48)
    flat = math.pi * (section_mm**2 - depth**2) / (4 * depth)
    flat = min(flat, max(width - depth, 0.0))
    right = arc((flat / 2, 0), depth / 2, -90, 90, 24)
    left = arc((-flat / 2, 0), depth / 2, 90, 270, 24)
    return [*right, *left]


def ring_picture(place: Gland, fit: Fit) -> str:
    """Three panels: least squeezed, as measured, most squeezed; the free ring dashed."""
    ring, off = fit.ring, place.within
    scale = round_scale(min(38 / place.width, 34 / (max(place.depth, ring.section) * 1.35)))
    panels = (
        ("least squeezed", ring.section - ring.section_tolerance, place.depth + off, place.width + 2 * off,
         fit.squeeze.low, fit.fill.low),
        ("as measured", ring.section, place.depth, place.width, fit.squeeze.value, fit.fill.value),
        ("most squeezed", ring.section + ring.section_tolerance, place.depth - off, place.width - 2 * off,
         fit.squeeze.high, fit.fill.high),
    )  # fmt: skip
    thin = fit.section / ring.section
    high = max(place.depth + off, ring.section) * scale
    floor = TOP + high + 10
    shapes = [
        text((10, 8), f"{_named(fit)} in a {place.kind} groove", size=LARGE,
             bold=True),
    ]  # fmt: skip
    for number, (words, free, depth, width, squeeze, fill) in enumerate(panels):
        frame = Frame(35.0 + 55.0 * number, floor, scale)
        shapes += _panel(frame, free, free * thin, depth, width)
        below = floor + 20
        x = frame.x
        shapes += [
            text((x, below), words, anchor="middle", bold=True),
            text(
                (x, below + 4.4), f"squeeze {squeeze:.1f} %, fill {fill:.1f} %", size=SMALL, anchor="middle"
            ),
        ]
    foot = f"free ring dashed; stretch {fit.stretch.value:+.1f} %".replace("-", "−")
    if fit.section < ring.section - 0.005:
        foot += f", so the section of {ring.section:g} mm thins to {fit.section:.2f} mm"
    shapes += [
        text((10, floor + 31), foot, size=SMALL),
        text((WIDTH - 10, floor + 31), scale_words(scale), size=SMALL, anchor="end"),
    ]
    return drawing(WIDTH, floor + 35, shapes, title=f"{ring.name} in its groove")


def _named(fit: Fit) -> str:
    size = f"{fit.ring.inside:g} x {fit.ring.section:g}"
    return f"{size} mm" if fit.ring.name == size else f"{fit.ring.name} ({size} mm)"


def _panel(frame: Frame, free: float, section_mm: float, depth: float, width: float) -> Iterator[str]:
    """Groove below, closing face above, ring between."""
    half, wall = width / 2, 25.0 / frame.scale
    below, above = 8.5 / frame.scale, 8.0 / frame.scale
    groove = [
        (-wall, -below), (wall, -below), (wall, depth), (half, depth), (half, 0), (-half, 0), (-half, depth),
        (-wall, depth),
    ]  # fmt: skip
    yield section(frame.all(groove), spacing=1.6, width=0.35)
    lid = [(-wall, depth), (wall, depth), (wall, depth + above), (-wall, depth + above)]
    yield section(frame.all(lid), spacing=1.6, angle=-45, width=0.35)
    middle = frame.at((0, min(depth, section_mm) / 2))
    body = [
        (middle[0] + x * frame.scale, middle[1] + y * frame.scale)
        for x, y in squeezed_outline(section_mm, depth, width)
    ]
    yield polyline(body, width=0.35, close=True, fill="white")
    for angle in (30.0, -30.0):
        for a, b in hatching([body], 0.8, angle):
            yield line(a, b, width=HAIR)
    yield polyline(body, width=0.4, close=True)
    yield circle(frame.at((0, free / 2)), free / 2 * frame.scale, width=0.25, dash="1.2 0.8")
    a, b = frame.at((-half, 0)), frame.at((half, 0))
    yield dimension((a[0], a[1] + 8.5), (b[0], b[1] + 8.5), f"{width:.2f}", off=-5.5, size=SMALL)
    low, high = frame.at((-half, 0)), frame.at((-half, depth))
    yield dimension(low, high, f"{depth:.2f}", off=5, size=SMALL)
