"""Shims: what a pack must measure, and what is left with it in."""

from __future__ import annotations

from witnessmark.ground.units import Mm, demand_range


def pack_for(measured: Mm, wanted: Mm, fitted: Mm) -> Mm:
    """The pack that leaves a wanted gap, where the pack takes the gap up.

    Takes
        measured  mm  gap or float with the fitted pack in
        wanted    mm  gap or float to be left
        fitted    mm  pack that is in while measuring; 0 for none
    Gives
        mm  the pack; negative where no pack can do it
    Refuses
        measured outside 0 to 300, wanted outside -2 to 300, fitted outside 0 to 50
    Caution
        none
    Source
        shim-window
    Example
        >>> round(pack_for(Mm(0.62), Mm(0.20), Mm(0)), 2)
        0.42
    """
    demand_range("measured", measured, "mm", 0, 300, "Measure the gap with the old pack in, or with none.")
    demand_range("wanted", wanted, "mm", -2, 300, "Below 0 is a preload, as on taper rollers.")
    demand_range("fitted", fitted, "mm", 0, 50, "Add up the shims that are in.")
    return Mm(measured + fitted - wanted)


def left_with(measured: Mm, pack: Mm, fitted: Mm) -> Mm:
    """What is left of the gap with a pack in that takes it up.

    Takes
        measured  mm  gap or float with the fitted pack in
        pack      mm  that goes in
        fitted    mm  pack that was in while measuring; 0 for none
    Gives
        mm  what is left; negative is preload
    Refuses
        measured outside 0 to 300, pack outside 0 to 50, fitted outside 0 to 50
    Caution
        none
    Source
        shim-window
    Example
        >>> round(left_with(Mm(0.62), Mm(0.42), Mm(0)), 2)
        0.2
    """
    demand_range("measured", measured, "mm", 0, 300, "Measure the gap with the old pack in, or with none.")
    demand_range("pack", pack, "mm", 0, 50, "Add up the shims.")
    demand_range("fitted", fitted, "mm", 0, 50, "Add up the shims that are in.")
    return Mm(measured + fitted - pack)
