"""A shim stack in its gap, thicknesses to scale, and what it leaves beside what is wanted."""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.bench.picture.svg import (
    HAIR,
    LARGE,
    SMALL,
    THICK,
    Frame,
    dimension,
    drawing,
    line,
    round_scale,
    scale_words,
    section,
    text,
)
from witnessmark.bench.shim_search import MICRON, Stack

WIDTH, LEFT, RIGHT, BASE_HIGH, ROOM = 180.0, 46.0, 112.0, 9.0, 62.0
LEAST_ROW, LARGEST = 3.2, 100.0


def stack_picture(
    stack: Stack, *, measured: float, fitted: float, left: float, wanted: tuple[float, float]
) -> str:
    """The pack on its face and the face that closes over it, with what is left between."""
    pack = stack.total / MICRON
    lid = pack + max(left, 0.0)
    high = max(lid, pack + wanted[1], 0.05)
    low = min(0.0, pack + left, pack + wanted[0])
    scale = min(LARGEST, round_scale(ROOM / (high - low)))
    floor = 14.0 + BASE_HIGH + high * scale
    bottom = floor + max(BASE_HIGH, -low * scale)
    frame = Frame(LEFT, floor, scale)
    shapes = [
        text((10, 8), f"{stack.words()} mm", size=LARGE, bold=True),
        *_faces(frame, lid, floor),
        *_pieces(stack, frame),
        *_left_over(frame, pack, left, wanted),
        text((10, bottom + 7), _foot(measured, fitted, scale), size=SMALL),
    ]
    return drawing(WIDTH, bottom + 11, shapes, title=f"Shim stack {stack.words()} mm")


def _foot(measured: float, fitted: float, scale: float) -> str:
    old = f" with {fitted:.3f} mm in" if fitted else " with no shims in"
    return f"measured {measured:.3f} mm{old}; thickness {scale_words(scale)}, width not to scale"


def _faces(frame: Frame, over: float, floor: float) -> Iterator[str]:
    """Metal below the pack and above the gap."""
    lid = frame.at((0, over))[1]
    yield section(
        [(LEFT, floor), (RIGHT, floor), (RIGHT, floor + BASE_HIGH), (LEFT, floor + BASE_HIGH)], width=0.35
    )
    yield section([(LEFT, lid - BASE_HIGH), (RIGHT, lid - BASE_HIGH), (RIGHT, lid), (LEFT, lid)], width=0.35)


def _pieces(stack: Stack, frame: Frame) -> Iterator[str]:
    """Each shim as a plate with its thickness; thin ones share labels led out to the left."""
    low = 0
    rows: list[tuple[float, str]] = []
    for piece in stack.pieces:
        a, b = frame.at((0, low / MICRON)), frame.at((0, (low + piece) / MICRON))
        plate = [(LEFT + 6, a[1]), (RIGHT - 6, a[1]), (RIGHT - 6, b[1]), (LEFT + 6, b[1])]
        yield section(plate, spacing=1.1, angle=-45 if len(rows) % 2 else 45, width=0.3)
        rows.append(
            ((a[1] + b[1]) / 2, f"{piece / MICRON:.2f}" if piece % 10 == 0 else f"{piece / MICRON:.3f}")
        )
        low += piece
    label: float | None = None
    for middle, words in rows:
        at = middle if label is None else min(middle, label - LEAST_ROW)
        label = at
        yield line((LEFT + 6, middle), (LEFT - 4, at), width=HAIR)
        yield text((LEFT - 5, at + 0.9), words, size=SMALL, anchor="end")


def _left_over(frame: Frame, pack: float, left: float, wanted: tuple[float, float]) -> Iterator[str]:
    """What is left above the pack, and beside it the window that was wanted."""
    top, lid = frame.at((0, pack))[1], frame.at((0, pack + max(left, 0)))[1]
    word = "left" if left >= 0 else "preload"
    if lid < top - 0.4:
        yield dimension((RIGHT - 6, top), (RIGHT - 6, lid), "", off=-12)
    yield text((RIGHT + 9, (top + lid) / 2 + 1), f"{word} {abs(left):.3f}", halo=True)
    a, b = RIGHT + 34, RIGHT + 42
    low, high = (frame.at((0, pack + w))[1] for w in wanted)
    yield section([(a, high), (b, high), (b, low), (a, low)], spacing=1.2, width=0.3)
    yield text((b + 1.5, high + 0.9 - (1.6 if low - high < 4 else 0)), f"{wanted[1]:.3f}", size=SMALL)
    yield text((b + 1.5, low + 0.9 + (1.6 if low - high < 4 else 0)), f"{wanted[0]:.3f}", size=SMALL)
    at = frame.at((0, pack + left))[1]
    yield line((a - 3, at), (b, at), width=THICK)
    yield text((a - 4, min(low, high) - 3.4), "wanted", size=SMALL)
