"""Screw threads: diameters at depth, stress area, the drill before the tap, the ten-pitch trick."""

from __future__ import annotations

import math

from witnessmark.ground.units import Mm, Mm2, PerInch, Ratio, demand_range

INCH = 25.4


def pitch_of(threads_per_inch: PerInch) -> Mm:
    """The pitch of an inch thread.

    Takes
        threads_per_inch  1/in  as counted or as on the gauge
    Gives
        mm  the pitch
    Refuses
        threads_per_inch outside 3 to 100
    Caution
        none
    Source
        thread-unified-series
    Example
        >>> pitch_of(PerInch(20))
        1.27
    """
    demand_range("threads_per_inch", threads_per_inch, "1/in", 3, 100, "Count over a whole inch.")
    return Mm(INCH / threads_per_inch)


def diameter_at(diameter: Mm, pitch: Mm, depth: Ratio) -> Mm:
    """The diameter some way down the flank, as the pitch diameter or the root is.

    Takes
        diameter  mm     nominal, over the crests
        pitch     mm     of the thread
        depth     ratio  how far down on both sides together, in pitches: 0.6495 is a 60° pitch diameter
    Gives
        mm  the diameter there
    Refuses
        diameter outside 0.5 to 300, pitch outside 0.1 to 12, depth outside 0 to 1.5
    Caution
        none
    Source
        thread-metric-form
    Example
        >>> round(diameter_at(Mm(8), Mm(1.25), Ratio(0.649519)), 3)
        7.188
    """
    demand_range("diameter", diameter, "mm", 0.5, 300, "Give the size over the crests.")
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    demand_range("depth", depth, "", 0, 1.5, "Give it in pitches.")
    return Mm(diameter - depth * pitch)


def stress_area(pitch_diameter: Mm, root_diameter: Mm) -> Mm2:
    """The area that carries a bolt's pull: a circle midway between pitch and root diameter.

    Takes
        pitch_diameter  mm  of the bolt
        root_diameter   mm  of the bolt
    Gives
        mm²  the stress area
    Refuses
        either outside 0.3 to 300, or a root larger than the pitch diameter
    Caution
        none
    Source
        thread-metric-form, stress-area-convention
    Example
        >>> round(stress_area(Mm(7.1881), Mm(6.4664)), 1)
        36.6
    """
    demand_range("pitch_diameter", pitch_diameter, "mm", 0.3, 300, "Look at the thread again.")
    demand_range("root_diameter", root_diameter, "mm", 0.3, 300, "Look at the thread again.")
    demand_range("depth of thread", pitch_diameter - root_diameter, "mm", 0, 20, "The root is the smaller.")
    return Mm2(math.pi / 4 * ((pitch_diameter + root_diameter) / 2) ** 2)


def tap_drill(diameter: Mm, pitch: Mm) -> Mm:
    """The drill before the tap, by the rule diameter less pitch.

    Takes
        diameter  mm  nominal, over the crests
        pitch     mm  of the thread
    Gives
        mm  the drill; take the nearest there is, the larger in hard metal
    Refuses
        diameter outside 0.5 to 300, pitch outside 0.1 to 12, a pitch as large as the diameter
    Caution
        none
    Source
        tap-drill-rule
    Example
        >>> tap_drill(Mm(8), Mm(1.25))
        6.75
    """
    demand_range("diameter", diameter, "mm", 0.5, 300, "Give the size over the crests.")
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    demand_range("drill", diameter - pitch, "mm", 0.2, 300, "Look at the pitch again.")
    return Mm(diameter - pitch)


def ten_pitches(pitch: Mm) -> Mm:
    """The way over ten threads, crest to crest: a plain rule then tells close pitches apart.

    Takes
        pitch  mm  of the thread
    Gives
        mm  from one crest to the tenth after it
    Refuses
        pitch outside 0.1 to 12
    Caution
        none
    Source
        common-practice
    Example
        >>> ten_pitches(Mm(1.25)), round(ten_pitches(Mm(25.4 / 20)), 2)
        (12.5, 12.7)
    """
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    return Mm(10 * pitch)
