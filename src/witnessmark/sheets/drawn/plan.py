"""The plan: the vehicle from above, front upwards, as the driver sits."""

from __future__ import annotations

from witnessmark.sheets.drawn.boxes import BROAD, plan_scale
from witnessmark.sheets.drawn.shapes import Shape

Outline = str


def plan_high(shape: Shape) -> float:
    """How high the plan is, in drawing units."""
    scale = plan_scale(shape)
    return scale.along(shape.length) + 14


def plan_outline(shape: Shape) -> Outline:
    """The body's edge from above, as the data of a path."""
    if shape.single_track:
        return _slim(shape)
    scale = plan_scale(shape)
    left, right = scale.x, BROAD - scale.x
    top, foot = scale.along(shape.bonnet if shape.towed else 0), scale.along(shape.length)
    if shape.towed:
        foot_left, foot_right, head = BROAD / 2 - 46, BROAD / 2 + 46, BROAD / 2 - 9
        beam = f"M{foot_left:.1f} {top:.1f}L{head:.1f} {scale.y:.1f}h18L{foot_right:.1f} {top:.1f}Z"
        return f"{beam}{_rounded(left, top, right, foot, 8)}"
    return _tapered(shape)


def plan_wheels(shape: Shape) -> str:
    """The tyres, standing out beside the body."""
    scale = plan_scale(shape)
    long, broad = shape.wheel * scale.unit, shape.tyre * scale.unit
    out = 9.0
    axles = (shape.rear,) if shape.towed else (shape.front, shape.rear)
    beside = (scale.x - out, BROAD - scale.x + out - broad)
    xs = (BROAD / 2 - broad / 2,) if shape.single_track else beside
    size = f'width="{broad:.1f}" height="{long:.1f}" rx="5"'
    tops = [scale.along(axle) - long / 2 for axle in axles]
    return "".join(f'<rect x="{x:.1f}" y="{top:.1f}" {size}/>' for top in tops for x in xs)


def _tapered(shape: Shape) -> Outline:
    """A bonnet a little narrower than the body, and corners rounded at both ends."""
    scale = plan_scale(shape)
    left, right, top, foot = scale.x, BROAD - scale.x, scale.y, scale.along(shape.length)
    nose = (right - left) * 0.06
    scuttle = scale.along(shape.bonnet)
    return (
        f"M{left + nose + 30:.1f} {top:.1f}H{right - nose - 30:.1f}"
        f"Q{right - nose:.1f} {top:.1f} {right - nose:.1f} {top + 26:.1f}L{right:.1f} {scuttle:.1f}"
        f"V{foot - 18:.1f}Q{right:.1f} {foot:.1f} {right - 22:.1f} {foot:.1f}H{left + 22:.1f}"
        f"Q{left:.1f} {foot:.1f} {left:.1f} {foot - 18:.1f}V{scuttle:.1f}L{left + nose:.1f} {top + 26:.1f}"
        f"Q{left + nose:.1f} {top:.1f} {left + nose + 30:.1f} {top:.1f}Z"
    )


def _slim(shape: Shape) -> Outline:
    scale = plan_scale(shape)
    top, foot = scale.y, scale.along(shape.length)
    head, tail = scale.along(shape.bonnet), scale.along(shape.bonnet + shape.cab)
    half = 56.0
    middle = BROAD / 2
    return (
        f"M{middle - 30:.1f} {top:.1f}Q{middle:.1f} {top - 8:.1f} {middle + 30:.1f} {top:.1f}"
        f"L{middle + half:.1f} {head - 20:.1f}L{middle + half * 1.5:.1f} {head + 14:.1f}V{tail - 14:.1f}"
        f"L{middle + half:.1f} {tail + 20:.1f}L{middle + 30:.1f} {foot:.1f}"
        f"Q{middle:.1f} {foot + 8:.1f} {middle - 30:.1f} {foot:.1f}L{middle - half:.1f} {tail + 20:.1f}"
        f"L{middle - half * 1.5:.1f} {tail - 14:.1f}V{head + 14:.1f}L{middle - half:.1f} {head - 20:.1f}Z"
    )


def _rounded(left: float, top: float, right: float, foot: float, round_: float) -> Outline:
    """A rectangle with its corners rounded."""
    wide, high = right - left - 2 * round_, foot - top - 2 * round_
    r = f"{round_:.1f}"
    return (
        f"M{left + round_:.1f} {top:.1f}h{wide:.1f}q{r} 0 {r} {r}v{high:.1f}q0 {r} -{r} {r}"
        f"h-{wide:.1f}q-{r} 0 -{r} -{r}v-{high:.1f}q0 -{r} {r} -{r}Z"
    )
