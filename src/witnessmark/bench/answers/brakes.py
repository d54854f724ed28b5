"""Slips about hydraulic brakes and clutches."""

from __future__ import annotations

from witnessmark.bench import brakes
from witnessmark.bench.kinds import force, length, number
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.units import Mm, Newton, Ratio


def answer_line(
    *, pedal_force: float, ratio: float, bore: float, boost: float = 1.0, slave_bore: float | None = None
) -> Slip:
    """Pressure in the line, and the force of a slave cylinder."""
    pressure = brakes.line_pressure(Newton(pedal_force), Ratio(ratio), Mm(bore), Ratio(boost))
    slave = bore if slave_bore is None else slave_bore
    pushed = pressure * brakes.piston_area(Mm(slave))
    of = "of the same bore" if slave_bore is None else f"of {slave:g} mm bore"
    return Slip(
        subject="brakes",
        question="line",
        results={"pressure": Band(pressure, "MPa"), "slave_force": Band(pushed, "N")},
        because=f"{figure(pressure)} MPa ({figure(pressure * 10)} bar) in the line; a slave {of} "
        f"pushes {figure(pushed)} N",
        working=(
            f"master piston π/4 · {bore:g}² = {figure(brakes.piston_area(Mm(bore)))} mm²",
            f"{figure(pedal_force)} N × "
            f"{ratio:g}" + (f" × {boost:g}" if boost != 1 else "") + " = "
            f"{figure(pedal_force * ratio * boost)} N on it",
            f"over its area: {figure(pressure)} MPa; springs, seals and the lag of a servo left out",
            f"slave piston {of}: {figure(pushed)} N; other bores go with the square of the bore",
        ),
        sources=("hydraulics",),
        cautions=("brakes-both-sides", "brake-fluid"),
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="brakes",
        question="line",
        moment="a foot on the pedal: what reaches the wheel",
        answer=answer_line,
        inputs=(
            need("pedal_force", force, "on the pad", "400 N"),
            need("ratio", number, "pad to pivot over pushrod to pivot", "5"),
            need("bore", length, "of the master cylinder", "7/8 in"),
            may("boost", number, "of a servo; 1 without", "1"),
            may("slave_bore", length, "of a wheel or slave cylinder", "1 in"),
        ),
    ),
)
