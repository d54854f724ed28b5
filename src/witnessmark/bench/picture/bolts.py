"""The preload a torque leaves, as a band against what the bolt bears."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    SMALL,
    THICK,
    Frame,
    drawing,
    line,
    round_scale,
    section,
    text,
)

WIDTH, LEFT, RIGHT = 180.0, 40.0, 14.0
TOP, HIGH = 18.0, 9.0


class PreloadBar(Struct, frozen=True, kw_only=True):
    """One bar: a label, the band and its middle, and the proof load; all in kN."""

    label: str
    low: float
    middle: float
    high: float
    proof: float


def preload_bars(title: str, bars: Sequence[PreloadBar], foot: str) -> str:
    """Bars under one scale of force, each with its proof load marked."""
    most = max(max(b.high, b.proof) for b in bars) * 1.12
    scale = (WIDTH - LEFT - RIGHT) / most
    frame = Frame(LEFT, 0.0, scale)
    bottom = TOP + 19 * len(bars)
    shapes = [
        text((10, 8), title, size=LARGE, bold=True),
        *_axis(frame, most, bottom),
        *(shape for i, bar in enumerate(bars) for shape in _bar(bar, frame, TOP + 19 * i)),
        text((10, bottom + 16), foot, size=SMALL),
    ]
    return drawing(WIDTH, bottom + 21, shapes, title=title)


def _axis(frame: Frame, most: float, bottom: float) -> Iterator[str]:
    step = 1 / round_scale(6 / most)
    yield line((LEFT, bottom), (WIDTH - RIGHT, bottom))
    for k in range(int(most / step) + 1):
        x = frame.at((k * step, 0))[0]
        yield line((x, bottom), (x, bottom + 1.6))
        yield text((x, bottom + 5.4), f"{k * step:g}", size=SMALL, anchor="middle")
    yield text((WIDTH - RIGHT, bottom + 10), "preload in kN", size=SMALL, anchor="end")


def _bar(bar: PreloadBar, frame: Frame, top: float) -> Iterator[str]:
    """The band hatched, its middle a thick stroke, the proof load a double stroke over the full height."""
    low, middle, high, proof = (frame.at((x, 0))[0] for x in (bar.low, bar.middle, bar.high, bar.proof))
    base = top + HIGH
    yield text((LEFT - 3, top + HIGH / 2 + 1.1), bar.label, anchor="end")
    yield line((LEFT, top), (LEFT, base), width=HAIR)
    yield section([(low, top), (high, top), (high, base), (low, base)], spacing=1.3, width=0.35)
    yield line((middle, top), (middle, base), width=THICK * 2)
    yield line((proof, top - 3.4), (proof, base + 1.5), width=THICK)
    yield line((proof + 0.9, top - 3.4), (proof + 0.9, base + 1.5), width=THICK)
    yield text((proof + 2, top - 1.4), f"proof {bar.proof:.1f}", size=SMALL, halo=True)
    yield text((low - 0.8, base + 3.4), f"{bar.low:.1f}", size=SMALL, anchor="middle", halo=True)
    if high - low > 10:
        yield text((high, base + 3.4), f"{bar.high:.1f}", size=SMALL, anchor="middle", halo=True)
    if middle - low > 8 and high - middle > 8:
        yield text((middle, base + 3.4), f"{bar.middle:.1f}", size=SMALL, anchor="middle", halo=True)
