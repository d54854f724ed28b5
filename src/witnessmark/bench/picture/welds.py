"""A row of plugs, to scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from witnessmark.bench.picture.svg import (
    HAIR,
    SMALL,
    THICK,
    THIN,
    centre_line,
    circle,
    dimension,
    drawing,
    rect,
    round_scale,
    scale_words,
    text,
)

LEFT, AFTER = 14.0, 24.0
"""Paper left of the flange and right of it, where the pitch may have to be written."""


def plug_picture(
    length: float, edge: float, hole: float, places: Sequence[float], turns: Sequence[int]
) -> str:
    """The flange from above: holes with their numbers, the order above them, pitch and edge below."""
    scale = round_scale(150 / length)
    wide, deep = length * scale, max(12.0, 3 * hole * scale)
    middle = 26 + deep / 2
    shapes = [
        text(
            (LEFT, 8),
            f"{'one plug' if len(places) == 1 else f'{len(places)} plugs'}, {scale_words(scale)}; "
            f"hole {hole:g} mm",
            bold=True,
        ),
        text(
            (LEFT, 13), "above each: its turn; in order the ends first, then where it is coolest", size=SMALL
        ),
        rect((LEFT, 26), (LEFT + wide, 26 + deep), width=THICK),
        centre_line((LEFT - 3, middle), (LEFT + wide + 3, middle)),
        *_holes(scale, hole, places, turns, middle),
        *_sizes(scale, edge, places, 26 + deep),
    ]
    return drawing(max(110.0, wide + LEFT + AFTER), 26 + deep + 24, shapes, title="A row of plugs")


def _holes(
    scale: float, hole: float, places: Sequence[float], turns: Sequence[int], middle: float
) -> Iterator[str]:
    room = min((b - a) * scale for a, b in pairwise(places)) if len(places) > 1 else 20.0
    size = max(1.4, min(3.2, room * 0.55))
    for i, at in enumerate(places):
        x = LEFT + at * scale
        yield circle((x, middle), max(0.5, hole * scale / 2), width=THIN, fill="white")
        yield text((x, 23.5), str(turns.index(i) + 1), size=size, anchor="middle", bold=turns.index(i) < 3)


def _sizes(scale: float, edge: float, places: Sequence[float], floor: float) -> Iterator[str]:
    first = LEFT + places[0] * scale
    yield rect((first, floor), (first, floor + 2), width=HAIR)
    if len(places) == 1:
        yield dimension((LEFT, floor), (first, floor), f"{places[0]:.3g} mm", off=-7)
        return
    a, b = places[-2], places[-1]
    yield dimension((LEFT + a * scale, floor), (LEFT + b * scale, floor), f"{b - a:.3g} mm", off=-7)
    yield dimension((LEFT, floor), (first, floor), f"{edge:.3g} mm", off=-7)
    yield dimension((first, floor), (LEFT + b * scale, floor), f"{b - places[0]:.4g} mm", off=-15)
