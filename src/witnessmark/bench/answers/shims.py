"""The slip about shims: which to stack from what is there."""

from __future__ import annotations

from witnessmark.bench.kinds import counted, length, one_of
from witnessmark.bench.picture.shims import stack_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.shim_search import MICRON, Stack, stacks_between, to_microns
from witnessmark.bench.shims import left_with, pack_for
from witnessmark.bench.slip import Band, Row, Slip
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm, demand_range

ALTERNATIVES = 5
BESIDE = 300
"""How far beyond the window a near miss is still told, in micrometres."""


def stack(
    *,
    measured: float,
    wanted_low: float,
    wanted_high: float,
    shims: tuple[tuple[float, int], ...],
    fitted: float = 0.0,
    sense: str = "take up",
) -> Slip:
    """A pack that leaves a gap, a float or a preload within what is wanted."""
    _demand_window(wanted_low, wanted_high)
    demand_range("measured", measured, "mm", 0, 300, "Measure it with the old pack in, or with none.")
    demand_range("fitted", fitted, "mm", 0, 50, "Add up the shims that are in.")
    takes_up = sense == "take up"
    thin, thick = _window(measured, wanted_low, wanted_high, fitted, takes_up=takes_up)
    middle = (to_microns(wanted_low) + to_microns(wanted_high)) / 2
    low, high = to_microns(thin), to_microns(thick)
    found = [] if high < 0 else list(stacks_between(shims, max(low, 0), high))
    left = {s.pieces: _left(measured, s, fitted, takes_up=takes_up) for s in found}
    found.sort(key=lambda s: (abs(to_microns(left[s.pieces]) - middle) // 10, len(s.pieces), s.total))
    working = (
        f"wanted {wanted_low:.3f} to {wanted_high:.3f} mm, measured {measured:.3f} mm {_in_it(fitted)}",
        f"the pack {'takes the gap up' if takes_up else 'opens the gap'}, "
        f"so it must measure {thin:.3f} to {thick:.3f} mm",
    )
    if not found:
        near = [] if high < 0 else _nearest(shims, low, high)
        rows = tuple(_row(s, _left(measured, s, fitted, takes_up=takes_up)) for s in near)
        return _nothing(thin, thick, shims, working, rows)
    best = found[0]
    return Slip(
        subject="shims",
        question="stack",
        results={
            "stack": _pieces(best),
            "pack": Band(best.total / MICRON, "mm", thin, thick),
            "result": Band(left[best.pieces], "mm"),
            "alternatives": tuple(_row(s, left[s.pieces]) for s in found[1 : ALTERNATIVES + 1]),
        },
        units={"thickness": "mm", "total": "mm", "leaves": "mm", "stack": "mm"},
        verdict="fits",
        because=f"{best.words()} mm leaves {left[best.pieces]:.3f} mm, near the middle of what is wanted",
        working=(*working, f"{best.words()} = {best.total / MICRON:.3f} mm"),
        sources=("shim-window",),
        picture=stack_picture(
            best, measured=measured, fitted=fitted, left=left[best.pieces], wanted=(wanted_low, wanted_high)
        ),
    )  # fmt: skip


def _in_it(fitted: float) -> str:
    return f"with {fitted:.3f} mm of shims in" if fitted else "with no shims in"


def _pieces(one: Stack) -> tuple[Row, ...]:
    thick = dict.fromkeys(one.pieces)
    return tuple({"thickness": t / MICRON, "count": one.pieces.count(t)} for t in thick)


def _demand_window(low: float, high: float) -> None:
    demand_range("wanted_low", low, "mm", -2, 300, "Below 0 is a preload.")
    demand_range("wanted_high", high, "mm", -2, 300, "Below 0 is a preload.")
    if low > high:
        raise BadInput(
            given=f"wanted_low {low:g} mm lies above wanted_high {high:g} mm",
            holds="a window, the lower limit first",
            do="Change them over, or look at the book again.",
        )


def _window(
    measured: float, low: float, high: float, fitted: float, *, takes_up: bool
) -> tuple[float, float]:
    """The least and the greatest pack that leaves what is wanted."""
    if takes_up:
        return (
            pack_for(Mm(measured), Mm(high), Mm(fitted)),
            pack_for(Mm(measured), Mm(low), Mm(fitted)),
        )
    return low - measured + fitted, high - measured + fitted


def _left(measured: float, one: Stack, fitted: float, *, takes_up: bool) -> float:
    if takes_up:
        return round(left_with(Mm(measured), Mm(one.total / MICRON), Mm(fitted)), 6)
    return round(measured - fitted + one.total / MICRON, 6)


def _row(one: Stack, left: float) -> Row:
    return {"stack": one.words(), "total": one.total / MICRON, "leaves": left, "pieces": len(one.pieces)}


def _nearest(shims: tuple[tuple[float, int], ...], low: int, high: int) -> list[Stack]:
    """The packs that come nearest to a window that none meets."""
    every = stacks_between(shims, 0, high + BESIDE)
    return sorted(every, key=lambda s: min(abs(s.total - low), abs(s.total - high)))[:3]


def _nothing(
    thin: float,
    thick: float,
    shims: tuple[tuple[float, int], ...],
    working: tuple[str, ...],
    nearest: tuple[Row, ...],
) -> Slip:
    whole = sum(t * n for t, n in shims)
    if thick < 0:
        because = "no pack can do it: it measures less than is wanted with no shim in; metal has to come off"
    elif whole < thin:
        because = f"all the shims together measure {whole:.3f} mm and {thin:.3f} are needed"
    else:
        because = f"these shims make no pack of {max(thin, 0):.3f} to {thick:.3f} mm"
    return Slip(
        subject="shims", question="stack", found=False, because=because, working=working,
        results={
            "stack": (),
            "wanted_pack": Band((thin + thick) / 2, "mm", thin, thick),
            "alternatives": (),
            "nearest": nearest,
        },
        units={"total": "mm", "leaves": "mm", "stack": "mm"},
        sources=("shim-window",),
    )  # fmt: skip


QUESTIONS = (
    Question(
        subject="shims",
        question="stack",
        moment="a float or preload to set with shims",
        answer=stack,
        inputs=(
            need("measured", length, "gap or float as measured", "0.62 mm"),
            need("wanted_low", length, "least that the book allows", "0.05 mm"),
            need("wanted_high", length, "most that the book allows", "0.10 mm"),
            need("shims", counted(holds="0.05x4 0.10x4 0.30x2 mm"), "what there is, thickness x how many",
                 "0.05x4 0.10x4 0.30x2 mm"),
            may("fitted", length, "pack that was in while measuring", "0.30 mm"),
            may("sense", one_of("take up", "open"), "what a thicker pack does to the gap", "take up"),
        ),
    ),
)  # fmt: skip
