"""O-rings in grooves: stretch, the section that stretch leaves, squeeze and fill."""

from __future__ import annotations

import math

from witnessmark.ground.units import Mm, Percent, demand_range

LIKE_INSIDE = "Give the free ring's inside diameter."


def stretch(seat: Mm, inside: Mm) -> Percent:
    """How far a ring is stretched over what its inside sits on.

    Takes
        seat    mm  what the inside sits on: groove root, rod, or inside of a face groove
        inside  mm  of the free ring
    Gives
        %  positive where stretched, negative where the ring is too large
    Refuses
        seat outside 0.5 to 1000, inside outside 0.5 to 1000
    Caution
        ring-not-for-brakes
    Source
        oring-stretch
    Example
        >>> round(stretch(Mm(50), Mm(47.22)), 1)
        5.9
    """
    demand_range("seat", seat, "mm", 0.5, 1000, "Measure the groove again.")
    demand_range("inside", inside, "mm", 0.5, 1000, LIKE_INSIDE)
    return Percent((seat / inside - 1) * 100)


def stretched_section(section: Mm, inside: Mm, seat: Mm) -> Mm:
    """The section of a ring stretched on to its seat, its volume kept.

    A ring that is not stretched keeps its section. The volume of a ring of inside d and section w
    goes as (d + w) w², so the new section solves w³ + seat w² = (d + section) section².

    Takes
        section  mm  of the free ring
        inside   mm  of the free ring
        seat     mm  what the inside sits on
    Gives
        mm  the section as stretched
    Refuses
        section outside 0.5 to 20, inside outside 0.5 to 1000, seat outside 0.5 to twice the inside
    Caution
        ring-not-for-brakes
    Source
        oring-volume
    Example
        >>> round(stretched_section(Mm(3.53), Mm(47.22), Mm(50)), 3)
        3.44
    """
    demand_range("section", section, "mm", 0.5, 20, "Measure the ring's thickness.")
    demand_range("inside", inside, "mm", 0.5, 1000, LIKE_INSIDE)
    demand_range("seat", seat, "mm", 0.5, 2000, "Measure the groove again.")
    demand_range("seat over inside", seat / inside, "", 0, 2, "No ring is stretched to twice its size.")
    over = (seat > inside) * (seat - inside)
    volume = (inside + section) * section**2
    held = inside + over
    thin = section
    for _ in range(4):
        thin = Mm(thin - (thin**3 + held * thin**2 - volume) / (3 * thin**2 + 2 * held * thin))
    return thin


def squeeze(section: Mm, depth: Mm) -> Percent:
    """How much of a section the groove presses away.

    Takes
        section  mm  of the ring as it lies there, stretched or free: say which
        depth    mm  from the groove's bottom to the face that closes it
    Gives
        %  of that section; negative where the ring does not touch
    Refuses
        section outside 0.5 to 20, depth outside 0.1 to 30
    Caution
        ring-not-for-brakes
    Source
        oring-glands
    Example
        >>> round(squeeze(Mm(3.53), Mm(2.9)), 1)
        17.8
    """
    demand_range("section", section, "mm", 0.5, 20, "Measure the ring's thickness.")
    demand_range("depth", depth, "mm", 0.1, 30, "Measure from the bottom to the closing face.")
    return Percent((1 - depth / section) * 100)


def fill(section: Mm, depth: Mm, width: Mm) -> Percent:
    """How much of the groove's section the ring fills.

    Takes
        section  mm  of the ring as it lies there
        depth    mm  from the groove's bottom to the face that closes it
        width    mm  of the groove
    Gives
        %  of the groove; over 100 it cannot close
    Refuses
        section outside 0.5 to 20, depth outside 0.1 to 30, width outside 0.2 to 60
    Caution
        ring-not-for-brakes
    Source
        oring-rules
    Example
        >>> round(fill(Mm(2), Mm(1.6), Mm(3.2)), 2)
        61.36
    """
    demand_range("section", section, "mm", 0.5, 20, "Measure the ring's thickness.")
    demand_range("depth", depth, "mm", 0.1, 30, "Measure from the bottom to the closing face.")
    demand_range("width", width, "mm", 0.2, 60, "Measure the groove's width.")
    return Percent(math.pi / 4 * section**2 / (depth * width) * 100)
