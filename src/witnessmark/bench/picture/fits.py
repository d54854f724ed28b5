"""A hub on its shaft in section, with the interference written, since it is too small to draw."""

from __future__ import annotations

from witnessmark.bench.picture.svg import (
    LARGE,
    SMALL,
    Frame,
    centre_line,
    dimension,
    drawing,
    leader,
    round_scale,
    scale_words,
    section,
    text,
)

WIDTH, ROOM = 180.0, 80.0


def press_picture(*, shaft: float, hub: float, bore: float, length: float | None, interference: float) -> str:
    """Shaft and hub cut along the axis."""
    long = length if length is not None else 0.6 * shaft
    scale = round_scale(min(ROOM / hub, 70 / (long * 1.8)))
    frame = Frame(70.0, 20.0 + hub * scale / 2, scale)
    half, over = long / 2, long * 0.4
    bottom = 20.0 + hub * scale
    shapes = [text((10, 8), f"{shaft:g} mm shaft in {hub:g} mm hub", size=LARGE, bold=True)]
    for side in (1, -1):
        outer = [(-half, shaft / 2), (half, shaft / 2), (half, hub / 2), (-half, hub / 2)]
        shapes.append(section(frame.all((x, side * y) for x, y in outer), angle=45, width=0.35))
    long_half = half + over
    walls = [(bore / 2, shaft / 2), (-shaft / 2, -bore / 2)] if bore > 0 else [(-shaft / 2, shaft / 2)]
    for low, high in walls:
        wall = [(-long_half, low), (long_half, low), (long_half, high), (-long_half, high)]
        shapes.append(section(frame.all(wall), angle=-45, width=0.35))
    shapes += [
        centre_line(frame.at((-half - over - 1.5 / scale, 0)), frame.at((half + over + 1.5 / scale, 0))),
        dimension(
            frame.at((half + over, -shaft / 2)), frame.at((half + over, shaft / 2)), f"{shaft:g}", off=-6
        ),
        dimension(frame.at((-half, -hub / 2)), frame.at((-half, hub / 2)), f"{hub:g}", off=over * scale + 8),
        leader(
            frame.at((half * 0.6, shaft / 2)),
            (frame.x + (half + over) * scale + 14, 18),
            f"interference {interference:.3f} mm on diameter",
        ),
        text((WIDTH - 10, bottom + 10), scale_words(scale), size=SMALL, anchor="end"),
    ]
    if length is not None:
        shapes.append(
            dimension(frame.at((-half, -hub / 2)), frame.at((half, -hub / 2)), f"{length:g}", off=-6)
        )
    return drawing(WIDTH, bottom + 14, shapes, title="Press fit in section")
