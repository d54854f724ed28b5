"""Where the places of a shape lie on its plan, front upwards, and on its side, as boxes in drawing units."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from witnessmark.sheets.drawn.shapes import Shape

BROAD = 360.0  # of every drawing, so that words keep their size
EDGE = 34.0  # left free beside the body, for the wheels
BAND = 34.0  # a place that is only a line across the vehicle is drawn so high


class Box(Struct, frozen=True):
    """A rectangle: its upper left corner, how wide, how high."""

    x: float
    y: float
    wide: float
    high: float

    @property
    def middle(self) -> tuple[float, float]:
        return self.x + self.wide / 2, self.y + self.high / 2


class Scale(Struct, frozen=True):
    """Drawing units for a centimetre, and where the drawn body begins."""

    unit: float
    x: float
    y: float

    def along(self, centimetres: float) -> float:
        return self.y + centimetres * self.unit


def plan_scale(shape: Shape) -> Scale:
    """The plan fills the drawing's width; what is narrow is drawn no larger than leaves it on one screen."""
    unit = min((BROAD - 2 * EDGE) / shape.width, 690 / shape.length)
    return Scale(unit, (BROAD - shape.width * unit) / 2, 12.0)


def plan_boxes(shape: Shape) -> Mapping[str, Box]:
    """Each place of the plan."""
    if shape.single_track:
        return _in_line(shape)
    return _towed(shape) if shape.towed else _driven(shape)


def _driven(shape: Shape) -> dict[str, Box]:
    scale = plan_scale(shape)
    wide = shape.width * scale.unit
    nose, scuttle = scale.along(shape.front - shape.wheel * 0.62), scale.along(shape.bonnet)
    glass = scuttle + BAND
    seats, cab = glass + BAND, scale.along(shape.bonnet + shape.screen + shape.cab)
    tail = min(scale.along(shape.rear + shape.wheel * 0.72), scale.along(shape.length) - 56)
    third, fifth = [wide * p for p in (0.31, 0.38, 0.31)], [wide / 5] * 5
    rows = [
        (("front",), scale.y, nose, [wide]),
        (("left front", "engine bay", "right front"), nose, scuttle, third),
        (("bulkhead",), scuttle, glass, [wide]),
        (("windscreen",), glass, seats, [wide]),
        (("left door", "left floor", "under the floor", "right floor", "right door"), seats, cab, fifth),
        (("left rear", "rear axle", "right rear"), cab, tail, third),
        (("rear",), tail, scale.along(shape.length), [wide]),
    ]
    return _laid(rows, scale.x)


def _towed(shape: Shape) -> dict[str, Box]:
    scale = plan_scale(shape)
    wide = shape.width * scale.unit
    nose = scale.along(shape.bonnet)
    first, last = scale.along(shape.rear - shape.wheel), scale.along(shape.rear + shape.wheel)
    rows = [
        (("front",), nose, first, [wide]),
        (("left", "under the floor", "right"), first, last, [wide * p for p in (0.3, 0.4, 0.3)]),
        (("rear",), last, scale.along(shape.length), [wide]),
    ]
    beam = Box(BROAD / 2 - 46, scale.y, 92, nose - scale.y)
    return {"drawbar": beam, **_laid(rows, scale.x)}


def _in_line(shape: Shape) -> dict[str, Box]:
    scale = plan_scale(shape)
    head, engine = scale.along(shape.bonnet), scale.along(shape.bonnet + shape.cab)
    middle, slim = BROAD / 2, 56.0
    return {
        "front fork": Box(middle - slim, scale.y, 2 * slim, head - scale.y),
        "engine": Box(middle - slim * 1.5, head, 3 * slim, engine - head),
        "rear wheel": Box(middle - slim, engine, 2 * slim, scale.along(shape.length) - engine),
    }


Row = tuple[tuple[str, ...], float, float, list[float]]


def _laid(rows: list[Row], left: float) -> dict[str, Box]:
    found = {}
    for names, top, foot, widths in rows:
        x = left
        for name, wide in zip(names, widths, strict=True):
            found[name] = Box(x, top, wide, foot - top)
            x += wide
    return found
