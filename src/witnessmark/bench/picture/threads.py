"""Thread forms to scale, one laid over another."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    SMALL,
    Frame,
    Point,
    arc,
    arrow,
    dimension,
    drawing,
    line,
    polyline,
    round_scale,
    scale_words,
    section,
    text,
)
from witnessmark.bench.thread_list import Form, Thread

WIDTH, MARGIN, GROOVE = 180.0, 14.0, 58.0
THREADS, STEPS = 10, 36
MEDIUM, DASH = 0.35, "1.6 1"
FLAT_CRESTS = ("ISO metric", "Unified")


def flank(form: Form, pitch: float, x: float) -> float:
    """How far below the crest the profile of a bolt lies at x from a crest's middle, in mm."""
    half = math.radians(form.angle / 2)
    high = pitch / 2 / math.tan(half)
    deep = form.to_root / 2 * pitch
    top = _crest_cut(form, high, deep)
    x = abs((x + pitch / 2) % pitch - pitch / 2)
    sharp = x / math.tan(half)
    below_apex = max(sharp, top) if form.name in FLAT_CRESTS else _rounded(sharp, x, top, half)
    from_root = _rounded(high - below_apex, pitch / 2 - x, high - top - deep, half)
    return high - from_root - top


def _crest_cut(form: Form, high: float, deep: float) -> float:
    """How much of the sharp crest the form leaves out: an eighth where flat, else as at the root."""
    return high / 8 if form.name in FLAT_CRESTS else (high - deep) / 2


def _rounded(below: float, x: float, truncation: float, half: float) -> float:
    """A sharp corner with the arc that touches both flanks and takes `truncation` off its tip."""
    radius = truncation / (1 / math.sin(half) - 1)
    if x < radius * math.cos(half):
        return radius / math.sin(half) - math.sqrt(radius**2 - x**2)
    return below


def profile(thread: Thread, count: int = THREADS) -> list[Point]:
    """The bolt's outline over so many pitches and half a pitch beyond; y is 0 at the crest."""
    first, last = -thread.pitch / 2, (count + 0.5) * thread.pitch
    steps = STEPS * (count + 1)
    xs = (first + (last - first) * i / steps for i in range(steps + 1))
    return [(x, -flank(thread.form, thread.pitch, x)) for x in xs]


def forms_overlaid(first: Thread, second: Thread | None = None) -> str:
    """Ten pitches of one thread in section, and one groove enlarged; a second one's outline over both."""
    both = [first] if second is None else [first, second]
    scale = round_scale((WIDTH - 2 * MARGIN) / ((THREADS + 1) * max(t.pitch for t in both)))
    deep = max(t.form.to_root * t.pitch for t in both) / 2
    frame = Frame(MARGIN + scale * max(t.pitch for t in both) / 2, 30.0, scale)
    bottom = 30.0 + deep * scale + 8
    base = bottom + 17 + deep * round_scale(GROOVE / max(t.pitch for t in both)) + 12
    shapes = [
        text(
            (MARGIN, 8),
            "  against  ".join(f"{t.name}, {t.form.angle:g}°" for t in both),
            size=LARGE,
            bold=True,
        ),
        *_ten_threads(both, frame, bottom),
        text((WIDTH - MARGIN, bottom + 5), scale_words(scale), size=SMALL, anchor="end"),
        *_groove(both, bottom + 17, base),
        *_key(base + 9, both),
    ]
    title = f"Thread form of {first.name}" + (f" with {second.name} over it" if second else "")
    return drawing(WIDTH, base + 13, shapes, title=title)


def _ten_threads(both: Sequence[Thread], frame: Frame, bottom: float) -> Iterator[str]:
    first = both[0]
    body = frame.all(profile(first))
    yield section([*body, (body[-1][0], bottom), (body[0][0], bottom)], spacing=1.8, width=MEDIUM)
    for thread, off, drop in zip(
        both, (13.0, 6.0), (0.0, (both[-1].diameter - first.diameter) / 2), strict=False
    ):
        if thread is not first:
            over = frame.all((x, y + drop) for x, y in profile(thread))
            yield polyline(over, width=MEDIUM, dash=DASH)
        a, b = frame.at((0, 0)), frame.at((THREADS * thread.pitch, 0))
        yield dimension(a, b, f"ten pitches of {thread.name}: {THREADS * thread.pitch:.2f} mm", off=off)


def _groove(both: Sequence[Thread], top: float, base: float) -> Iterator[str]:
    """One groove, from crest to crest, enlarged, with the angle between the flanks."""
    scale = round_scale(GROOVE / max(t.pitch for t in both))
    middle = WIDTH / 2
    yield text((WIDTH - MARGIN, base), scale_words(scale), size=SMALL, anchor="end")
    for number, thread in enumerate(both):
        frame = Frame(middle - scale * thread.pitch / 2, top, scale)
        outline = frame.all((x, y) for x, y in profile(thread, 1) if -0.25 <= x / thread.pitch <= 1.25)
        if number == 0:
            yield section(
                [*outline, (outline[-1][0], base), (outline[0][0], base)], spacing=1.8, width=MEDIUM
            )
        else:
            yield polyline(outline, width=MEDIUM, dash=DASH)
        yield from _angle(thread, frame, number)


def _angle(thread: Thread, frame: Frame, number: int) -> Iterator[str]:
    """The flanks carried on, and an arc between them above the groove with its degrees."""
    half = thread.form.angle / 2
    sharp = thread.pitch / 2 / math.tan(math.radians(half))
    tip = frame.at((thread.pitch / 2, -flank(thread.form, thread.pitch, thread.pitch / 2) - _cut(thread)))
    reach = sharp * frame.scale + 5
    for side in (-1, 1):
        over = (tip[0] + side * reach * math.tan(math.radians(half)), tip[1] - reach)
        yield line(tip, over, width=HAIR, dash="" if number == 0 else DASH)
    radius = sharp * frame.scale * 0.62 + number * 7
    arc_points = arc(tip, radius, 90 - half, 90 + half)
    yield polyline(arc_points, width=HAIR)
    yield arrow(arc_points[0], _along(arc_points[1], arc_points[0]))
    yield arrow(arc_points[-1], _along(arc_points[-2], arc_points[-1]))
    yield text((tip[0], tip[1] - radius - 0.9), f"{thread.form.angle:g}°", anchor="middle", halo=True)


def _cut(thread: Thread) -> float:
    """How much of the sharp root the form leaves out, in mm."""
    half = math.radians(thread.form.angle / 2)
    high = thread.pitch / 2 / math.tan(half)
    deep = thread.form.to_root / 2 * thread.pitch
    return high - deep - _crest_cut(thread.form, high, deep)


def _along(a: Point, b: Point) -> Point:
    long = math.hypot(b[0] - a[0], b[1] - a[1])
    return (b[0] - a[0]) / long, (b[1] - a[1]) / long


def _key(y: float, both: Sequence[Thread]) -> Iterator[str]:
    """Which line is which, below the picture."""
    yield line((MARGIN, y - 1), (MARGIN + 10, y - 1), width=MEDIUM)
    yield text((MARGIN + 12, y), f"{both[0].name}, cut through", size=SMALL)
    if len(both) > 1:
        yield line((MARGIN + 62, y - 1), (MARGIN + 72, y - 1), width=MEDIUM, dash=DASH)
        yield text((MARGIN + 74, y), f"{both[1].name}, laid over it from the first crest", size=SMALL)
