"""What a seal can be driven in with: one's own drawer first, then pipes and tubes, one piece or two on end.

Two questions of the hollow: does it pass over the shaft, and does it clear the lip. Both: it fits.
The first alone: marginal. The outside is 0.1 to 0.4 mm under the bore; a little more is marginal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache

from msgspec import Struct

from witnessmark.bench.own_lists import Driver
from witnessmark.bench.seals import clearance_in_bore, clearance_on_shaft, lip_width
from witnessmark.bench.slip import Verdict
from witnessmark.ground.units import Mm, demand_range
from witnessmark.tables.numbers import table

UNDER_LOW, UNDER_HIGH, UNDER_AIM = 0.1, 0.4, 0.25
UNDER_MOST = 1.0
"""Further under the bore a driver bears so far inside that it bends the case: this program's choice."""
LAP = 2.0
"""Two pieces on end must overlap by this much on diameter, or one slips over the other."""
STACKS_SHOWN = 4
GRASP = 10.0
"""What must stand out to be struck or pressed on."""


class Seat(Struct, frozen=True, kw_only=True):
    """The seal's place, mm.

    shaft  largest that the driver passes over
    bore   of the housing
    lip    room taken for the lip on each side
    depth  of the seal below the face; None where it is not known
    reach  of the shaft beyond the seal; None where it is not known
    """

    shaft: Mm
    bore: Mm
    lip: Mm
    depth: Mm | None = None
    reach: Mm | None = None

    @property
    def clear_inside(self) -> float:
        """The hollow that clears the lip."""
        return self.shaft + 2 * self.lip

    @property
    def length(self) -> float | None:
        """What the driver, all pieces together, must be long at least."""
        told = [x for x in (self.depth, self.reach) if x is not None]
        return max(told) + GRASP if told else None


class Tried(Struct, frozen=True, kw_only=True):
    """One driver, or two on end (the lower named first), as judged."""

    driver: str
    inside: Mm
    outside: Mm
    clearance_in_bore: Mm
    clearance_on_shaft: Mm
    band: Mm
    verdict: Verdict
    because: str
    own: bool
    pieces: tuple[Driver, ...] = ()


def seat_of(
    shaft: Mm, bore: Mm, depth: Mm | None = None, reach: Mm | None = None, lip: Mm | None = None
) -> Seat:
    """A seal's place, the lip's room worked out where it was not measured."""
    demand_range("shaft", shaft, "mm", 3, 500, "Measure the shaft at its largest.")
    demand_range("bore", bore, "mm", 6, 600, "Measure the housing where the seal sits.")
    room = lip_width(shaft, bore) if lip is None else lip
    demand_range("lip", room, "mm", 0.1, (bore - shaft) / 2, "It lies between shaft and bore.")
    if depth is not None:
        demand_range("depth", depth, "mm", 0, 300, "Measure from the housing's face to the seal.")
    if reach is not None:
        demand_range("reach", reach, "mm", 0, 2000, "Measure how far the shaft stands out beyond the seal.")
    return Seat(shaft=shaft, bore=bore, lip=room, depth=depth, reach=reach)


def judge(seat: Seat, driver: Driver) -> Tried:
    """One driver alone."""
    under = clearance_in_bore(seat.bore, driver.outside)
    over = clearance_on_shaft(seat.shaft, driver.inside)
    against = [*_against_outside(under), *_against_inside(seat, driver, over), *_against_length(seat, driver)]
    verdict: Verdict = "no" if any(f[0] for f in against) else "marginal" if against else "fits"
    return Tried(
        driver=driver.name,
        inside=driver.inside,
        outside=driver.outside,
        clearance_in_bore=Mm(under),
        clearance_on_shaft=Mm(over),
        band=Mm((driver.outside - driver.inside) / 2),
        verdict=verdict,
        because="; ".join(words for _, words in sorted(against, key=lambda f: not f[0]))
        or "bears on the edge of the case, clears lip and shaft",
        own=driver.own,
        pieces=(driver,),
    )


def _against_outside(under: float) -> Iterator[tuple[bool, str]]:
    if under <= 0:
        yield True, f"does not enter the bore: {-under:.2f} mm too large"
    elif under < UNDER_LOW - 1e-9:
        yield False, f"tight in the bore: {under:.2f} mm, {UNDER_LOW:g} at least is asked"
    elif under > UNDER_MOST + 1e-9:
        yield True, f"{under:.2f} mm under the bore: bears too far inside the edge of the case"
    elif under > UNDER_HIGH + 1e-9:
        yield (
            False,
            f"{under:.2f} mm under the bore, {UNDER_HIGH:g} at most is asked: watch that it stays square",
        )


def _against_inside(seat: Seat, driver: Driver, over: float) -> Iterator[tuple[bool, str]]:
    if over <= 0:
        yield True, f"does not pass over the shaft: {-over:.2f} mm too small"
    elif driver.inside < seat.clear_inside - 1e-9:
        yield False, "passes the shaft; check that it bears on the case, not the lip"


def _against_length(seat: Seat, driver: Driver) -> Iterator[tuple[bool, str]]:
    if driver.length is not None and seat.length is not None and driver.length < seat.length:
        yield False, f"{driver.length:g} mm long, {seat.length:g} wanted: stand a second piece on it"
    if driver.hollow is not None and seat.reach is not None and driver.hollow < seat.reach:
        yield True, f"its hollow ends at {driver.hollow:g} mm and the shaft stands out {seat.reach:g}"


def stacks(seat: Seat, drivers: Iterable[Driver]) -> tuple[Tried, ...]:
    """Two pieces of the drawer on end: the lower bears on the seal, the upper, smaller one lengthens it."""
    pieces = [d for d in drivers if d.own]
    found = []
    for lower in pieces:
        if judge(seat, lower).verdict != "no":
            found += [_stacked(seat, lower, upper) for upper in pieces if _stands(seat, lower, upper)]
    return tuple(sorted(found, key=order)[:STACKS_SHOWN])


def _stands(seat: Seat, lower: Driver, upper: Driver) -> bool:
    """Whether the upper piece stands on the lower one's end and goes where it must."""
    if upper is lower or upper.outside > lower.outside:
        return False
    lap = min(lower.outside, upper.outside) - max(lower.inside, upper.inside)
    enters = (
        lower.length is None or seat.depth is None or seat.depth <= lower.length or upper.outside < seat.bore
    )
    passes = upper.inside > seat.shaft or (
        lower.length is not None and seat.reach is not None and seat.reach < lower.length
    )
    return lap >= LAP and enters and passes


def _stacked(seat: Seat, lower: Driver, upper: Driver) -> Tried:
    alone = judge(seat, lower)
    both = None if None in (lower.length, upper.length) else (lower.length or 0) + (upper.length or 0)
    short = seat.length is not None and both is not None and both < seat.length
    joined = Driver(
        name=f"{lower.name} below, {upper.name} above",
        inside=lower.inside, outside=lower.outside, length=None if both is None else Mm(both),
    )  # fmt: skip
    judged = judge(seat, joined)
    length = f", {both:g} mm together" if both is not None else ""
    return Tried(
        driver=joined.name,
        inside=lower.inside,
        outside=lower.outside,
        clearance_in_bore=alone.clearance_in_bore,
        clearance_on_shaft=alone.clearance_on_shaft,
        band=alone.band,
        verdict=judged.verdict,
        because=f"{'still short' if short else 'reaches past the shaft'}{length}; {judged.because}",
        own=True,
        pieces=(lower, upper),
    )


def order(one: Tried) -> tuple[int, bool, int, float, str]:
    """Best first: verdict, own before tables, one piece before two, then how near the aim under the bore."""
    rank = ("fits", "marginal", "no").index(one.verdict)
    return rank, not one.own, len(one.pieces), abs(one.clearance_in_bore - UNDER_AIM), one.driver


@cache
def tubes() -> tuple[Driver, ...]:
    """Pipes and tubes of the tables, as they might be cut."""
    plastic = (
        Driver(
            name=f"{row['size']} in plastic pipe, schedule {row['schedule']}",
            inside=Mm(row["inside"]), outside=Mm(row["outside"]), own=False, source="tube-plastic",
        )
        for row in table("seals/plastic_pipe").rows
    )  # fmt: skip
    copper = (
        Driver(
            name=f"{row['outside']:g} x {row['wall']:g} copper tube",
            inside=Mm(row["outside"] - 2 * row["wall"]), outside=Mm(row["outside"]), own=False,
            source="tube-copper",
        )
        for row in table("seals/copper_tube").rows
    )  # fmt: skip
    return (*plastic, *copper)


def search(seat: Seat, own: tuple[Driver, ...]) -> tuple[Tried, ...]:
    """Everything of the drawer with its reasons, stacks of it, and what the tables have that would do."""
    drawer = [judge(seat, d) for d in own]
    bought = [t for t in (judge(seat, d) for d in tubes()) if t.verdict != "no"]
    return tuple(sorted([*drawer, *stacks(seat, own), *bought], key=order))


def could_be_turned(seat: Seat, own: tuple[Driver, ...]) -> tuple[Driver, ...]:
    """Pieces too large outside that would do when turned down, the least to take off first."""
    large = [
        d
        for d in (*own, *tubes())
        if d.outside >= seat.bore and seat.shaft < d.inside <= seat.bore - UNDER_AIM - 2
    ]
    return tuple(sorted(large, key=lambda d: (not d.own, d.outside))[:3])
