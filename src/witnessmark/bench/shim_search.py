"""Which shims to stack: whole micrometres, the fewest pieces, from what is in the tin."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from witnessmark.ground.errors import BadInput

MICRON = 1000
MOST_PIECES = 12
"""More pieces than this make a spongy pack; it is not offered."""


class Stack(Struct, frozen=True, kw_only=True):
    """A pack: its pieces in micrometres, thickest first, and their sum."""

    pieces: tuple[int, ...]

    @property
    def total(self) -> int:
        return sum(self.pieces)

    def words(self) -> str:
        """The pack as one would call for it.

        >>> Stack(pieces=(300, 100, 100)).words()
        '0.30 + 2 of 0.10'
        """
        parts = []
        for piece in dict.fromkeys(self.pieces):
            many = self.pieces.count(piece)
            thick = f"{piece / MICRON:.3f}".rstrip("0")
            thick += "0" * max(0, 4 - len(thick))
            parts.append(thick if many == 1 else f"{many} of {thick}")
        return " + ".join(parts) or "no shim"


def to_microns(millimetres: float) -> int:
    """Whole micrometres; shims are measured no finer."""
    return round(millimetres * MICRON)


def stacks_between(shims: Iterable[tuple[float, int]], low: int, high: int) -> tuple[Stack, ...]:
    """Every total from low to high that the shims can make, each in its fewest pieces.

    shims  thickness in mm and how many there are
    low    micrometres, least total
    high   micrometres, greatest total

    Raises BadInput for a shim of no or absurd thickness.
    """
    best: dict[int, tuple[int, ...]] = {0: ()}
    for thick, many in sorted(_checked(shims), reverse=True):
        best = _with_shim(best, thick, many, high)
    return tuple(Stack(pieces=best[total]) for total in sorted(best) if low <= total <= high)


def _checked(shims: Iterable[tuple[float, int]]) -> list[tuple[int, int]]:
    joined: dict[int, int] = {}
    for thick, many in shims:
        if not 0.005 <= thick <= 20:
            raise BadInput(
                given=f"a shim of {thick:g} mm",
                holds="0.005 to 20 mm",
                do="Look at its unit: 5 thou is 0.127 mm.",
            )
        microns = to_microns(thick)
        joined[microns] = joined.get(microns, 0) + many
    return list(joined.items())


def _with_shim(
    best: dict[int, tuple[int, ...]], thick: int, many: int, high: int
) -> dict[int, tuple[int, ...]]:
    """All totals once a thickness may be used up to so many times."""
    found = dict(best)
    for total, pieces in best.items():
        for count in range(1, min(many, MOST_PIECES - len(pieces)) + 1):
            larger = total + count * thick
            if larger > high:
                break
            pack = (*pieces, *(thick,) * count)
            if larger not in found or len(pack) < len(found[larger]):
                found[larger] = pack
    return found
