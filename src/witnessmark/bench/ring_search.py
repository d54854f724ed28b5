"""Which O-ring fits a groove: standard sizes and one's own, at nominal and at the worst of tolerances."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.bench.orings import fill, squeeze, stretch, stretched_section
from witnessmark.bench.own_lists import Ring
from witnessmark.bench.slip import Verdict
from witnessmark.ground.units import Mm, Percent, demand_range
from witnessmark.tables.numbers import table

GLANDS = ("radial static", "face static", "rod", "piston")
IN_SIGHT = 12.0
"""Rings whose stretch lies within this many per cent of what may be are looked at; the rest are not near."""


class Gland(Struct, frozen=True, kw_only=True):
    """A groove as measured, mm.

    seat    what the ring's inside sits on: groove root, rod, or inside wall of a face groove
    within  how far off the measuring may be, on depth and seat; twice that on width
    """

    kind: str
    seat: Mm
    depth: Mm
    width: Mm
    within: Mm


class Limits(Struct, frozen=True, kw_only=True):
    """Limits for a kind of gland, %; `good` fits, outside `may` is refused."""

    squeeze_good_low: float
    squeeze_good_high: float
    squeeze_may_low: float
    squeeze_may_high: float
    fill_good: float
    fill_may: float
    stretch_good_low: float
    stretch_good_high: float
    stretch_may_low: float
    stretch_may_high: float


class Span(Struct, frozen=True):
    """A value at nominal, and its least and most over the tolerances."""

    value: Percent
    low: Percent
    high: Percent


class Fit(Struct, frozen=True, kw_only=True):
    """One ring in one gland."""

    ring: Ring
    section: Mm
    stretch: Span
    squeeze: Span
    squeeze_free: Percent
    fill: Span
    verdict: Verdict
    because: str
    cost: float


def limits(kind: str) -> Limits:
    """The limits of a kind of gland."""
    row = next(r for r in table("orings/rules").rows if r["gland"] == kind)
    return Limits(**{name: row[name] for name in Limits.__struct_fields__})


@cache
def standard_rings() -> tuple[Ring, ...]:
    """Every size of the standard table."""
    return tuple(
        Ring(
            name=row["ring"],
            inside=Mm(row["inside"]),
            section=Mm(row["section"]),
            inside_tolerance=Mm(row["inside_tolerance"]),
            section_tolerance=Mm(row["section_tolerance"]),
        )
        for row in table("orings/standard_sizes").rows
    )


def with_tolerances(ring: Ring) -> Ring:
    """A ring of one's own, its missing tolerances taken from the standard ring nearest in size."""
    near = min(
        standard_rings(), key=lambda r: abs(r.inside - ring.inside) + 20 * abs(r.section - ring.section)
    )
    inside = near.inside_tolerance if ring.inside_tolerance < 0 else ring.inside_tolerance
    section = near.section_tolerance if ring.section_tolerance < 0 else ring.section_tolerance
    return replace(ring, inside_tolerance=inside, section_tolerance=section)


def demand_gland(gland: Gland) -> None:
    """Refuse a groove that no ring could lie in."""
    demand_range("diameter", gland.seat, "mm", 1, 700, "Measure what the ring's inside sits on.")
    demand_range("depth", gland.depth, "mm", 0.4, 15, "Measure from the bottom to the closing face.")
    demand_range("width", gland.width, "mm", 0.5, 30, "Measure the groove's width.")
    demand_range("within", gland.within, "mm", 0, 0.2 * gland.depth, "Measure more closely.")


def fits_in(gland: Gland, rings: Iterable[Ring]) -> tuple[Fit, ...]:
    """Every ring in sight, best first; far too small, too large, thin or thick ones are left out."""
    demand_gland(gland)
    rules = limits(gland.kind)
    near = (r for r in rings if _in_sight(gland, rules, r))
    return tuple(sorted((fit_of(gland, rules, r) for r in near), key=_order))


def _in_sight(gland: Gland, rules: Limits, ring: Ring) -> bool:
    reach = (gland.seat / ring.inside - 1) * 100
    thick = ring.section / gland.depth
    return (
        rules.stretch_may_low - IN_SIGHT <= reach <= rules.stretch_may_high + IN_SIGHT and 0.95 < thick < 2.2
    )


def _order(one: Fit) -> tuple[int, bool, float, str]:
    return ("fits", "marginal", "no").index(one.verdict), not one.ring.own, one.cost, one.ring.name


def fit_of(gland: Gland, rules: Limits, ring: Ring) -> Fit:
    """One ring at nominal and at both ends of all tolerances taken together."""
    off, sections, insides = gland.within, ring.section_tolerance, ring.inside_tolerance
    thin = stretched_section(Mm(ring.section - sections), Mm(ring.inside - insides), Mm(gland.seat + off))
    thick = stretched_section(Mm(ring.section + sections), Mm(ring.inside + insides), Mm(gland.seat - off))
    middle = stretched_section(ring.section, ring.inside, gland.seat)
    deep, shallow = Mm(gland.depth + off), Mm(gland.depth - off)
    wide, narrow = Mm(gland.width + 2 * off), Mm(gland.width - 2 * off)
    stretched = Span(
        stretch(gland.seat, ring.inside),
        stretch(Mm(gland.seat - off), Mm(ring.inside + insides)),
        stretch(Mm(gland.seat + off), Mm(ring.inside - insides)),
    )
    squeezed = Span(squeeze(middle, gland.depth), squeeze(thin, deep), squeeze(thick, shallow))
    filled = Span(
        fill(middle, gland.depth, gland.width), fill(thin, deep, wide), fill(thick, shallow, narrow)
    )
    against = _against(rules, stretched, squeezed, filled)
    verdict: Verdict = "no" if any(f[0] for f in against) else "marginal" if against else "fits"
    return Fit(
        ring=ring,
        section=middle,
        stretch=stretched,
        squeeze=squeezed,
        squeeze_free=squeeze(ring.section, gland.depth),
        fill=filled,
        verdict=verdict,
        because="; ".join(words for _, words in sorted(against, key=lambda f: not f[0]))
        or "within all limits, tolerances at their worst as well",
        cost=_cost(rules, stretched, squeezed, filled),
    )


def _against(rules: Limits, stretched: Span, squeezed: Span, filled: Span) -> list[tuple[bool, str]]:
    """What speaks against a ring: whether it refuses it, and the words."""
    found = [
        *_beyond(
            stretched.value, rules.stretch_may_low, rules.stretch_good_low, rules.stretch_good_high,
            rules.stretch_may_high, "loose on its seat", "stretched too far", "stretch",
        ),
        *_beyond(
            squeezed.value, rules.squeeze_may_low, rules.squeeze_good_low, rules.squeeze_good_high,
            rules.squeeze_may_high, "barely squeezed", "crushed", "squeeze",
        ),
    ]  # fmt: skip
    if filled.value > rules.fill_may:
        found.append((True, f"over-filled: {filled.value:.0f} % of the groove"))
    elif filled.value > rules.fill_good:
        found.append((False, f"fills {filled.value:.0f} %, more than {rules.fill_good:g} %"))
    if squeezed.low <= 0:
        found.append((True, f"may not touch at all: squeeze {squeezed.low:.0f} % at worst"))
    elif squeezed.low < rules.squeeze_may_low / 2 or squeezed.high > rules.squeeze_may_high:
        found.append((False, f"squeeze {squeezed.low:.0f} to {squeezed.high:.0f} % at worst"))
    if filled.high > 100:
        found.append((True, f"cannot close at worst: {filled.high:.0f} % full"))
    elif filled.high > rules.fill_may + 5:
        found.append((False, f"fills {filled.high:.0f} % at worst"))
    return found


def _beyond(
    value: float, may_low: float, low: float, high: float, may_high: float, under: str, over: str, what: str
) -> list[tuple[bool, str]]:
    if value < may_low:
        return [(True, f"{under}: {what} {value:.1f} %")]
    if value > may_high:
        return [(True, f"{over}: {what} {value:.1f} %")]
    if not low <= value <= high:
        return [(False, f"{what} {value:.1f} %, {low:g} to {high:g} is better")]
    return []


def _cost(rules: Limits, stretched: Span, squeezed: Span, filled: Span) -> float:
    """How far from the middle of what is good; ranks rings of one verdict."""
    middle = (rules.squeeze_good_low + rules.squeeze_good_high) / 2
    half = (rules.squeeze_good_high - rules.squeeze_good_low) / 2
    ideal = max(0.0, (rules.stretch_good_low + rules.stretch_good_high) / 2 - 0.5)
    return (
        abs(squeezed.value - middle) / half
        + abs(stretched.value - ideal) / 3
        + max(0.0, filled.value - rules.fill_good) / 5
    )
