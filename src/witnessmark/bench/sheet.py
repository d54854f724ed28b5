"""Sheet metal: bends developed flat."""

from __future__ import annotations

import math
from collections.abc import Sequence

from witnessmark.ground.elementwise import tan
from witnessmark.ground.units import Degree, Mm, Ratio, demand_range


def bend_allowance(thickness: Mm, radius: Mm, angle: Degree, k: Ratio) -> Mm:
    """The length that a bend takes, along the line that is neither stretched nor pressed.

    Takes
        thickness  mm     of the sheet
        radius     mm     inside
        angle      °      that the sheet is turned through; 90 makes a square corner
        k          ratio  where the neutral line lies, from the inside, as a part of the thickness
    Gives
        mm
    Refuses
        thickness outside 0.1 to 25, radius outside 0 to 500, angle outside 0 to 180, k outside 0.2 to 0.6
    Caution
        none
    Source
        bend-k
    Example
        >>> round(bend_allowance(Mm(2.3), Mm(0.9), Degree(90), Ratio(1 / 3)), 3)
        2.618
    """
    _demand_bend(thickness, radius, angle)
    demand_range("k", k, "", 0.2, 0.6, "It lies between a third and a half of the thickness.")
    return Mm(angle * math.pi / 180 * (radius + k * thickness))


def bend_deduction(thickness: Mm, radius: Mm, angle: Degree, k: Ratio) -> Mm:
    """What is taken off the sum of the outside legs for each bend.

    Takes
        thickness  mm     of the sheet
        radius     mm     inside
        angle      °      that the sheet is turned through
        k          ratio  where the neutral line lies
    Gives
        mm
    Refuses
        as `bend_allowance`, and angles above 170, where the outside legs never meet
    Caution
        none
    Source
        bend-k
    Example
        >>> round(bend_deduction(Mm(1), Mm(1), Degree(90), Ratio(0.38)), 3)
        1.832
    """
    demand_range("angle", angle, "°", 0, 170, "Measure the legs of a fold to its tangent points instead.")
    setback = (radius + thickness) * tan(angle * math.pi / 360)
    return Mm(2 * setback - bend_allowance(thickness, radius, angle, k))


def k_from_deduction(thickness: Mm, radius: Mm, angle: Degree, deduction: Mm) -> Ratio:
    """Where the neutral line lies, from a trial strip bent and measured.

    Takes
        thickness  mm  of the sheet
        radius     mm  inside
        angle      °   that the strip was turned through
        deduction  mm  sum of the outside legs less the flat length
    Gives
        ratio
    Refuses
        thickness outside 0.1 to 25, radius outside 0 to 500, angle outside 10 to 170
    Caution
        none
    Source
        bend-k
    Example
        >>> round(k_from_deduction(Mm(0.060 * 25.4), Mm(0.060 * 25.4), Degree(90), Mm(0.106 * 25.4)), 4)
        0.4218
    """
    _demand_bend(thickness, radius, angle)
    demand_range("angle", angle, "°", 10, 170, "Bend the trial strip further.")
    turn = angle * math.pi / 180
    return Ratio(((2 * (radius + thickness) * tan(turn / 2) - deduction) / turn - radius) / thickness)


def flat_length(legs: Sequence[float], deduction: float) -> float:
    """The strip to cut for a row of legs with one like bend between each two.

    Takes
        legs       mm  outside lengths, two or more
        deduction  mm  for each bend
    Gives
        mm
    Refuses
        fewer than two legs, legs outside 0.5 to 5000, a strip of no length
    Caution
        none
    Source
        bend-k
    Example
        >>> round(flat_length([Mm(76), Mm(115)], Mm(3.78)), 2)
        187.22
    """
    demand_range("number of legs", len(legs), "", 2, 20, "Give the outside legs, as 76x115 mm.")
    for leg in legs:
        demand_range("leg", leg, "mm", 0.5, 5000, "Look at the unit again.")
    flat = sum(legs) - (len(legs) - 1) * deduction
    demand_range("flat length", flat, "mm", 0.5, 100_000, "The legs are shorter than the bend needs.")
    return flat


def _demand_bend(thickness: float, radius: float, angle: float) -> None:
    demand_range("thickness", thickness, "mm", 0.1, 25, "Look at the unit again.")
    demand_range("radius", radius, "mm", 0, 500, "Give the inside radius.")
    demand_range("angle", angle, "°", 0, 180, "90 makes a square corner.")
