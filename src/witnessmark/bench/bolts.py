"""Bolted joints: torque, preload, friction, engagement, turn of the nut, adapter on the wrench."""

from __future__ import annotations

import math

from witnessmark.ground.elementwise import cos, tan
from witnessmark.ground.units import (
    Degree,
    MegaPascal,
    Mm,
    Mm2,
    Newton,
    NewtonMetre,
    Ratio,
    demand_range,
)

LIKE_BOOK = "Look at the unit again: 35 lbf ft is 47 N·m."
LIKE_FRICTION = "Oiled steel is near 0.12, dry steel near 0.20."
LIKE_SIZE = "Give the nominal size in mm."


def tightening_torque(preload: Newton, diameter: Mm, nut_factor: Ratio) -> NewtonMetre:
    """The torque that leaves a preload, by the short form: all friction lumped in one factor.

    Takes
        preload     N      wanted in the bolt
        diameter    mm     nominal, over the crests
        nut_factor  ratio  of torque to preload times diameter
    Gives
        N·m  the torque to set
    Refuses
        preload outside 0 to 2 000 000, diameter outside 1 to 100, nut_factor outside 0.04 to 0.6
    Caution
        torque-scatter
    Source
        torque-short-form
    Example
        >>> tightening_torque(Newton(20_000), Mm(8), Ratio(0.2))
        32.0
    """
    demand_range("preload", preload, "N", 0, 2_000_000, "Look at the preload again.")
    demand_range("diameter", diameter, "mm", 1, 100, LIKE_SIZE)
    demand_range("nut_factor", nut_factor, "", 0.04, 0.6, LIKE_FRICTION)
    return NewtonMetre(preload * diameter * nut_factor / 1000)


def preload_from_torque(torque: NewtonMetre, diameter: Mm, nut_factor: Ratio) -> Newton:
    """The middle preload that a torque leaves, by the short form.

    Takes
        torque      N·m    read while the nut still turns
        diameter    mm     nominal, over the crests
        nut_factor  ratio  of torque to preload times diameter
    Gives
        N  the middle of a wide scatter
    Refuses
        torque outside 0 to 10 000, diameter outside 1 to 100, nut_factor outside 0.04 to 0.6
    Caution
        torque-scatter
    Source
        torque-short-form
    Example
        >>> preload_from_torque(NewtonMetre(50), Mm(10), Ratio(0.2))
        25000.0
    """
    demand_range("torque", torque, "N·m", 0, 10_000, LIKE_BOOK)
    demand_range("diameter", diameter, "mm", 1, 100, LIKE_SIZE)
    demand_range("nut_factor", nut_factor, "", 0.04, 0.6, LIKE_FRICTION)
    return Newton(torque * 1000 / (nut_factor * diameter))


def nut_factor(
    diameter: Mm,
    pitch: Mm,
    pitch_diameter: Mm,
    angle: Degree,
    friction_thread: Ratio,
    friction_head: Ratio,
    bearing_diameter: Mm,
) -> Ratio:
    """The nut factor from friction in the thread and under the head: lift, thread, head.

    Takes
        diameter          mm     nominal, over the crests
        pitch             mm     of the thread
        pitch_diameter    mm     of the thread
        angle             °      between the flanks
        friction_thread   ratio  in the thread
        friction_head     ratio  under the part that turns
        bearing_diameter  mm     mean diameter of the ring the turning part bears on
    Gives
        ratio  the nut factor
    Refuses
        diameter outside 1 to 100, pitch outside 0.1 to 12, pitch_diameter outside 0.5 to diameter,
        angle outside 20 to 90, either friction outside 0.02 to 0.6,
        bearing_diameter outside the diameter to four times it
    Caution
        torque-scatter
    Source
        torque-long-form
    Example
        >>> round(nut_factor(Mm(10), Mm(1.5), Mm(9.026), Degree(60), Ratio(0.14), Ratio(0.14), Mm(13)), 3)
        0.188
    """
    demand_range("diameter", diameter, "mm", 1, 100, LIKE_SIZE)
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    demand_range("pitch_diameter over diameter", pitch_diameter / diameter, "", 0.5, 1, LIKE_SIZE)
    demand_range("angle", angle, "°", 20, 90, "It is 60, 55 or 47.5 on most vehicles.")
    demand_range("friction_thread", friction_thread, "", 0.02, 0.6, LIKE_FRICTION)
    demand_range("friction_head", friction_head, "", 0.02, 0.6, LIKE_FRICTION)
    ring = bearing_diameter / diameter
    demand_range("bearing_diameter over diameter", ring, "", 1, 4, "It lies between hole and flats.")
    lift = pitch / (2 * math.pi)
    thread = friction_thread * pitch_diameter / (2 * cos(angle * math.pi / 360))
    return Ratio((lift + thread + friction_head * bearing_diameter / 2) / diameter)


def bearing_mean(outer: Mm, hole: Mm) -> Mm:
    """The mean diameter of the ring that a head or nut bears on.

    Takes
        outer  mm  of the bearing face, about the width across flats
        hole   mm  it stands over
    Gives
        mm  the mean of both
    Refuses
        outer outside 1 to 300, hole outside 0.5 to outer
    Caution
        none
    Source
        torque-long-form
    Example
        >>> bearing_mean(Mm(16), Mm(11))
        13.5
    """
    demand_range("outer", outer, "mm", 1, 300, "Measure flat to flat.")
    demand_range("hole", hole, "mm", 0.5, 300, "Measure the hole.")
    demand_range("hole over bearing face", hole / outer, "", 0, 1, "The hole is the smaller.")
    return Mm((outer + hole) / 2)


def proof_load(stress_area: Mm2, proof_stress: MegaPascal) -> Newton:
    """The pull a bolt bears without staying longer.

    Takes
        stress_area   mm²  of the thread
        proof_stress  MPa  of the grade
    Gives
        N  the proof load
    Refuses
        stress_area outside 0.1 to 10 000, proof_stress outside 50 to 2000
    Caution
        none
    Source
        strength-iso-898
    Example
        >>> proof_load(Mm2(36.6), MegaPascal(580))
        21228.0
    """
    demand_range("stress_area", stress_area, "mm²", 0.1, 10_000, "Look at the thread again.")
    demand_range("proof_stress", proof_stress, "MPa", 50, 2000, "8.8 has 580 MPa, 600 over M16.")
    return Newton(stress_area * proof_stress)


def turn_angle(preload: Newton, grip: Mm, modulus: MegaPascal, area: Mm2, pitch: Mm) -> Degree:
    """How far a nut turns to stretch the bolt alone to a preload, once everything has closed up.

    Takes
        preload  N    wanted
        grip     mm   length that stretches
        modulus  MPa  of the bolt, 205 000 for steel
        area     mm²  that stretches: the stress area where thread runs all along the grip
        pitch    mm   of the thread
    Gives
        °  the turn from snug
    Refuses
        preload outside 0 to 2 000 000, grip outside 1 to 2000, modulus outside 10 000 to 500 000,
        area outside 0.1 to 10 000, pitch outside 0.1 to 12
    Caution
        torque-scatter
    Source
        turn-of-nut
    Example
        >>> round(turn_angle(Newton(28_000), Mm(40), MegaPascal(205_000), Mm2(58), Mm(1.5)), 1)
        22.6
    """
    demand_range("preload", preload, "N", 0, 2_000_000, "Look at the preload again.")
    demand_range("grip", grip, "mm", 1, 2000, "Measure from under the head to the nut.")
    demand_range("modulus", modulus, "MPa", 10_000, 500_000, "Steel has 205 GPa.")
    demand_range("area", area, "mm²", 0.1, 10_000, "Look at the thread again.")
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    return Degree(360 * preload * grip / (modulus * area * pitch))


def shear_area_tapped(
    engagement: Mm, bolt_major: Mm, tapped_pitch_diameter: Mm, pitch: Mm, angle: Degree
) -> Mm2:
    """The area of the tapped part that shears when its thread strips, at the bolt's crests.

    Takes
        engagement             mm  length of full thread engaged
        bolt_major             mm  over the bolt's crests, least
        tapped_pitch_diameter  mm  of the tapped thread, greatest
        pitch                  mm  of the thread
        angle                  °   between the flanks
    Gives
        mm²  the area
    Refuses
        engagement outside 0 to 500, bolt_major outside 1 to 100, pitch outside 0.1 to 12,
        angle outside 20 to 90, flanks that do not overlap
    Caution
        none
    Source
        thread-shear-area
    Example
        >>> round(shear_area_tapped(Mm(10), Mm(10), Mm(9.026), Mm(1.5), Degree(60)), 1)
        274.9
    """
    demand_range("engagement", engagement, "mm", 0, 500, "Measure the full threads.")
    demand_range("bolt_major", bolt_major, "mm", 1, 100, LIKE_SIZE)
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    demand_range("angle", angle, "°", 20, 90, "It is 60, 55 or 47.5 on most vehicles.")
    lap = pitch / 2 + tan(angle * math.pi / 360) * (bolt_major - tapped_pitch_diameter)
    demand_range(
        "width of thread at the crest", lap / pitch, "pitches", 0.01, 1, "Bolt too small for the hole."
    )
    return Mm2(math.pi * bolt_major * engagement / pitch * lap)


def shear_area_bolt(
    engagement: Mm, tapped_minor: Mm, bolt_pitch_diameter: Mm, pitch: Mm, angle: Degree
) -> Mm2:
    """The area of the bolt that shears when its own thread strips, at the tapped part's bore.

    Takes
        engagement           mm  length of full thread engaged
        tapped_minor         mm  bore of the tapped thread, greatest
        bolt_pitch_diameter  mm  of the bolt, least
        pitch                mm  of the thread
        angle                °   between the flanks
    Gives
        mm²  the area
    Refuses
        engagement outside 0 to 500, tapped_minor outside 0.5 to 100, pitch outside 0.1 to 12,
        angle outside 20 to 90, flanks that do not overlap
    Caution
        none
    Source
        thread-shear-area
    Example
        >>> round(shear_area_bolt(Mm(10), Mm(8.376), Mm(9.026), Mm(1.5), Degree(60)), 1)
        197.4
    """
    demand_range("engagement", engagement, "mm", 0, 500, "Measure the full threads.")
    demand_range("tapped_minor", tapped_minor, "mm", 0.5, 100, LIKE_SIZE)
    demand_range("pitch", pitch, "mm", 0.1, 12, "Measure over ten threads and divide.")
    demand_range("angle", angle, "°", 20, 90, "It is 60, 55 or 47.5 on most vehicles.")
    lap = pitch / 2 + tan(angle * math.pi / 360) * (bolt_pitch_diameter - tapped_minor)
    demand_range(
        "width of thread at the bore", lap / pitch, "pitches", 0.01, 1, "Hole too large for the bolt."
    )
    return Mm2(math.pi * tapped_minor * engagement / pitch * lap)


def engagement_length(load: Newton, shear_strength: MegaPascal, area_per_mm: Mm) -> Mm:
    """The length of thread whose shear just bears a load.

    Takes
        load            N    to be borne, the bolt's breaking load
        shear_strength  MPa  of the part whose thread strips
        area_per_mm     mm   shear area of one millimetre of thread, mm² a mm
    Gives
        mm  the length of full thread
    Refuses
        load outside 0 to 5 000 000, shear_strength outside 5 to 2000, area_per_mm outside 0.1 to 500
    Caution
        none
    Source
        thread-shear-area
    Example
        >>> round(engagement_length(Newton(46_400), MegaPascal(270), Mm(27.5)), 2)
        6.25
    """
    demand_range("load", load, "N", 0, 5_000_000, "Look at the bolt again.")
    demand_range("shear_strength", shear_strength, "MPa", 5, 2000, "Mild steel has about 270 MPa.")
    demand_range("area_per_mm", area_per_mm, "mm", 0.1, 500, "Look at the thread again.")
    return Mm(load / (shear_strength * area_per_mm))


def adapter_setting(torque: NewtonMetre, wrench_length: Mm, extension: Mm, angle: Degree) -> NewtonMetre:
    """What to set on a torque wrench that carries an open-ended adapter.

    Takes
        torque         N·m  wanted at the nut
        wrench_length  mm   from the middle of the square to the middle of the grip
        extension      mm   from the middle of the square to the middle of the nut
        angle          °    between adapter and wrench; 0 straight ahead, 90 square to it
    Gives
        N·m  the setting; the same as wanted when the adapter stands square
    Refuses
        torque outside 0 to 10 000, wrench_length outside 50 to 3000, extension outside 0 to 2000,
        angle outside 0 to 180, or an adapter that reaches back past the grip
    Caution
        torque-scatter
    Source
        adapter-lever
    Example
        >>> adapter_setting(NewtonMetre(30), Mm(300), Mm(150), Degree(0))
        20.0
    """
    demand_range("torque", torque, "N·m", 0, 10_000, LIKE_BOOK)
    demand_range("wrench_length", wrench_length, "mm", 50, 3000, "Measure from square to grip.")
    demand_range("extension", extension, "mm", 0, 2000, "Measure from square to nut.")
    demand_range("angle", angle, "°", 0, 180, "0 is straight ahead, 90 square.")
    lever = wrench_length + extension * cos(angle * math.pi / 180)
    demand_range("lever to the nut", lever, "mm", 10, 5000, "Turn the adapter forward.")
    return NewtonMetre(torque * wrench_length / lever)
