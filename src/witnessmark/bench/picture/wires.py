"""Drop by wire size, each wire drawn as thick as it is."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from witnessmark.bench.picture.axes import Axis
from witnessmark.bench.picture.svg import (
    HAIR,
    SMALL,
    THICK,
    THIN,
    circle,
    drawing,
    line,
    rect,
    text,
)
from witnessmark.bench.slip_text import figure

LEFT, RIGHT, STEP = 46.0, 132.0, 8.5


def wire_picture(
    rows: Sequence[Mapping[str, Any]], chosen: float | None, allowed: float, current: float
) -> str:
    """One bar a size: what it loses, against what is allowed; the copper in section, its own size."""
    shown = _shown(rows, chosen)
    most = max(allowed * 1.6, min(max(r["drop"] for r in shown), allowed * 3))
    axis = Axis(0, most, LEFT, RIGHT)
    high = 24 + STEP * len(shown) + 12
    shapes = [*_limit(axis, allowed, high), *_bars(shown, axis, chosen, current, axis.at(allowed))]
    return drawing(176, high, shapes, title="Voltage lost by wire size")


def _shown(rows: Sequence[Mapping[str, Any]], chosen: float | None) -> list[Mapping[str, Any]]:
    """Nine sizes, the chosen one among them."""
    at = next((i for i, r in enumerate(rows) if r["area"] == chosen), len(rows) - 1)
    first = max(0, min(at - 5, len(rows) - 9))
    return list(rows[first : first + 9])


def _bars(
    rows: Sequence[Mapping[str, Any]], axis: Axis, chosen: float | None, current: float, limit: float
) -> Iterator[str]:
    """A bar a size with its words, which step over the line of what is allowed."""
    yield text((6, 9), f"what {current:g} A loses out and back; copper in section, its own size", size=SMALL)
    for i, row in enumerate(rows):
        y = 22 + STEP * i
        radius = math.sqrt(row["area"] / math.pi)
        mine = row["area"] == chosen
        yield circle((14, y), radius, width=THICK if mine else THIN, fill="black" if mine else "white")
        yield text((36, y + 1), f"{row['area']:g} mm²", bold=mine, anchor="end")
        end = min(axis.at(min(row["drop"], axis.high)), RIGHT)
        yield rect(
            (LEFT, y - 2), (end, y + 2), width=THICK if mine else THIN, fill="black" if mine else "white"
        )
        if row["drop"] > axis.high:
            yield line((RIGHT - 4, y + 3), (RIGHT - 1, y - 3), width=THIN)
        said = f"{row['drop']:.2g} V" + ("" if row["bears"] else f", bears only {row['rating']:g} A")
        across = end < limit < end + 2 + len(said) * SMALL * 0.55
        yield text(((limit if across else end) + 1.5, y + 1), said, size=SMALL, bold=mine, halo=True)


def _limit(axis: Axis, allowed: float, high: float) -> Iterator[str]:
    x = axis.at(allowed)
    yield line((LEFT, 16), (LEFT, high - 8), width=HAIR)
    yield line((x, 16), (x, high - 8), width=THIN, dash="3 1")
    yield text((x, high - 3), f"allowed {figure(allowed)} V", anchor="middle")
