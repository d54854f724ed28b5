"""Slips about bolted joints: what to tighten to, what a figure does, how deep a thread must go."""

from __future__ import annotations

import math

from witnessmark.bench import bolts
from witnessmark.bench.answers import engagement
from witnessmark.bench.friction import SCATTER, Friction, friction_of, state_of
from witnessmark.bench.grades import Strength, strength
from witnessmark.bench.kinds import angle as angle_read
from witnessmark.bench.kinds import force, fraction, length, number, stress, words
from witnessmark.bench.kinds import torque as torque_read
from witnessmark.bench.picture.bolts import PreloadBar, preload_bars
from witnessmark.bench.question import Input, Question, either, may, need
from witnessmark.bench.slip import Band, Slip, Verdict
from witnessmark.bench.thread_list import Thread, find_thread
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, MegaPascal, Mm, Mm2, Newton, NewtonMetre, demand_range

CAUTIONS = ("torque-scatter", "bolt-that-lets-go")
VERDICT: dict[str, Verdict] = {"within": "fits", "doubtful": "marginal", "low": "marginal", "over": "no"}
THREE_QUARTERS = 0.75


def tighten(
    *,
    thread: str,
    grade: str,
    fraction_of_proof: float | None = None,
    preload: float | None = None,
    nut_factor: float | None = None,
    friction_thread: float | None = None,
    friction_head: float | None = None,
    bearing_diameter: float | None = None,
    hole: float | None = None,
) -> Slip:
    """The torque for a preload, and how far that preload scatters."""
    t = find_thread(thread)
    bears = strength(grade, t.diameter)
    friction = friction_of(t, nut_factor, friction_thread, friction_head, bearing_diameter, hole)
    if friction.spread:
        raise BadInput(
            given="neither nut_factor nor friction",
            holds="nut_factor=0.15, or friction_thread=0.12 friction_head=0.12",
            do="Say what is on the thread: a figure to tighten to needs it.",
        )
    proof = bolts.proof_load(t.area, bears.proof)
    wanted, told = _wanted(proof, fraction_of_proof, preload)
    torque = bolts.tightening_torque(wanted, t.diameter, friction.factor)
    least, most = wanted * (1 - SCATTER), wanted * (1 + SCATTER)
    over = most > proof
    return Slip(
        subject="bolts",
        question="tighten",
        results={
            "torque": Band(torque, "N·m"),
            "preload": Band(wanted, "N", least, most),
            "proof_load": Band(proof, "N"),
            "fraction_of_proof": Band(wanted / proof, "", least / proof, most / proof),
            "nut_factor": Band(friction.factor, ""),
        },
        verdict="no" if wanted > proof else "marginal" if over else "fits",
        because=f"{torque:.1f} N·m leaves {least / 1000:.1f} to {most / 1000:.1f} kN "
        f"of {proof / 1000:.1f} kN proof{', which scatter can pass' if over else ''}",
        working=(
            *_strength_lines(t, bears, proof),
            told,
            *friction.working,
            _torque_line(wanted, t, friction),
        ),
        sources=_sources(t, bears, friction, "torque-scatter", "preload-three-quarters"),
        cautions=CAUTIONS,
        picture=_picture(
            f"{t.name}, {bears.grade}, at {torque:.1f} N·m", least, wanted, most, proof, friction
        ),
    )


def _torque_line(wanted: Newton, t: Thread, friction: Friction) -> str:
    torque = bolts.tightening_torque(wanted, t.diameter, friction.factor)
    return f"torque {wanted / 1000:.2f} kN × {t.diameter:.4g} mm × {friction.factor:.4f} = {torque:.2f} N·m"


def _wanted(proof: Newton, fraction: float | None, preload: float | None) -> tuple[Newton, str]:
    if preload is not None:
        if fraction is not None:
            raise BadInput(
                given="preload and fraction_of_proof are both given", holds="one of them", do="Leave one out."
            )
        demand_range("preload", preload, "N", 1, 1.5 * proof, "Look at thread and grade again.")
        return Newton(preload), f"preload {preload / 1000:.2f} kN, as given"
    part = THREE_QUARTERS if fraction is None else fraction
    demand_range(
        "fraction_of_proof", part, "", 0.05, 1, "Three quarters is usual for joints that come apart."
    )
    wanted = Newton(part * proof)
    return wanted, f"preload {part:g} × {proof / 1000:.2f} = {wanted / 1000:.2f} kN"


def check(
    *,
    thread: str,
    grade: str,
    torque: float,
    nut_factor: float | None = None,
    friction_thread: float | None = None,
    friction_head: float | None = None,
    bearing_diameter: float | None = None,
    hole: float | None = None,
) -> Slip:
    """What preload a torque leaves, as part of what the bolt bears."""
    t = find_thread(thread)
    bears = strength(grade, t.diameter)
    friction = friction_of(t, nut_factor, friction_thread, friction_head, bearing_diameter, hole)
    proof = bolts.proof_load(t.area, bears.proof)
    least, middle, most = preloads(NewtonMetre(torque), t, friction)
    state = state_of(least / proof, middle / proof, most / proof, spread=friction.spread)
    return Slip(
        subject="bolts",
        question="check",
        results={
            "preload": Band(middle, "N", least, most),
            "fraction_of_proof": Band(middle / proof, "", least / proof, most / proof),
            "proof_load": Band(proof, "N"),
            "state": state,
        },
        verdict=VERDICT[state],
        because=f"{state}: {torque:.1f} N·m leaves {least / proof:.0%} to {most / proof:.0%} of proof",
        working=(
            *_strength_lines(t, bears, proof),
            *friction.working,
            f"preload {torque:.2f} N·m / ({t.diameter:.4g} mm × {friction.factor:.4f}) "
            f"= {middle / 1000:.2f} kN",
            f"from {least / 1000:.2f} to {most / 1000:.2f} kN "
            + ("over the printed band" if friction.spread else f"at {SCATTER:.0%} scatter"),
        ),
        sources=_sources(t, bears, friction, "torque-scatter"),
        cautions=CAUTIONS,
        picture=_picture(
            f"{t.name}, {bears.grade}, at {torque:.1f} N·m: {state}", least, middle, most, proof, friction
        ),
    )


def preloads(torque: NewtonMetre, t: Thread, friction: Friction) -> tuple[float, float, float]:
    """Least, middle and most preload, N: over the printed band, else by the scatter of a torque wrench."""
    middle = bolts.preload_from_torque(torque, t.diameter, friction.factor)
    if friction.spread:
        least = bolts.preload_from_torque(torque, t.diameter, friction.high)
        return least, middle, bolts.preload_from_torque(torque, t.diameter, friction.low)
    return middle * (1 - SCATTER), middle, middle * (1 + SCATTER)


def nut_factor(
    *,
    thread: str,
    friction_thread: float,
    friction_head: float,
    bearing_diameter: float | None = None,
    hole: float | None = None,
) -> Slip:
    """The nut factor that two frictions make."""
    t = find_thread(thread)
    friction = friction_of(t, None, friction_thread, friction_head, bearing_diameter, hole)
    return Slip(
        subject="bolts",
        question="nut_factor",
        results={"nut_factor": Band(friction.factor, "")},
        because=f"{t.name} with {friction_thread:g} in the thread and {friction_head:g} under the head",
        working=friction.working,
        sources=(*t.sources, *friction.sources),
        cautions=("torque-scatter",),
    )


def adapter(
    *,
    wrench_length: float,
    extension: float,
    torque: float | None = None,
    setting: float | None = None,
    angle: float = 0.0,
) -> Slip:
    """What to set on a wrench with an adapter, or what a setting gives at the nut."""
    whole = bolts.adapter_setting(NewtonMetre(1), Mm(wrench_length), Mm(extension), Degree(angle))
    if torque is not None and setting is None:
        name, value = "setting", torque * whole
        line = f"setting {torque:.4g} × {whole:.4f} = {value:.4g} N·m"
    elif setting is not None and torque is None:
        name, value = "torque", setting / whole
        line = f"at the nut {setting:.4g} / {whole:.4f} = {value:.4g} N·m"
    else:
        raise BadInput(
            given="torque and setting are both given" if torque is not None else "neither torque nor setting",
            holds="one of them: torque wanted at the nut, or setting of the wrench",
            do="Give one.",
        )
    demand_range(name, value, "N·m", 0, 10_000, bolts.LIKE_BOOK)
    lever = wrench_length / whole
    return Slip(
        subject="bolts",
        question="adapter",
        results={name: Band(value, "N·m")},
        because=f"the nut stands {lever:.0f} mm from the grip instead of {wrench_length:.0f} mm"
        if abs(whole - 1) > 1e-9
        else "an adapter square to the wrench changes nothing",
        working=(
            f"lever to the nut {wrench_length:.4g} + {extension:.4g} × cos {angle:g}° = {lever:.4g} mm",
            line,
            "hold the grip at its middle; a pipe over the handle makes the figure wrong",
        ),
        sources=("adapter-lever",),
        cautions=CAUTIONS,
    )


def turn(*, thread: str, grip: float, preload: float, modulus: float) -> Slip:
    """How far the nut turns from snug to stretch the bolt to a preload."""
    t = find_thread(thread)
    shank = Mm2(math.pi / 4 * t.diameter**2)
    least, most = (
        bolts.turn_angle(Newton(preload), Mm(grip), MegaPascal(modulus), area, t.pitch)
        for area in (shank, t.area)
    )
    return Slip(
        subject="bolts",
        question="turn",
        results={
            "angle": Band(most, "°", least, most),
            "stretch": Band(most / 360 * t.pitch, "mm", least / 360 * t.pitch, most / 360 * t.pitch),
        },
        because="for the bolt alone: what is clamped gives as well, so the real turn is larger",
        working=(
            f"thread all along: 360 × {preload:.0f} N × {grip:.4g} mm / ({modulus:.0f} MPa × "
            f"{t.area:.2f} mm² × {t.pitch:.4g} mm) = {most:.1f}°",
            f"plain shank all along: the same with {shank:.2f} mm² = {least:.1f}°",
            "snug first: everything closed, the nut just stiff; the turn counts from there",
        ),
        sources=(*t.sources, "turn-of-nut"),
        cautions=CAUTIONS,
    )


def _strength_lines(t: Thread, bears: Strength, proof: Newton) -> tuple[str, ...]:
    area = f"proof {t.area:.2f} mm² × {bears.proof:.0f} MPa = {proof / 1000:.2f} kN"
    return (area,) if t.metric_convention else (area, "stress area by the metric rule: for comparison only")


def _sources(t: Thread, bears: Strength, friction: Friction, *more: str) -> tuple[str, ...]:
    convention = () if t.metric_convention else ("stress-area-convention",)
    return tuple(dict.fromkeys((*t.sources, *convention, bears.source, *friction.sources, *more)))


def _picture(title: str, least: float, middle: float, most: float, proof: float, friction: Friction) -> str:
    spread = f"band: nut factor {friction.low:g} to {friction.high:g}, oiled to dry"
    scatter = f"band: {SCATTER:.0%} either way, as a torque wrench scatters; heavy stroke: the middle"
    bar = PreloadBar(
        label="preload", low=least / 1000, middle=middle / 1000, high=most / 1000, proof=proof / 1000
    )
    return preload_bars(title, [bar], spread if friction.spread else scatter)


NUT_FACTOR = ("nut_factor", number, "all friction in one factor", "0.15")
THREAD = need("thread", words, "the thread by its usual name", "M8")
GRADE = need("grade", words, "the mark on the head", "8.8")
FRICTION: tuple[Input, ...] = (
    may("friction_thread", number, "friction in the thread, with friction_head", "0.12"),
    may("friction_head", number, "friction under the head, with friction_thread", "0.12"),
    may("bearing_diameter", length, "mean diameter under the head", "10.5 mm"),
    may("hole", length, "hole under the head, where the mean diameter is not known", "9 mm"),
)

QUESTIONS = (
    Question(
        subject="bolts",
        question="tighten",
        moment="a bolt to tighten, and no figure in the book",
        answer=tighten,
        inputs=(
            THREAD,
            GRADE,
            may("fraction_of_proof", fraction, "how far to go, 0.75 if not said", "0.75"),
            may("preload", force, "the preload, in place of fraction_of_proof", "15 kN"),
            either(*NUT_FACTOR),
            *FRICTION,
        ),
    ),
    Question(
        subject="bolts",
        question="check",
        moment="a torque figure that may be wrong",
        answer=check,
        inputs=(
            THREAD,
            GRADE,
            need("torque", torque_read, "the figure as written", "13 lbf ft"),
            may(*NUT_FACTOR),
            *FRICTION,
        ),
    ),
    Question(
        subject="bolts",
        question="nut_factor",
        moment="friction known, a nut factor wanted",
        answer=nut_factor,
        inputs=(
            THREAD,
            need("friction_thread", number, "friction in the thread", "0.12"),
            need("friction_head", number, "friction under the head", "0.12"),
            *FRICTION[2:],
        ),
    ),
    Question(
        subject="bolts",
        question="adapter",
        moment="a nut that the socket cannot reach",
        answer=adapter,
        inputs=(
            either("torque", torque_read, "torque wanted at the nut", "47 N·m"),
            may("setting", torque_read, "or: what the wrench is set to", "40 N·m"),
            need("wrench_length", length, "middle of square to middle of grip", "400 mm"),
            need("extension", length, "middle of square to middle of nut", "75 mm"),
            may("angle", angle_read, "adapter against wrench; 0 straight ahead", "90°"),
        ),
    ),
    engagement.QUESTION,
    Question(
        subject="bolts",
        question="turn",
        moment="a bolt tightened by angle",
        answer=turn,
        inputs=(
            THREAD,
            need("grip", length, "length that stretches, head to nut", "40 mm"),
            need("preload", force, "wanted in the bolt", "20 kN"),
            need("modulus", stress, "of the bolt", "205 GPa"),
        ),
    ),
)
