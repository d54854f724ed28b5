"""Slips about bolted joints."""

from __future__ import annotations

from witnessmark.bench import bolts
from witnessmark.bench.kinds import angle, length, torque
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Slip
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Degree, Mm, NewtonMetre


def adapter(
    *,
    wrench_length: float,
    extension: float,
    torque: float | None = None,
    setting: float | None = None,
    angle: float = 0.0,
) -> Slip:
    """What to set on the wrench, or what a setting gives at the nut."""
    if (torque is None) == (setting is None):
        raise BadInput(
            given="torque and setting are both given" if torque is not None else "neither torque nor setting",
            holds="one of them: torque wanted at the nut, or setting of the wrench",
            do="Give one.",
        )
    per_torque = bolts.adapter_setting(NewtonMetre(1), Mm(wrench_length), Mm(extension), Degree(angle))
    name, value = ("setting", torque * per_torque) if torque is not None else ("torque", setting / per_torque)
    return Slip(
        subject="bolts",
        question="adapter",
        results={name: Band(value, "N·m")},
        because="the adapter lengthens the lever",
        sources=(),
    )


QUESTIONS = (
    Question(
        subject="bolts",
        question="adapter",
        moment="a nut that the socket cannot reach",
        answer=adapter,
        inputs=(
            may("torque", torque, "torque wanted at the nut", "47 N·m"),
            may("setting", torque, "or: what the wrench is set to", "40 N·m"),
            need("wrench_length", length, "middle of square to middle of grip", "400 mm"),
            need("extension", length, "middle of square to middle of nut", "75 mm"),
            may("angle", angle, "adapter against wrench; 0 straight ahead", "90°"),
        ),
    ),
)
