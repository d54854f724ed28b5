"""Welds: heat, wire feed, throat, and a row of plugs."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from witnessmark.ground.units import (
    Ampere,
    KilojoulePerMm,
    Mm,
    MmPerMinuteAmpere,
    MmPerSecond,
    Ratio,
    Volt,
    demand_range,
)


def heat_input(voltage: Volt, current: Ampere, speed: MmPerSecond, efficiency: Ratio) -> KilojoulePerMm:
    """Heat that an arc leaves in each millimetre of weld.

    Takes
        voltage     V      at the arc
        current     A      at the arc
        speed       mm/s   of travel
        efficiency  ratio  of the process; 1 gives the arc energy
    Gives
        kJ/mm
    Refuses
        voltage outside 1 to 100, current outside 1 to 2000, speed outside 0.1 to 200,
        efficiency outside 0.1 to 1
    Caution
        hot-work
    Source
        en-1011-heat-input
    Example
        >>> round(heat_input(Volt(24), Ampere(180), MmPerSecond(5), Ratio(0.8)), 3)
        0.691
    """
    demand_range("voltage", voltage, "V", 1, 100, "At the arc, not of the mains.")
    demand_range("current", current, "A", 1, 2000, "At the arc, not of the mains.")
    demand_range("speed", speed, "mm/s", 0.1, 200, "By hand 3 to 10 mm/s.")
    demand_range("efficiency", efficiency, "", 0.1, 1, "Metal-arc with wire is 0.8.")
    return KilojoulePerMm(efficiency * voltage * current / speed / 1000)


def wire_feed(current: Ampere, burn_off: MmPerMinuteAmpere) -> MmPerSecond:
    """How fast the wire runs for a current.

    Takes
        current   A           wanted
        burn_off  mm/(min·A)  of the wire's diameter
    Gives
        mm/s
    Refuses
        current outside 1 to 1000, burn_off outside 1 to 500
    Caution
        hot-work
    Source
        wire-burn-off
    Example
        >>> round(wire_feed(Ampere(62.5), MmPerMinuteAmpere(50.8)) * 60)
        3175
    """
    demand_range("current", current, "A", 1, 1000, "Look at the unit again.")
    demand_range("burn-off", burn_off, "mm/(min·A)", 1, 500, "0.8 mm wire burns 50.8.")
    return MmPerSecond(current * burn_off / 60)


def current_from_thickness(thickness: Mm) -> Ampere:
    """The rule of the makers: one ampere for each thousandth of an inch of sheet.

    Takes
        thickness  mm  of the sheet
    Gives
        A
    Refuses
        thickness outside 0.5 to 6.5
    Caution
        hot-work
    Source
        wire-burn-off
    Example
        >>> current_from_thickness(Mm(25.4 / 16))
        62.5
    """
    demand_range("thickness", thickness, "mm", 0.5, 6.5, "The rule is for thin sheet.")
    return Ampere(round(thickness / 0.0254, 9))


def throat(leg: Mm) -> Mm:
    """Throat of a fillet of two like legs.

    Takes
        leg  mm  of the fillet
    Gives
        mm
    Refuses
        leg outside 0.5 to 100
    Caution
        none
    Source
        geometry
    Example
        >>> round(throat(Mm(7)), 3)
        4.95
    """
    demand_range("leg", leg, "mm", 0.5, 100, "Look at the unit again.")
    return Mm(leg / math.sqrt(2))


def plug_hole(thickness: Mm) -> tuple[float, float]:
    """Least and greatest hole for a plug weld, by a rule made for plate.

    Takes
        thickness  mm  of the part with the hole
    Gives
        mm  least, greatest
    Refuses
        thickness outside 0.5 to 15.9
    Caution
        hot-work
    Source
        aisc-j2-plugs
    Example
        >>> [round(d, 1) for d in plug_hole(Mm(6.35))]
        [14.3, 17.5]
    """
    demand_range("thickness", thickness, "mm", 0.5, 15.9, "Above 5/8 in other rules hold.")
    least = thickness + 7.9375
    return least, max(least + 3.175, 2.25 * thickness)


def plug_places(length: Mm, edge: Mm, count: int) -> tuple[float, ...]:
    """Where plugs stand along a row, like distances apart, from one end.

    Takes
        length  mm     of the row
        edge    mm     from each end to the first plug
        count   count  of plugs
    Gives
        mm  from one end
    Refuses
        count outside 1 to 500, edges that overlap
    Caution
        none
    Source
        geometry
    Example
        >>> plug_places(Mm(100), Mm(10), 3)
        (10.0, 50.0, 90.0)
    """
    demand_range("count", count, "", 1, 500, "Count the spots on the old flange.")
    demand_range("length", length, "mm", 2 * edge if count > 1 else edge, 20_000, "The row is too short.")
    if count == 1:
        return (length / 2,)
    pitch = (length - 2 * edge) / (count - 1)
    return tuple(edge + i * pitch for i in range(count))


def spread_order(count: int) -> tuple[int, ...]:
    """An order that keeps away from what is still hot: ends first, then the middle of the widest gap.

    >>> spread_order(5)
    (0, 4, 2, 1, 3)
    """
    if count < 3:
        return tuple(range(count))
    order, left = [0, count - 1], list(range(1, count - 1))
    while left:
        gaps = {i: min(abs(i - done) for done in order) for i in left}
        widest = max(gaps.values())
        order.append(next(i for i in left if gaps[i] == widest))
        left.remove(order[-1])
    return tuple(order)


def pitches(places: Sequence[float]) -> float:
    """The least distance between neighbours in a row, or 0 for one alone.

    >>> pitches((10.0, 50.0, 90.0))
    40.0
    """
    return min((b - a for a, b in pairwise(places)), default=0.0)
