"""Radial shaft seals: what a driver must clear, and how tight the case sits."""

from __future__ import annotations

from witnessmark.ground.units import Mm, Ratio, demand_range

LIP_SHARE = Ratio(0.3)
"""Lip and spring are taken as this part of the space between shaft and bore: a choice of this program."""


def clearance_in_bore(bore: Mm, outside: Mm) -> Mm:
    """What is left between a driver and the bore, on diameter; negative where it will not go in.

    Takes
        bore     mm  of the housing
        outside  mm  of the driver
    Gives
        mm  bore less driver
    Refuses
        bore outside 4 to 600, outside outside 1 to 1000
    Caution
        seal-fitting
    Source
        seal-driver-rule
    Example
        >>> round(clearance_in_bore(Mm(36.2), Mm(36)), 2)
        0.2
    """
    demand_range("bore", bore, "mm", 4, 600, "Measure the housing where the seal sits.")
    demand_range("outside", outside, "mm", 1, 1000, "Measure the driver over its outside.")
    return Mm(bore - outside)


def clearance_on_shaft(shaft: Mm, inside: Mm) -> Mm:
    """What is left between a driver and the shaft, on diameter; negative where it will not pass over.

    Takes
        shaft   mm  largest that the driver passes over
        inside  mm  of the driver
    Gives
        mm  driver less shaft
    Refuses
        shaft outside 1 to 600, inside outside 0 to 1000
    Caution
        seal-fitting
    Source
        seal-driver-rule
    Example
        >>> round(clearance_on_shaft(Mm(31.8), Mm(32)), 2)
        0.2
    """
    demand_range("shaft", shaft, "mm", 1, 600, "Measure the shaft at its largest.")
    demand_range("inside", inside, "mm", 0, 1000, "Measure the driver's hollow.")
    return Mm(inside - shaft)


def lip_width(shaft: Mm, bore: Mm) -> Mm:
    """The room taken for lip and spring on each side where nobody has measured it.

    Takes
        shaft  mm  at the lip
        bore   mm  of the housing
    Gives
        mm  three tenths of the space between them, on one side
    Refuses
        shaft outside 1 to 600, bore outside 4 to 600, a space under 1 mm on one side
    Caution
        seal-fitting
    Source
        seal-lip-choice
    Example
        >>> round(lip_width(Mm(38), Mm(60)), 2)
        3.3
    """
    demand_range("shaft", shaft, "mm", 1, 600, "Measure the shaft at the lip.")
    demand_range("bore", bore, "mm", 4, 600, "Measure the housing where the seal sits.")
    demand_range("space between shaft and bore", (bore - shaft) / 2, "mm", 1, 100, "The bore is the larger.")
    return Mm(LIP_SHARE * (bore - shaft) / 2)


def press_allowance(seal_outside: Mm, bore: Mm) -> Mm:
    """How much larger than its bore a seal is, on diameter.

    Takes
        seal_outside  mm  over the seal's case
        bore          mm  of the housing
    Gives
        mm  seal less bore; it holds by this
    Refuses
        seal_outside outside 4 to 600, bore outside 4 to 600
    Caution
        seal-fitting
    Source
        seal-limits
    Example
        >>> round(press_allowance(Mm(50.2), Mm(50)), 2)
        0.2
    """
    demand_range("seal_outside", seal_outside, "mm", 4, 600, "Measure over the case.")
    demand_range("bore", bore, "mm", 4, 600, "Measure the housing where the seal sits.")
    return Mm(seal_outside - bore)
