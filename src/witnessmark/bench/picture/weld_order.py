"""A patch with its short runs numbered in order, and how warm the metal is that each meets."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from witnessmark.bench.picture.axes import Axis, round_ticks
from witnessmark.bench.picture.svg import (
    HAIR,
    SMALL,
    THICK,
    THIN,
    Frame,
    Point,
    arrow,
    drawing,
    line,
    polyline,
    rect,
    round_scale,
    scale_words,
    text,
)

LEFT, RIGHT = 22.0, 168.0


def order_picture(
    panel: Point,
    starts: Sequence[Point],
    ends: Sequence[Point],
    order: Sequence[int],
    rises: Sequence[float],
    in_turn: Sequence[float],
) -> str:
    """The panel to scale with each run's turn and the rise it meets; below, the rise by turn.

    rises    °C, in the order that the runs are laid
    in_turn  the same for one run after another, to compare
    """
    wide, tall = _reach(panel, starts, ends)
    scale = round_scale(min(136 / wide, 84 / tall))
    top = 26.0
    frame = Frame((LEFT + RIGHT - wide * scale) / 2, top + tall * scale, scale)
    low = top + tall * scale + 20
    shapes = [
        text((LEFT, 8), f"short runs in order, {scale_words(scale)}", bold=True),
        text((LEFT, 13), "bold: turn; small: °C above the air that the run meets", size=SMALL),
        *_patch(frame, panel, starts, ends),
        *_numbers(frame, panel, starts, ends, order, rises),
        *_by_turn(low, rises, in_turn),
    ]
    return drawing(190, low + 58, shapes, title="The order of short runs, and the warmth each meets")


def _reach(panel: Point, starts: Sequence[Point], ends: Sequence[Point]) -> Point:
    every = [(0.0, 0.0), *starts, *ends]
    return max(panel[0], *(p[0] for p in every)), max(panel[1], *(p[1] for p in every))


def _patch(frame: Frame, panel: Point, starts: Sequence[Point], ends: Sequence[Point]) -> Iterator[str]:
    yield rect(frame.at((0, 0)), frame.at(panel), width=HAIR)
    for a, b in zip(starts, ends, strict=True):
        p, q = frame.at(a), frame.at(b)
        long = math.dist(p, q)
        ux, uy = (q[0] - p[0]) / long, (q[1] - p[1]) / long
        gap = min(0.7, long * 0.12)
        yield line((p[0] + ux * gap, p[1] + uy * gap), (q[0] - ux * gap, q[1] - uy * gap), width=THICK * 1.8)
        yield arrow((q[0] - ux * gap, q[1] - uy * gap), (ux, uy), length=min(2.0, long * 0.3))


def _numbers(
    frame: Frame,
    panel: Point,
    starts: Sequence[Point],
    ends: Sequence[Point],
    order: Sequence[int],
    rises: Sequence[float],
) -> Iterator[str]:
    """Turn and, beyond it, rise, on the side away from the middle of the patch."""
    centre = frame.at((panel[0] / 2, panel[1] / 2))
    for turn, (i, rise) in enumerate(zip(order, rises, strict=True), 1):
        p, q = frame.at(starts[i]), frame.at(ends[i])
        long = math.dist(p, q)
        mx, my = (p[0] + q[0]) / 2, (p[1] + q[1]) / 2
        nx, ny = (q[1] - p[1]) / long, -(q[0] - p[0]) / long
        if nx * (mx - centre[0]) + ny * (my - centre[1]) < 0:
            nx, ny = -nx, -ny
        size = max(1.5, min(3.4, long * 0.36))
        yield text(
            (mx + nx * 3.4, my + ny * 3.4 + size * 0.35), str(turn), size=size, anchor="middle", bold=True
        )
        small = size * 0.78
        yield text((mx + nx * 7.6, my + ny * 7.2 + small * 0.35), f"{rise:.0f}", size=small, anchor="middle")


def _by_turn(top: float, rises: Sequence[float], in_turn: Sequence[float]) -> Iterator[str]:
    floor = top + 42
    most = max(*rises, *in_turn, 1.0)
    across, up = Axis(0.5, len(rises) + 0.5, LEFT, RIGHT), Axis(0, most * 1.08, floor, top)
    for value in round_ticks(0, most, 5):
        yield line((LEFT, up.at(value)), (RIGHT, up.at(value)), width=HAIR / 2)
        yield text((LEFT - 1.2, up.at(value) + 0.9), f"{value:g}", size=SMALL, anchor="end")
    thick = (across.at(2) - across.at(1)) * 0.6
    for turn, rise in enumerate(rises, 1):
        x = across.at(turn)
        yield rect((x - thick / 2, floor), (x + thick / 2, up.at(rise)), width=HAIR, fill="black")
    yield polyline([(across.at(t), up.at(r)) for t, r in enumerate(in_turn, 1)], width=THIN, dash="2 1")
    yield line((LEFT, floor), (RIGHT, floor), width=THIN)
    beside = [r for t, r in enumerate(in_turn, 1) if across.at(t + 1) > RIGHT - 26]
    yield text((RIGHT, up.at(max(beside)) - 1.4), "one after another", size=SMALL, anchor="end", halo=True)
    yield text((LEFT, top - 3), "°C above the air that each turn meets", size=SMALL)
    every = max(1, -(-len(rises) // 20))
    for turn in range(1, len(rises) + 1, every):
        yield text((across.at(turn), floor + 4), str(turn), size=SMALL, anchor="middle")
    yield text((RIGHT, floor + 9), "turn", size=SMALL, anchor="end")
