"""Steel: how readily it welds, from what is in it."""

from __future__ import annotations

from witnessmark.ground.units import Percent, demand_range


def carbon_equivalent(
    carbon: Percent,
    manganese: Percent,
    chromium: Percent,
    molybdenum: Percent,
    vanadium: Percent,
    nickel: Percent,
    copper: Percent,
) -> Percent:
    """Carbon equivalent in the form of the International Institute of Welding.

    Takes
        carbon      %  by mass
        manganese   %  by mass
        chromium    %  by mass
        molybdenum  %  by mass
        vanadium    %  by mass
        nickel      %  by mass
        copper      %  by mass
    Gives
        %
    Refuses
        carbon outside 0 to 2, others outside 0 to 30
    Caution
        none
    Source
        iiw-carbon-equivalent
    Example
        >>> round(carbon_equivalent(Percent(0.15), Percent(1.2), Percent(0.1), Percent(0.05), Percent(0.02),
        ...     Percent(0.5), Percent(0.2)), 3)
        0.431
    """
    demand_range("carbon", carbon, "%", 0, 2, "Above that it is cast iron.")
    for name, part in (
        ("manganese", manganese),
        ("chromium", chromium),
        ("molybdenum", molybdenum),
        ("vanadium", vanadium),
        ("nickel", nickel),
        ("copper", copper),
    ):
        demand_range(name, part, "%", 0, 30, "Give the parts by mass.")
    return Percent(carbon + manganese / 6 + (chromium + molybdenum + vanadium) / 5 + (nickel + copper) / 15)
