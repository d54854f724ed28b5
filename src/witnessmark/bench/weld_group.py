"""A group of weld lines in one plane under a force anywhere in space, taken as elastic lines.

The lines lie in the plane x, y; z stands square to it. Each line is a line of like throat; what it
carries varies in a straight way over the plane, so every greatest value stands at an end of a line.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

from witnessmark.ground.errors import BadInput

Line = tuple[tuple[float, float], tuple[float, float]]
Vector = tuple[float, float, float]


class Group(Struct, frozen=True):
    """A group of lines: its length, centre, and second moments of a line about that centre.

    length    mm
    x, y      mm   centre
    along_x   mm³  integral of y² over the lines (resists turning about x)
    along_y   mm³  integral of x²
    mixed     mm³  integral of x y
    """

    lines: tuple[Line, ...]
    length: float
    x: float
    y: float
    along_x: float
    along_y: float
    mixed: float

    @property
    def polar(self) -> float:
        """mm³, resists turning in the plane."""
        return self.along_x + self.along_y

    def principal(self) -> tuple[float, float, float]:
        """Greatest and least second moment in mm³, and the angle of the axis of the greatest in degrees."""
        middle, half = (self.along_x + self.along_y) / 2, (self.along_x - self.along_y) / 2
        radius = math.hypot(half, self.mixed)
        turn = 0.5 * math.degrees(math.atan2(-self.mixed + 0.0, half))
        return middle + radius, middle - radius, turn


class Load(Struct, frozen=True):
    """A force and the moments it makes about the centre of a group: N, N·mm."""

    force: Vector
    moment: Vector


class Carried(Struct, frozen=True):
    """What a line carries at a point, in N for each mm of its length.

    along, across  in the plane, along the line and square to it
    out            square to the plane
    """

    along: float
    across: float
    out: float

    @property
    def vector(self) -> float:
        """Vector sum, N/mm."""
        return math.sqrt(self.along**2 + self.across**2 + self.out**2)

    @property
    def directional(self) -> float:
        """The directional method's equivalent on the throat plane, N/mm: the worse side of a fillet."""
        square = 2 * (self.across**2 + self.out**2 + abs(self.across * self.out)) + 3 * self.along**2
        return math.sqrt(square)

    @property
    def throat_pull(self) -> float:
        """Greatest pull square to the throat plane of a fillet, N/mm."""
        return (abs(self.across) + abs(self.out)) / math.sqrt(2)


def group_of(lines: Sequence[Line]) -> Group:
    """Measure a group.

    Takes
        lines  mm  pairs of ends (x, y)
    Gives
        a Group
    Refuses
        no line, a line shorter than 0.1 mm, ends beyond 10 000 mm, lines that lie on one another
    Caution
        strength-scope
    Source
        weld-lines
    Example
        >>> g = group_of([((0, 0), (0, 50)), ((100, 0), (100, 50))])
        >>> g.length, g.x, g.y, round(g.polar)
        (100.0, 50.0, 25.0, 270833)
    """
    if not lines:
        raise BadInput(
            given="no weld lines", holds='lines as "0,0 0,50; 100,0 100,50 mm"', do="Give the lines."
        )
    lengths = [_length(line) for line in lines]
    _refuse_doubles(lines)
    total = sum(lengths)
    cx = sum(n * (a[0] + b[0]) / 2 for n, (a, b) in zip(lengths, lines, strict=True)) / total
    cy = sum(n * (a[1] + b[1]) / 2 for n, (a, b) in zip(lengths, lines, strict=True)) / total
    xx = yy = xy = 0.0
    for n, (a, b) in zip(lengths, lines, strict=True):
        x1, y1, x2, y2 = a[0] - cx, a[1] - cy, b[0] - cx, b[1] - cy
        xx += n * (y1 * y1 + y1 * y2 + y2 * y2) / 3
        yy += n * (x1 * x1 + x1 * x2 + x2 * x2) / 3
        xy += n * (2 * x1 * y1 + x1 * y2 + x2 * y1 + 2 * x2 * y2) / 6
    return Group(tuple(lines), total, cx, cy, xx, yy, xy)


def load_on(group: Group, force: Vector, at: Vector) -> Load:
    """A force somewhere in space, moved to the centre of the group.

    >>> g = group_of([((0, 0), (0, 50)), ((50, 0), (50, 50))])
    >>> load_on(g, (0, -7500, 0), (150, 25, 0)).moment
    (0.0, 0.0, -937500.0)
    """
    rx, ry, rz = at[0] - group.x, at[1] - group.y, at[2]
    fx, fy, fz = force
    return Load(force, (ry * fz - rz * fy, rz * fx - rx * fz, rx * fy - ry * fx))


def field_at(group: Group, load: Load, x: float, y: float) -> Vector:
    """What a line of unit throat carries at a point of the plane, in N/mm along x, y and z."""
    fx, fy, fz = load.force
    mx, my, mz = load.moment
    dx, dy = x - group.x, y - group.y
    polar = group.polar
    a, b = _slopes(group, mx, my)
    return (
        fx / group.length - mz * dy / polar,
        fy / group.length + mz * dx / polar,
        fz / group.length + a * dx + b * dy,
    )


def carried_at(group: Group, load: Load, line: Line, end: int) -> Carried:
    """What a line carries at one of its ends (0 or 1).

    Example
        >>> g = group_of([((0, 0), (0, 50)), ((50, 0), (50, 50))])
        >>> one = carried_at(g, load_on(g, (0, -7500, 0), (150, 25, 0)), g.lines[1], 1)
        >>> round(one.vector, 1)
        453.9
    """
    (x1, y1), (x2, y2) = line
    long = math.hypot(x2 - x1, y2 - y1)
    ux, uy = (x2 - x1) / long, (y2 - y1) / long
    fx, fy, fz = field_at(group, load, *line[end])
    return Carried(fx * ux + fy * uy, -fx * uy + fy * ux, fz)


def _slopes(group: Group, mx: float, my: float) -> tuple[float, float]:
    """How the pull out of the plane grows with x and with y.

    A group that is one straight line cannot be bent about itself: such a moment is refused.
    """
    xx, yy, xy = group.along_x, group.along_y, group.mixed
    whole = xx * yy - xy * xy
    if whole > 1e-9 * group.polar**2:
        return (-my * xx - mx * xy) / whole, (mx * yy + my * xy) / whole
    most = group.polar
    ux, uy = math.sqrt(yy / most), math.copysign(math.sqrt(xx / most), xy if xy else 1.0)
    about_line = mx * ux + my * uy
    if abs(about_line) > 1e-6 * (abs(mx) + abs(my)):
        raise BadInput(
            given="a force that rolls a single straight weld about itself",
            holds="lines that stand apart in two directions, or a force through the line",
            do="A lone weld line has no strength against being rolled: add a line on the other side.",
        )
    bend = -mx * uy + my * ux
    return -bend * ux / most, -bend * uy / most


def _length(line: Line) -> float:
    for end in line:
        for part in end:
            if not abs(part) <= 10_000:
                raise BadInput(
                    given=f"a line ends at {part:g} mm",
                    holds="ends within 10 m",
                    do="Look at the unit again.",
                )
    (x1, y1), (x2, y2) = line
    long = math.hypot(x2 - x1, y2 - y1)
    if long < 0.1:
        raise BadInput(
            given=f"a line from {x1:g},{y1:g} to {x2:g},{y2:g}",
            holds="two ends apart from one another",
            do="Give both ends of each line.",
        )
    return long


def _refuse_doubles(lines: Sequence[Line]) -> None:
    seen = {frozenset(line) for line in lines}
    if len(seen) < len(lines):
        raise BadInput(
            given="the same line twice",
            holds="each weld line once",
            do="Two welds on one plate edge lie a plate's thickness apart.",
        )
