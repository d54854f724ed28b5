"""Order rules of metal and heat: brace, clear, cut, trial fit, weld, coat, and what the heat would spoil.

Common practice, no source, but the fire watch, which is published (30 minutes at the least; 60 are shown).
"""

from __future__ import annotations

from witnessmark.jobs.building import Building
from witnessmark.jobs.garage import FIRE_WATCH
from witnessmark.jobs.operation import Operation
from witnessmark.jobs.rules_shared import acts, on_joints, place_of, prepare
from witnessmark.owed.debt import listed
from witnessmark.state.joint_state import APART

# What burns, or is burnt, and is out of the way before a spark.
BURNS = frozenset(
    {
        "fuel-tank", "fuel-hose", "fuel-pipe", "brake-hose", "brake-union", "screen-rubber", "door-seal",
        "window-lift", "door-membrane", "cavity-wax", "wiring-splice", "grommet", "body-plug", "seam-sealing",
    }
)  # fmt: skip

# Steel first, then what covers it, then what the heat would spoil.
WELD, SEALER, COAT, SOFT, WAX = range(5)
SOFT_KINDS = frozenset(
    {
        "wiring-splice", "grommet", "lamp-unit", "earth-point", "screen-rubber", "door-seal", "door-membrane",
        "window-lift", "body-plug", "drain-hole",
    }
)  # fmt: skip


def brace_before_cutting(b: Building) -> None:
    """Brace and measure before structure is cut; after the weld the brace comes off, and measure again."""
    for cut in on_joints(b, "open"):
        kind, place = b.kind(cut.name), place_of(b, cut.name)
        if kind.closed_by != "weld" or kind.system != "structure":
            continue
        if any(tally.at in (place, cut.name) for tally in b.state.counts.braces):
            continue
        on = prepare(b, "brace", place, cut.job, f"brace {place} and write down the diagonals", 40)
        off = prepare(b, "unbrace", place, cut.job, f"brace off {place}, measure the diagonals again", 20)
        b.first(on, cut.id)
        b.first(on, off)
        b.first(f"close/{cut.name}", off)


def clear_before_hot_work(b: Building) -> None:
    """Tanks, lines, rubber, wax and wiring out of the way before the first spark, on both faces."""
    for hot in _hot(b, "open") + _hot(b, "close"):
        place = place_of(b, hot.name)
        near = [n for n in b.state.joints if _burns(b, n, place)] or ["tank, lines, rubber, wax, wiring"]
        what = f"out of the way of sparks at {place}: {listed(near)}"
        b.first(prepare(b, "clear", place, hot.job, what, 20, ("hot-work", "petrol")), hot.id)


def _burns(b: Building, name: str, place: str) -> bool:
    near = place_of(b, name) == place and b.state.joints[name].position != APART
    return near and b.state.vehicle.joints[name].kind in BURNS


def trial_fit_before_coat(b: Building) -> None:
    """Offer up what bolts to the metal once the old is cut out, before the coat goes on."""
    for coat in on_joints(b, "close"):
        if b.kind(coat.name).closed_by != "coat":
            continue
        place = place_of(b, coat.name)
        welds = [w.name for w in _welds(b) if place_of(b, w.name) == place]
        if welds:
            dry = prepare(
                b, "dry fit", place, coat.job, f"trial fit what touches {place}, mark, off again", 30
            )
            b.first(dry, coat.id)
            for weld in welds:
                b.first(f"open/{weld}", dry)


def weld_then_coat_then_soft_things(b: Building) -> None:
    """At one place: weld before sealer and coat, coat before loom and rubber, wax last."""
    places: dict[str, list[tuple[int, str]]] = {}
    for closing in on_joints(b, "close"):
        layer = _layer(b, closing.name)
        if layer is not None:
            places.setdefault(place_of(b, closing.name), []).append((layer, closing.id))
    for found in places.values():
        for layer, earlier in found:
            for other, later in found:
                if layer < other:
                    b.first(earlier, later)


def _layer(b: Building, name: str) -> int | None:
    kind = b.kind(name)
    if kind.closed_by == "weld":
        return WELD
    if kind.closed_by == "coat":
        return {"seam-sealing": SEALER, "cavity-wax": WAX}.get(kind.key, COAT)
    return SOFT if kind.key in SOFT_KINDS else None


def watch_after_hot_work(b: Building) -> None:
    """Sixty minutes' watch after the last spark at each place, and one look more before locking up.

    It comes after whichever hot work a session does, cutting or welding; a plan takes both or neither.
    """
    for hot in _hot(b, "open") + _hot(b, "close"):
        place = place_of(b, hot.name)
        watch = Operation(
            id=f"watch/{place}", what=f"fire watch at {place}, one more look before locking up", sort="watch",
            name=place, job=hot.job, minutes=FIRE_WATCH, where=place, if_missed="lets_go", put_down=False,
            cautions=("fire-watch",),
        )  # fmt: skip
        b.rather_first(hot.id, b.add(watch) if watch.id not in b.operations else watch.id)


def _hot(b: Building, sort: str) -> list[Operation]:
    return [o for o in on_joints(b, sort) if b.kind(o.name).hot_work]


def _welds(b: Building) -> list[Operation]:
    return [o for o in acts(b, "close") if o.name in b.state.joints and b.kind(o.name).closed_by == "weld"]
