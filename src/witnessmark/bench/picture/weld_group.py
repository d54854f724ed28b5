"""A group of welds in its plane, to scale: what each end carries, and where the force pulls."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from witnessmark.bench.picture.svg import (
    HAIR,
    SMALL,
    THICK,
    THIN,
    Frame,
    Point,
    arrow,
    centre_line,
    circle,
    drawing,
    line,
    round_scale,
    scale_words,
    text,
)
from witnessmark.bench.slip_text import figure
from witnessmark.bench.weld_group import Group, Vector

MOST_FIGURES, MOST_NUMBERS = 16, 12


class End(Struct, frozen=True):
    """One end of a line and what it carries."""

    line: int
    x: float
    y: float
    value: float
    worst: bool


def group_picture(group: Group, load: Vector, at: Vector, ends: Sequence[End], unit: str) -> str:
    """The lines thick, the centre with its principal axes, the force as an arrow, a figure at each end."""
    xs = [p[0] for way in group.lines for p in way] + [at[0], group.x]
    ys = [p[1] for way in group.lines for p in way] + [at[1], group.y]
    wide, tall = max(xs) - min(xs) or 1.0, max(ys) - min(ys) or 1.0
    scale = round_scale(min(96 / wide, 66 / tall))
    left, top = 36.0, 30.0
    frame = Frame(left - min(xs) * scale, top + max(ys) * scale, scale)
    high = top + tall * scale + 34
    shapes = [
        text((10, 8), f"weld group, {scale_words(scale)}; figures in {unit}", bold=True),
        *_axes(frame, group),
        *_lines(frame, group),
        *_force(frame, load, at),
        *_figures(frame, group, ends),
        text((10, high - 4), "one for one, as built; certifier where the law asks", size=SMALL),
    ]
    return drawing(max(120.0, left + wide * scale + 44), high, shapes, title="Weld group")


def _axes(frame: Frame, group: Group) -> Iterator[str]:
    """Both principal axes through the centre; the longer stands for the greater moment."""
    centre = frame.at((group.x, group.y))
    turn = math.radians(group.principal()[2])
    for angle, reach in ((turn, 20.0), (turn + math.pi / 2, 12.0)):
        c, s = math.cos(angle) * reach, -math.sin(angle) * reach
        yield centre_line((centre[0] - c, centre[1] - s), (centre[0] + c, centre[1] + s))
    yield circle(centre, 0.9, width=THIN, fill="white")


def _lines(frame: Frame, group: Group) -> Iterator[str]:
    for i, (a, b) in enumerate(group.lines, 1):
        p, q = frame.at(a), frame.at(b)
        yield line(p, q, width=THICK * 2.4)
        if len(group.lines) > MOST_NUMBERS:
            continue
        yield text(
            _aside(p, q, (frame.at((group.x, group.y))), -3.4), str(i), size=SMALL, anchor="middle", halo=True
        )


def _aside(p: Point, q: Point, centre: Point, far: float) -> Point:
    """Beside the middle of a line, away from the centre where far is above 0."""
    mx, my = (p[0] + q[0]) / 2, (p[1] + q[1]) / 2
    long = math.dist(p, q) or 1.0
    nx, ny = (q[1] - p[1]) / long, -(q[0] - p[0]) / long
    if nx * (mx - centre[0]) + ny * (my - centre[1]) < 0:
        nx, ny = -nx, -ny
    return mx + nx * far, my + ny * far + 1


def _force(frame: Frame, load: Vector, at: Vector) -> Iterator[str]:
    fx, fy, fz = load
    place = frame.at((at[0], at[1]))
    flat = math.hypot(fx, fy)
    said = f"{figure(math.hypot(flat, fz))} N"
    if flat > 1e-9:
        ux, uy = fx / flat, -fy / flat
        tail = (place[0] - ux * 16, place[1] - uy * 16)
        yield line(tail, place, width=THICK)
        yield arrow(place, (ux, uy), length=3.4)
        yield text((tail[0] + 1.6, tail[1] - 1.2), said, bold=True, halo=True)
    if abs(fz) > 1e-9:
        yield circle(place, 2.2, width=THIN, fill="white")
        if fz > 0:
            yield circle(place, 0.6, fill="black")
        else:
            yield line((place[0] - 1.5, place[1] - 1.5), (place[0] + 1.5, place[1] + 1.5))
            yield line((place[0] - 1.5, place[1] + 1.5), (place[0] + 1.5, place[1] - 1.5))
        if flat <= 1e-9:
            yield text((place[0] + 3.4, place[1] + 1), said, bold=True, halo=True)
        yield text(
            (place[0] + 3.4, place[1] + 4.6),
            "out of the plane" if fz > 0 else "into the plane",
            size=SMALL,
            halo=True,
        )
    if at[2]:
        yield text(
            (place[0] + 3.4, place[1] + 8), f"{figure(at[2])} mm above the welds", size=SMALL, halo=True
        )


def _figures(frame: Frame, group: Group, ends: Sequence[End]) -> Iterator[str]:
    if len(ends) > MOST_FIGURES:
        ends = sorted(ends, key=lambda e: -e.value)[:6]
    taken: list[Point] = []
    centre = frame.at((group.x, group.y))
    for one in sorted(ends, key=lambda e: not e.worst):
        p = frame.at((one.x, one.y))
        across, down = p[0] - centre[0], p[1] - centre[1]
        anchor = "end" if across < 0 else "start"
        x, y = p[0] + (-2.4 if across < 0 else 2.4), p[1] + (3.6 if down > 0 else -1.6)
        while any(abs(x - tx) < 14 and abs(y - ty) < 3.2 for tx, ty in taken):
            y += 3.4 if down > 0 else -3.4
        taken.append((x, y))
        if one.worst:
            yield circle(p, 1.9, width=THICK)
        yield line(p, (x, y - 0.9), width=HAIR)
        yield text(
            (x, y),
            figure(one.value),
            size=3.2 if one.worst else SMALL,
            bold=one.worst,
            anchor=anchor,
            halo=True,
        )
