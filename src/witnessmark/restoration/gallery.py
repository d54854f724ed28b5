"""The photos of a record as they are looked at: pairs of before and after, and every one, latest first."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.restoration.flow import Flow
from witnessmark.state.photos import Pair, Taken

MOST_PAIRS = 8


class Gallery(Struct, frozen=True, kw_only=True):
    """What is shown.

    things  those that have photos, with how many
    known   whether the name asked for is that of a part or a joint
    """

    pairs: tuple[Pair, ...]
    photos: tuple[Taken, ...]
    things: tuple[tuple[str, int], ...]
    known: bool = False


def gallery(flow: Flow, of: str = "") -> Gallery:
    """The photos of a part, a joint or an assembly; without a name all of them."""
    taken = flow.album.photos
    counts: dict[str, int] = {}
    for one in taken:
        for name in one.at:
            counts[name] = counts.get(name, 0) + 1
    pairs = [pair for pair in reversed(flow.album.pairs) if not of or _is_of(flow, (pair.thing,), of)]
    vehicle = flow.vehicle
    return Gallery(
        pairs=tuple(pairs[:MOST_PAIRS]),
        photos=tuple(one for one in reversed(taken) if not of or _is_of(flow, one.at, of)),
        things=tuple(sorted(counts.items())),
        known=of in vehicle.parts or of in vehicle.joints,
    )


def _is_of(flow: Flow, names: tuple[str, ...], of: str) -> bool:
    return of in names or any(flow.vehicle.assembly_of(name) == of for name in names)
