"""Small SVG: shapes as text, in millimetres on paper, black on white.

A drawing is a page of paper so many millimetres wide and high. What is drawn to scale is placed by a
`Frame`: real millimetres in, paper millimetres out. y runs upwards in the real world, downwards on paper.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from html import escape

from msgspec import Struct

Point = tuple[float, float]

FONT = "'Source Sans 3','Source Sans Pro',Helvetica,Arial,sans-serif"
THICK, THIN, HAIR = 0.5, 0.25, 0.13
SMALL, PLAIN, LARGE = 2.6, 3.2, 4.2


class Frame(Struct, frozen=True):
    """Where the real world's origin stands on the paper, and how many paper mm one real mm takes."""

    x: float
    y: float
    scale: float = 1.0

    def at(self, point: Point) -> Point:
        """The place on paper of a real point."""
        return self.x + point[0] * self.scale, self.y - point[1] * self.scale

    def all(self, points: Iterable[Point]) -> list[Point]:
        """The places on paper of real points."""
        return [self.at(p) for p in points]


def drawing(width: float, height: float, shapes: Iterable[str], *, title: str) -> str:
    """The whole picture, as SVG text of that paper size in mm."""
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(width)}mm" height="{_n(height)}mm" '
        f'viewBox="0 0 {_n(width)} {_n(height)}" font-family="{FONT}" font-size="{PLAIN}" '
        f'fill="none" stroke="black" stroke-width="{THIN}" stroke-linecap="round" stroke-linejoin="round">'
    )
    paper = f'<rect width="{_n(width)}" height="{_n(height)}" fill="white" stroke="none"/>'
    return "\n".join([head, f"<title>{escape(title)}</title>", paper, *shapes, "</svg>"])


def line(a: Point, b: Point, *, width: float = THIN, dash: str = "") -> str:
    """A straight line; dash as "2 1" in mm."""
    return f'<path d="M{_p(a)}L{_p(b)}" stroke-width="{width}"{_dash(dash)}/>'


def polyline(
    points: Sequence[Point],
    *,
    width: float = THIN,
    dash: str = "",
    close: bool = False,
    fill: str = "none",
) -> str:
    """A line through many points."""
    body = "L".join(_p(p) for p in points)
    end = "Z" if close else ""
    return f'<path d="M{body}{end}" stroke-width="{width}" fill="{fill}"{_dash(dash)}/>'


def circle(centre: Point, radius: float, *, width: float = THIN, fill: str = "none", dash: str = "") -> str:
    """A circle."""
    x, y = centre
    place = f'cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}"'
    return f'<circle {place} stroke-width="{width}" fill="{fill}"{_dash(dash)}/>'


def rect(a: Point, b: Point, *, width: float = THIN, fill: str = "none", dash: str = "") -> str:
    """A rectangle between two corners."""
    x, y = min(a[0], b[0]), min(a[1], b[1])
    return (
        f'<rect x="{_n(x)}" y="{_n(y)}" width="{_n(abs(a[0] - b[0]))}" height="{_n(abs(a[1] - b[1]))}" '
        f'stroke-width="{width}" fill="{fill}"{_dash(dash)}/>'
    )


def text(at: Point, words: str, *, size: float = PLAIN, anchor: str = "start", bold: bool = False,
         turn: float = 0.0, halo: bool = False) -> str:  # fmt: skip
    """Words at a point on their line; anchor start, middle or end; halo clears what lies behind them."""
    x, y = at
    weight = ' font-weight="600"' if bold else ""
    turned = f' transform="rotate({_n(turn)} {_n(x)} {_n(y)})"' if turn else ""
    behind = ' paint-order="stroke" stroke="white" stroke-width="1"' if halo else ' stroke="none"'
    return (
        f'<text x="{_n(x)}" y="{_n(y)}" font-size="{size}" text-anchor="{anchor}" fill="black"'
        f"{behind}{weight}{turned}>{escape(words)}</text>"
    )


def section(outline: Sequence[Point], *, spacing: float = 1.6, angle: float = 45.0, width: float = THICK,
            holes: Sequence[Sequence[Point]] = ()) -> str:  # fmt: skip
    """Cut metal: an outline on paper with hatching inside it, its holes left white."""
    loops = [outline, *holes]
    strokes = "".join(f"M{_p(a)}L{_p(b)}" for a, b in hatching(loops, spacing, angle))
    edges = "".join(polyline(loop, width=width, close=True) for loop in loops)
    return f'<path d="{strokes}" stroke-width="{HAIR}"/>{edges}'


def hatching(loops: Sequence[Sequence[Point]], spacing: float, angle: float) -> list[tuple[Point, Point]]:
    """Parallel strokes inside closed loops (inside by the even-odd rule).

    >>> len(hatching([[(0, 0), (4, 0), (4, 4), (0, 4)]], 1.0, 0.0))
    4
    """
    turn = math.radians(angle)
    c, s = math.cos(turn), math.sin(turn)
    turned = [[(x * c + y * s, -x * s + y * c) for x, y in loop] for loop in loops]
    levels = [y for loop in turned for _, y in loop]
    strokes = []
    first, last = math.floor(min(levels) / spacing), math.ceil(max(levels) / spacing)
    for k in range(first, last + 1):
        y = (k + 0.5) * spacing
        cuts = sorted(_crossings(turned, y))
        for a, b in zip(cuts[::2], cuts[1::2], strict=False):
            strokes.append(((a * c - y * s, a * s + y * c), (b * c - y * s, b * s + y * c)))
    return strokes


def _crossings(loops: Iterable[Sequence[Point]], y: float) -> Iterable[float]:
    for loop in loops:
        for (x1, y1), (x2, y2) in zip(loop, [*loop[1:], loop[0]], strict=True):
            if (y1 <= y) != (y2 <= y):
                yield x1 + (y - y1) * (x2 - x1) / (y2 - y1)


def arc(centre: Point, radius: float, start: float, end: float, steps: int = 24) -> list[Point]:
    """Points along an arc on paper, degrees counted from the right, anticlockwise as seen."""
    angles = (math.radians(start + (end - start) * i / steps) for i in range(steps + 1))
    return [(centre[0] + radius * math.cos(t), centre[1] - radius * math.sin(t)) for t in angles]


def dimension(
    a: Point, b: Point, words: str, *, off: float = 6.0, size: float = PLAIN, before: bool = False
) -> str:
    """A dimension between two points on paper, set off to the left of the way from a to b.

    Arrows stand inside where there is room, else outside. off is in mm on paper and may be negative;
    no words, no writing. Words that find no room stand after the end as read, or before the start.
    """
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = math.hypot(dx, dy)
    ux, uy = dx / long, dy / long
    nx, ny = uy, -ux
    p, q = (a[0] + nx * off, a[1] + ny * off), (b[0] + nx * off, b[1] + ny * off)
    over = math.copysign(1.2, off)
    start = math.copysign(min(0.8, abs(off)), off)
    shapes = [
        line((e[0] + nx * start, e[1] + ny * start), (f[0] + nx * over, f[1] + ny * over), width=HAIR)
        for e, f in ((a, p), (b, q))
    ]
    inside = long >= 5
    reach = 0 if inside else 4
    shapes.append(
        line((p[0] - ux * reach, p[1] - uy * reach), (q[0] + ux * reach, q[1] + uy * reach), width=HAIR)
    )
    sign = 1 if inside else -1
    shapes += [arrow(p, (-ux * sign, -uy * sign)), arrow(q, (ux * sign, uy * sign))]
    room = "between" if long >= len(words) * size * 0.5 else "before" if before else "after"
    return "".join(shapes) + (_along(p, q, words, size, (ux, uy), room) if words else "")


def _along(p: Point, q: Point, words: str, size: float, way: Point, room: str) -> str:
    """The words of a dimension: above its line, turned to be read from below or from the right."""
    turn = math.degrees(math.atan2(way[1], way[0]))
    if turn >= 90 or turn < -90:
        turn += 180 if turn < -90 else -180
    t = math.radians(turn)
    up = (math.sin(t), -math.cos(t))
    if room != "between":
        on = 1 if room == "after" else -1
        ahead = (math.cos(t) * on, math.sin(t) * on)
        end = q if (q[0] - p[0]) * ahead[0] + (q[1] - p[1]) * ahead[1] > 0 else p
        at = (end[0] + ahead[0] * 4.6 - up[0] * size * 0.35, end[1] + ahead[1] * 4.6 - up[1] * size * 0.35)
        return text(at, words, size=size, anchor="start" if on > 0 else "end", turn=turn, halo=True)
    at = ((p[0] + q[0]) / 2 + up[0] * 0.8, (p[1] + q[1]) / 2 + up[1] * 0.8)
    return text(at, words, size=size, anchor="middle", turn=turn, halo=True)


def arrow(tip: Point, way: Point, *, length: float = 1.8) -> str:
    """A slim filled arrow head with its tip at a point; way is a unit vector."""
    ux, uy = way
    back = (tip[0] - ux * length, tip[1] - uy * length)
    half = length * 0.16
    a, b = (back[0] - uy * half, back[1] + ux * half), (back[0] + uy * half, back[1] - ux * half)
    return f'<path d="M{_p(tip)}L{_p(a)}L{_p(b)}Z" fill="black" stroke="none"/>'


def leader(at: Point, to: Point, words: str, *, size: float = PLAIN, anchor: str = "start") -> str:
    """A thin line with a dot from a thing to its words."""
    gap = 0.8 if anchor == "start" else -0.8
    return (
        f'<circle cx="{_n(at[0])}" cy="{_n(at[1])}" r="0.45" fill="black" stroke="none"/>'
        + line(at, to, width=HAIR)
        + text((to[0] + gap, to[1] + size * 0.35), words, size=size, anchor=anchor, halo=True)
    )


def centre_line(a: Point, b: Point) -> str:
    """A chain-dotted centre line."""
    return line(a, b, width=HAIR, dash="5 1 1 1")


def scale_words(scale: float) -> str:
    """A drawing scale in words.

    >>> scale_words(20.0), scale_words(0.5), scale_words(2.5)
    ('scale 20 : 1', 'scale 1 : 2', 'scale 2.5 : 1')
    """
    return f"scale {scale:.4g} : 1" if scale >= 1 else f"scale 1 : {1 / scale:.4g}"


def round_scale(most: float) -> float:
    """The greatest customary drawing scale that is not above `most`.

    >>> round_scale(3.7), round_scale(0.3), round_scale(1234), 1 / round_scale(0.9)
    (2.5, 0.25, 1000.0, 2.0)
    """
    steps = (1.0, 2.0, 2.5, 4.0, 5.0, 8.0, 10.0)
    if most >= 1:
        decade = 10.0 ** math.floor(math.log10(most))
        return max(step * decade for step in steps if step * decade <= most * (1 + 1e-9))
    decade = 10.0 ** math.floor(math.log10(1 / most))
    return 1 / min(step * decade for step in steps if step * decade >= (1 - 1e-9) / most)


def _n(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".") or "0"


def _p(point: Point) -> str:
    return f"{_n(point[0])} {_n(point[1])}"


def _dash(dash: str) -> str:
    return f' stroke-dasharray="{dash}"' if dash else ""
