"""Slips about a group of weld lines under a force."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from witnessmark.bench import weld_group, welds
from witnessmark.bench.kinds import length, one_of, points, quantity, vector
from witnessmark.bench.picture.weld_group import End, group_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.slip import Band, Result, Row, Slip, Verdict
from witnessmark.bench.slip_text import figure
from witnessmark.bench.weld_group import Carried, Group, Line, Load
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Mm, demand_range

SCOPE = "one for one, as built; certifier where the law asks"
METHODS = ("vector sum", "directional")
SHORT_MM, SHORT_THROATS = 30.0, 6.0


class Found(Struct, frozen=True):
    """What one end of one line carries."""

    line: int
    x: float
    y: float
    carried: Carried

    def value(self, method: str) -> float:
        """N/mm by the method."""
        return self.carried.directional if method == "directional" else self.carried.vector


def answer_group(
    *,
    lines: Sequence[Sequence[tuple[float, float]]],
    load: tuple[float, float, float],
    at: tuple[float, float, float],
    throat: float | None = None,
    leg: float | None = None,
    strength: float | None = None,
    method: str = "vector sum",
) -> Slip:
    """What every line of a group carries, at each end."""
    thick = _throat(throat, leg)
    _demand(load, at, strength)
    group = weld_group.group_of(_pairs(lines))
    loaded = weld_group.load_on(group, load, at)
    ends = _ends(group, loaded)
    worst = max(ends, key=lambda e: e.value(method))
    most = worst.value(method)
    results = _results(ends, worst, method, thick, strength, group)
    use = most / thick / strength if thick and strength else None
    verdict: Verdict | None = (
        None if use is None else "fits" if use <= 0.9 else "marginal" if use <= 1 else "no"
    )
    unit, scale = ("MPa", 1 / thick) if thick else ("N/mm", 1.0)
    return Slip(
        subject="welds",
        question="group",
        results=results,
        units={"x": "mm", "y": "mm", "along": unit, "across": unit, "out": unit, "stress": unit},
        verdict=verdict,
        because=f"{SCOPE}. Line {worst.line} carries most at {worst.x:g},{worst.y:g}: "
        f"{figure(most * scale)} {unit} by {method}"
        + (f", {use * 100:.0f} % of what is allowed" if use is not None else ""),
        working=_working(group, loaded, most, method, thick, strength, ends),
        sources=("weld-lines", *(("en-1993-1-8-welds",) if method == "directional" else ())),
        cautions=("strength-scope", "hot-work"),
        picture=group_picture(
            group, load, at, [End(e.line, e.x, e.y, e.value(method) * scale, e is worst) for e in ends], unit
        ),
    )


def _throat(throat: float | None, leg: float | None) -> float | None:
    if throat is not None and leg is not None:
        raise BadInput(
            given="both throat and leg", holds="one of them", do="The throat of a fillet is 0.707 of its leg."
        )
    if throat is not None:
        demand_range("throat", throat, "mm", 0.5, 50, "Look at the unit again.")
        return throat
    return welds.throat(Mm(leg)) if leg is not None else None


def _demand(load: Sequence[float], at: Sequence[float], strength: float | None) -> None:
    size = math.hypot(*load)
    demand_range("load", size, "N", 0.001, 1e8, "Give a force, as 0,-7.5,0 kN.")
    for part in at:
        demand_range("at", part, "mm", -100_000, 100_000, "Look at the unit again.")
    if strength is not None:
        demand_range("strength", strength, "MPa", 1, 2000, "The stress that the throat may carry.")


def _pairs(lines: Sequence[Sequence[tuple[float, float]]]) -> list[Line]:
    """Lines as pairs of ends: a group of more points is a line that goes on."""
    pairs: list[Line] = []
    for way in lines:
        if len(way) < 2:
            raise BadInput(
                given="a line with one end", holds="two ends, as 0,0 0,50 mm", do="Part the lines with ;"
            )
        pairs += [(tuple(a), tuple(b)) for a, b in pairwise(way)]  # type: ignore[misc]
    return pairs


def _ends(group: Group, load: Load) -> list[Found]:
    return [
        Found(i, *line[end], weld_group.carried_at(group, load, line, end))
        for i, line in enumerate(group.lines, 1)
        for end in (0, 1)
    ]


def _results(
    ends: list[Found], worst: Found, method: str, thick: float | None, strength: float | None, group: Group
) -> dict[str, Result]:
    most, scale = worst.value(method), 1 / thick if thick else 1.0
    results: dict[str, Result] = {}
    if thick:
        results["stress_max"] = Band(most / thick, "MPa")
    results["line_force_max"] = Band(most, "N/mm")
    results["at"] = f"line {worst.line}, at {worst.x:g},{worst.y:g} mm"
    rows: list[Row] = [
        {
            "line": e.line,
            "x": e.x,
            "y": e.y,
            "along": e.carried.along * scale,
            "across": e.carried.across * scale,
            "out": e.carried.out * scale,
            "stress": e.value(method) * scale,
        }
        for e in ends
    ]
    results["components"] = tuple(rows)
    if strength:
        results["throat_needed"] = Band(most / strength, "mm")
        if thick:
            results["use"] = Band(most / thick / strength * 100, "%")
    great, small, turn = group.principal()
    results["principal"] = (
        f"{figure(great)} and {figure(small)} mm³, the greater about an axis at {turn:.1f}°"
    )
    results["method"] = method
    return results


def _working(
    group: Group,
    load: Load,
    most: float,
    method: str,
    thick: float | None,
    strength: float | None,
    ends: list[Found],
) -> tuple[str, ...]:
    mx, my, mz = (m / 1000 for m in load.moment)
    said = [
        f"length {figure(group.length)} mm, centre at {figure(group.x)},{figure(group.y)}; as lines "
        f"Ix {figure(group.along_x)}, Iy {figure(group.along_y)}, Ixy {figure(group.mixed)} mm³",
        f"about the centre: {figure(mx)}, {figure(my)} and {figure(mz)} N·m",
        "force over length, turning in the plane with the distance, bending by both axes with Ixy",
        f"greatest by {method}: {figure(most)} N/mm"
        + (f" / {figure(thick)} mm = {figure(most / thick)} MPa" if thick else ""),
    ]
    if method == "directional":
        said.append("throat plane at 45°, the worse side of a fillet taken: √(σ² + 3(τ² + τ∥²))")
        if thick:
            said += _too_short(group, thick)
        if strength:
            pull = max(e.carried.throat_pull for e in ends)
            said.append(
                f"pull square to the throat {figure(pull)} N/mm; the standard holds it to 0.9 fu/γ as well"
            )
    said.append("elastic lines of like throat; what gives in the sheet beside the weld is not reckoned")
    return tuple(said)


def _too_short(group: Group, thick: float) -> list[str]:
    least = max(SHORT_MM, SHORT_THROATS * thick)
    short = [i for i, (a, b) in enumerate(group.lines, 1) if math.dist(a, b) < least]
    names = ", ".join(str(i) for i in short)
    return (
        [f"line {names} shorter than {least:g} mm: the European rules count it as nothing"] if short else []
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="welds",
        question="group",
        moment="a bracket, and a pull on it",
        answer=answer_group,
        inputs=(
            need(
                "lines",
                points(None, 2, holds="0,0 0,50; 100,0 100,50 mm"),
                "both ends of each line, in its plane",
                "0,0 0,50; 100,0 100,50 mm",
            ),
            need(
                "load",
                vector(3, "force", holds="0,-7.5,0 kN"),
                "force along x, y and out of the plane",
                "0,-7.5,0 kN",
            ),
            need("at", vector(3, "length", holds="200,50,0 mm"), "where it pulls", "200,50,0 mm"),
            may("throat", length, "of the weld", "3 mm"),
            may("leg", length, "or: leg of the fillet", "4 mm"),
            may("strength", quantity("stress"), "stress that the throat may carry", "100 MPa"),
            may("method", one_of(*METHODS), "vector sum, or directional (European)", "vector sum"),
        ),
    ),
)
