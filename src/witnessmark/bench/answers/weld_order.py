"""Slips about the order of short runs along a seam."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, TypeAlias

from msgspec import Struct

from witnessmark.bench.answers.welds import bands_at
from witnessmark.bench.kinds import length, points, quantity, sizes
from witnessmark.bench.picture.weld_order import order_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import heat, surface_loss
from witnessmark.bench.slip import Asked, Band, Result, Row, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ampere, MmPerSecond, Ratio, Volt, demand_range
from witnessmark.tables.numbers import table

if TYPE_CHECKING:
    from witnessmark.bench.weld_order import Plate, Runs
else:
    Plate: TypeAlias = Any
    Runs: TypeAlias = Any

PAUSE, WARM = 10.0, 40.0
FOUND = "found here"
SOURCES = ("instant-line-source", "en-1993-1-2-steel", "still-air", "warm-limit", "weld-sequence")
SETTINGS = ("maker-settings-a", "maker-settings-b", "en-1011-heat-input")
UNITS = MappingProxyType(
    {
        "rise_max": "°C",
        "rise_mean": "°C",
        "minutes": "min",
        "minutes_waiting": "min",
        "x": "mm",
        "y": "mm",
        "rise": "°C",
    }
)
ALL_ROUND, ONE_SIDE = "all round", "one side"
HOLDS_SEAM = 'all round, one side, or its corners as "0,0 300,0 300,120 mm"'

Points = tuple[tuple[float, float], ...]


def seam(name: str, typed: str) -> Asked:
    """Where the seam runs: words, or its corners in mm.

    >>> seam("seam", "All round").value, seam("seam", "0,0 60,0 mm").value
    ('all round', ((0.0, 0.0), (60.0, 0.0)))
    """
    word = " ".join(typed.lower().split())
    if word in (ALL_ROUND, ONE_SIDE):
        return Asked(typed, word)
    found = points(None, 2, holds=HOLDS_SEAM)(name, typed)
    if len(found.value) != 1 or len(found.value[0]) < 2:
        raise BadInput(
            given=f"{name} is {typed!r}", holds=HOLDS_SEAM, do="Give one line of two corners or more."
        )
    return Asked(typed, found.value[0], found.unit)


class Search(Struct, frozen=True, kw_only=True):
    """What was laid, and what each order meets: rises in °C in the order laid, minutes with waiting."""

    plate: Plate
    runs: Runs
    best: tuple[int, ...]
    met: Mapping[str, tuple[float, ...]]
    waited: Mapping[str, float]

    @property
    def mine(self) -> tuple[float, ...]:
        """What the order found here meets."""
        return self.met[FOUND]

    @property
    def minutes(self) -> float:
        """From the first start to the last end, without waiting."""
        return (len(self.best) * self.runs.cadence - self.runs.pause) / 60


def answer_order(
    *,
    panel: Sequence[tuple[float, float]],
    thickness: float,
    run: float,
    pause: float | None = None,
    loss: float | None = None,
    seam: str | Points = ALL_ROUND,
    heat: float | None = None,
) -> Slip:
    """The order of short runs that meets the coolest metal, beside the orders that have names."""
    wide, deep = panel[0]
    demand_range("panel", min(wide, deep), "mm", 20, 5000, "Of the patch, as 300x200 mm.")
    demand_range("run", run, "mm", 5, 200, "Short runs are 10 to 40 mm.")
    corners, closed = _corners(seam, wide, deep)
    runs, heat_said = _runs(corners, run, thickness, pause, heat, closed=closed)
    found = _searched(_plate(thickness, loss), runs)
    picture = order_picture(
        (wide, deep), runs.starts, runs.ends, found.best, found.mine, found.met["one after another"]
    )
    return Slip(
        subject="welds",
        question="order",
        results=_results(found),
        units=UNITS,
        because=_because(found),
        working=_working(found, heat_said + ("" if pause is not None else "; pause taken, nothing was said")),
        sources=(*SOURCES, *(() if heat else SETTINGS)),
        cautions=("hot-work", "fire-watch", "galvanised"),
        picture=picture,
    )


def _searched(plate: Plate, runs: Runs) -> Search:
    """Reckon the warmth once, then every named order and the best found from them."""
    from witnessmark.bench import weld_order

    weld_order.demand_runs(plate, runs)
    warmth = weld_order.kernel(plate, runs)
    named = weld_order.named_orders(len(runs.starts))
    best = weld_order.coolest(warmth, list(named.values()))
    orders = {**named, FOUND: best}
    return Search(
        plate=plate,
        runs=runs,
        best=best,
        met={name: tuple(float(r) for r in weld_order.met(warmth, order)) for name, order in orders.items()},
        waited={n: weld_order.seconds_waiting(plate, runs, order, WARM) / 60 for n, order in orders.items()},
    )


def _results(found: Search) -> dict[str, Result]:
    turns = enumerate(zip(found.best, found.mine, strict=True), 1)
    return {
        "order": ", ".join(str(i + 1) for i in found.best),
        "rise_max": Band(max(found.mine), "°C"),
        "rise_mean": Band(_mean(found.mine), "°C"),
        "minutes": Band(found.minutes, "min"),
        "minutes_waiting": Band(found.waited[FOUND], "min"),
        "others": tuple(_other_row(found, name) for name in found.met if name != FOUND),
        "runs": tuple(_run_row(turn, i, found.runs, rise) for turn, (i, rise) in turns),
    }


def _other_row(found: Search, name: str) -> Row:
    return {
        "order": name,
        "rise_max": max(found.met[name]),
        "rise_mean": _mean(found.met[name]),
        "minutes": found.minutes,
        "minutes_waiting": found.waited[name],
    }


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def _because(found: Search) -> str:
    worst = max(found.met, key=lambda name: max(found.met[name]))
    return (
        f"cooler and more even: each run meets metal at most {figure(max(found.mine))} °C above the air, "
        f"against {figure(max(found.met[worst]))} °C {worst}. "
        "Weld in short runs, spread about, until they join into one continuous seam"
    )


def _working(found: Search, heat_said: str) -> tuple[str, ...]:
    plate, runs = found.plate, found.runs
    return (
        f"{len(found.best)} runs of {figure(runs.length)} mm, {figure(runs.pause)} s between them; "
        f"{heat_said}",
        f"steel at 100 °C: {plate.conductivity:g} W/(m·K), {plate.heat:g} J/(kg·K); still air takes "
        f"{plate.loss:g} W/(m²·K) of each face, 7 to 15 by reckoning",
        "moving lines of heat through a thin plate, added up; what each run meets is the mean along it "
        "as it is struck",
        f"waiting until the place is no more than {WARM:g} °C above the air: our own choice, no authority "
        "found gives a figure",
        "searched from the named orders by swapping and moving runs; not proven the best of all",
        "constant steel, no clamp or backing bar, no gap in the seam; it tells warmth, not how far the "
        "panel will move",
    )


def _corners(seam: str | Points, wide: float, deep: float) -> tuple[Points, bool]:
    if seam == ALL_ROUND:
        return ((0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)), True
    if isinstance(seam, str):
        return ((0.0, 0.0), (max(wide, deep), 0.0)), False
    return tuple((float(x), float(y)) for x, y in seam), False


def _plate(thickness: float, loss: float | None) -> Plate:
    from witnessmark.bench.weld_order import Plate

    rows = {r["what"]: r["value"] for r in table("welding/plate").rows}
    return Plate(
        thickness=thickness,
        conductivity=rows["conductivity"],
        density=rows["density"],
        heat=rows["heat"],
        loss=rows["loss"] if loss is None else loss,
    )


def _runs(
    corners: Points, run: float, thickness: float, pause: float | None, heat: float | None, *, closed: bool
) -> tuple[Runs, str]:
    from witnessmark.bench.weld_order import Runs, along

    speed, energy, said = _arc(thickness, heat)
    starts, ends = along(corners, run, closed=closed)
    made = Runs(starts=starts, ends=ends, energy=energy, speed=speed, pause=PAUSE if pause is None else pause)
    return made, said


def _arc(thickness: float, heat: float | None) -> tuple[float, float, str]:
    """Travel in mm/s, heat in J/mm, and where they come from: given, or the makers' settings."""
    from witnessmark.bench import welds

    if heat is not None:
        return 7.0, heat * 1000, f"{figure(heat * 1000)} J/mm as given, laid at 7 mm/s"
    bands = bands_at(thickness, "butt")
    volts, amps, speed = (sum(bands[c]) / 2 for c in ("voltage", "current", "travel"))
    found = welds.heat_input(Volt(volts), Ampere(amps), MmPerSecond(speed), Ratio(0.8))
    return (
        speed,
        found * 1000,
        (
            f"{figure(volts)} V and {figure(amps)} A at {figure(speed)} mm/s, the middle of the "
            f"makers' settings, leave {figure(found * 1000)} J/mm"
        ),
    )


def _run_row(turn: int, i: int, runs: Runs, rise: float) -> Row:
    (x1, y1), (x2, y2) = runs.starts[i], runs.ends[i]
    return {"turn": turn, "run": i + 1, "x": (x1 + x2) / 2, "y": (y1 + y2) / 2, "rise": round(rise, 2)}


def panel_sizes(name: str, typed: str) -> Asked:
    """One size of a patch, "300x200 mm"."""
    found = sizes(2, holds="the patch, as 300x200 mm")(name, typed)
    if len(found.value) != 1:
        raise BadInput(given=f"{name} is {typed!r}", holds="the patch, as 300x200 mm", do="Give one patch.")
    return found


def seconds(name: str, typed: str) -> Asked:
    """A pause, in seconds.

    >>> seconds("pause", "30 sec").value, seconds("pause", "10 s").value
    (30.0, 10.0)
    """
    text = typed.strip()
    if text.lower().endswith(" s") or (
        text[-1:].lower() == "s" and text[:-1].strip().replace(".", "").isdigit()
    ):
        text = text[:-1].strip() + " sec"
    found = quantity("time")(name, text)
    return Asked(typed, round(found.value * 60, 9), "s")


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="welds",
        question="order",
        moment="a patch tacked in: which short run next",
        answer=answer_order,
        inputs=(
            need("panel", panel_sizes, "of the patch", "300x200 mm"),
            need("thickness", length, "of the sheet", "1.0 mm"),
            need("run", length, "length of one short run", "25 mm"),
            may("pause", seconds, "between runs", "10 sec"),
            may("loss", surface_loss, "heat that each face loses", "10 W/m2K"),
            may("seam", seam, "all round, one side, or its corners", "all round"),
            may("heat", heat, "in each mm, from welds heat", "0.074 kJ/mm"),
        ),
    ),
)
