"""A seal on its shaft, in its housing, under its driver: whole in section, and one side enlarged."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from witnessmark.bench.own_lists import Driver
from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    SMALL,
    Frame,
    Point,
    centre_line,
    circle,
    drawing,
    hatching,
    leader,
    line,
    polyline,
    round_scale,
    scale_words,
    section,
    text,
)
from witnessmark.bench.seal_driver import Seat

WIDTH, HIGH, TOP = 180.0, 74.0, 16.0
LEFT_ROOM, DETAIL_LEFT, DETAIL_WIDE = 92.0, 112.0, 58.0
CASE_WALL = 0.9
"""Thickness the seal's case is drawn with at most, mm."""

Place = Callable[[Sequence[Point]], list[Point]]


def driver_picture(seat: Seat, pieces: Sequence[Driver], *, words: str) -> str:
    """Left the whole, right the space between shaft and bore enlarged, with both clearances."""
    wide = 7.0 if seat.bore - seat.shaft < 30 else 10.0
    below = seat.depth if seat.depth is not None else 0.0
    scale = round_scale(min(LEFT_ROOM / (seat.bore * 1.35), HIGH / (wide + below + _tall(seat, pieces) + 10)))
    face = TOP + (_tall(seat, pieces) + 3) * scale
    frame = Frame(10 + LEFT_ROOM / 2, face, scale)
    bottom = face + (below + wide + 8) * scale
    shapes = [
        text((10, 8), f"Seal for {seat.bore:g} bore, {seat.shaft:g} shaft: {words}", size=LARGE, bold=True)
    ]
    for side in (1, -1):
        shapes += _side(frame, seat, pieces, wide, below, side)
    shapes += _shaft(frame, seat, wide + below + 7, _tall(seat, pieces) + 3)
    shapes.append(text((10, bottom + 5), scale_words(scale), size=SMALL))
    detail, low = _detail(seat, pieces[0], wide, below)
    shapes += detail
    return drawing(WIDTH, max(bottom, low) + 9, shapes, title=f"Driver for a seal in a {seat.bore:g} mm bore")


def _tall(seat: Seat, pieces: Sequence[Driver]) -> float:
    """How far the drivers are drawn standing out of the housing, mm."""
    told = [p.length for p in pieces if p.length is not None]
    each = min(max(seat.bore * 0.45, 12.0, seat.length or 0.0), 80.0)
    return sum(min(t, each * 1.6) for t in told) + each * (len(pieces) - len(told))


def _side(
    frame: Frame, seat: Seat, pieces: Sequence[Driver], wide: float, below: float, side: int
) -> Iterator[str]:
    """One side of the section: housing, seal, drivers. y is 0 at the housing's face, up is out."""

    def put(points: Sequence[Point]) -> list[Point]:
        return frame.all((side * x, y) for x, y in points)

    r, outer = seat.bore / 2, seat.bore / 2 * 1.3
    yield section(
        put([(r, 0), (outer, 0), (outer, -below - wide - 7), (r * 0.93, -below - wide - 7),
             (r * 0.93, -below - wide - 1), (r, -below - wide - 1)]), angle=45 * side, width=0.35,
    )  # fmt: skip
    yield from _seal(put, frame, seat, wide, below)
    low = -below
    for number, piece in enumerate(pieces):
        tall = _tall(seat, [piece])
        top = low + tall + (below if number == 0 else 0)
        inner, out = piece.inside / 2, piece.outside / 2
        wall = put([(inner, low), (out, low), (out, top), (inner, top)])
        yield section(wall, spacing=1.2, angle=(-45 if number % 2 == 0 else 45) * side, width=0.35)
        low = top


def _seal(place: Place, frame: Frame, seat: Seat, wide: float, below: float) -> Iterator[str]:
    """Case, rubber and spring of one side, simplified."""
    wall_mm = min(CASE_WALL, (seat.bore - seat.shaft) / 2 * 0.12)
    r, s = seat.bore / 2, seat.shaft / 2
    top, foot = -below, -below - wide
    inner = s + seat.lip
    case = [
        (r, top),
        (inner, top),
        (inner, top - wall_mm),
        (r - wall_mm, top - wall_mm),
        (r - wall_mm, foot),
        (r, foot),
    ]
    lip = [
        (inner, top), (inner, top - wall_mm * 1.6),
        (s + seat.lip * 0.9, foot + wide * 0.12), (s + seat.lip * 0.35, foot),
        (s, foot + wide * 0.32), (s + seat.lip * 0.5, top - wide * 0.3), (inner - seat.lip * 0.25, top),
    ]  # fmt: skip
    rubber = place(lip)
    yield polyline(rubber, width=0.3, close=True, fill="white")
    for angle in (30.0, -30.0):
        yield from (line(a, b, width=HAIR) for a, b in hatching([rubber], 0.7, angle))
    yield polyline(place(case), width=0.3, close=True, fill="black")
    centre = place([(s + seat.lip * 0.95, foot + wide * 0.34)])[0]
    yield circle(centre, max(seat.lip * 0.16 * frame.scale, 0.4), width=0.3, fill="white")


def _shaft(frame: Frame, seat: Seat, down: float, up: float) -> Iterator[str]:
    """The shaft whole, with its centre line; it stands up into the drivers as far as it reaches."""
    s = seat.shaft / 2
    top = min(up, (seat.reach if seat.reach is not None else up * 0.7) - (seat.depth or 0.0))
    top = max(top, 2.0)
    outline = frame.all([(-s, -down), (-s, top), (s, top), (s, -down)])
    yield polyline(outline, width=0.4)
    yield line(outline[0], outline[3], width=HAIR, dash="3 1")
    yield centre_line(frame.at((0, -down - 3 / frame.scale)), frame.at((0, up + 2 / frame.scale)))


def _detail(seat: Seat, driver: Driver, wide: float, below: float) -> tuple[list[str], float]:
    """The right-hand space enlarged, shaft at the left, housing at the right; and where it ends on paper."""
    space = (seat.bore - seat.shaft) / 2
    scale = round_scale(DETAIL_WIDE / (space * 1.7))
    top = TOP + 38.0
    frame = Frame(DETAIL_LEFT + 0.2 * space * scale - seat.shaft / 2 * scale, top, scale)
    deep, tall = min(wide, 30 / scale), 24 / scale
    foot = frame.at((0, -deep))[1]

    def put(points: Sequence[Point]) -> list[Point]:
        return frame.all((x, y + below) for x, y in points)

    shapes = [
        text((DETAIL_LEFT, TOP), f"right-hand side, {scale_words(scale)}", size=SMALL),
        *_walls(frame, seat, driver, deep, tall),
        *_seal(put, frame, seat, deep, below),
        *_gaps(frame, seat, driver, tall),
    ]
    clear = frame.at((seat.clear_inside / 2, 0))[0]
    shapes.append(line((clear, top - 3), (clear, foot + 3), width=HAIR, dash="2 1"))
    told = f"clears the lip from {seat.clear_inside:.1f} inside"
    shapes.append(leader((clear, foot + 2), (clear + 4, foot + 7), told, size=SMALL))
    return shapes, foot + 8


def _walls(frame: Frame, seat: Seat, driver: Driver, deep: float, tall: float) -> Iterator[str]:
    """Shaft, driver and housing of the enlarged side, each with its word."""
    space, r, s = (seat.bore - seat.shaft) / 2, seat.bore / 2, seat.shaft / 2
    edge = 0.4 * space
    yield polyline(frame.all([(s, tall * 1.08), (s, -deep)]), width=0.4)
    yield text(frame.at((s - 0.08 * space, -deep * 0.5)), "shaft", size=SMALL, anchor="middle", turn=-90)
    housing = [(r, tall * 0.34), (r + edge, tall * 0.34), (r + edge, -deep), (r, -deep)]
    yield section(frame.all(housing), width=0.35)
    yield text(
        frame.at((r + edge * 0.62, -deep * 0.5)), "housing", size=SMALL, anchor="middle", turn=-90, halo=True
    )
    inner, outer = driver.inside / 2, driver.outside / 2
    tube = [(inner, 0), (outer, 0), (outer, tall), (inner, tall)]
    yield section(frame.all(tube), spacing=1.2, angle=-45, width=0.35)
    yield text(frame.at(((inner + outer) / 2, tall * 0.5)), "driver", size=SMALL, anchor="middle", halo=True)


def _gaps(frame: Frame, seat: Seat, driver: Driver, tall: float) -> Iterator[str]:
    """Both clearances, led out above with their words."""
    over, under = driver.inside - seat.shaft, seat.bore - driver.outside
    a = frame.at(((seat.shaft + driver.inside) / 4, tall * 0.85))
    b = frame.at(((seat.bore + driver.outside) / 4, tall * 0.26))
    yield leader(a, (a[0] - 3, TOP + 6), f"{over:.2f} over the shaft", size=SMALL, anchor="end")
    yield leader(b, (b[0] + 3, TOP + 11), f"{under:.2f} under the bore", size=SMALL)
