"""Order rules of the trade, one small function each. Common practice, no source.

Each adds operations, or puts one before another; where access forces the opposite, access wins
(the inside of a section is coated before it is welded shut).
"""

from __future__ import annotations

from collections.abc import Callable

from witnessmark.jobs.acts import shared_checks
from witnessmark.jobs.building import Building
from witnessmark.jobs.operation import Operation
from witnessmark.jobs.rules_metal import (
    brace_before_cutting,
    clear_before_hot_work,
    trial_fit_before_coat,
    watch_after_hot_work,
    weld_then_coat_then_soft_things,
)
from witnessmark.jobs.rules_shared import acts, on_joints, prepare
from witnessmark.state.joint_state import APART
from witnessmark.vehicle.sides import other_side


def order_by_trade(b: Building) -> None:
    """Every rule in turn."""
    for rule in RULES:
        rule(b)


def put_right_after_closing(b: Building) -> None:
    """What is upset is put right once the joints that upset it are closed."""
    for closing in on_joints(b, "close"):
        for upset in b.kind(closing.name).upset:
            right = f"put_right/{upset.name}"
            if right not in b.operations:
                continue
            if b.operations[right].job == closing.job or b.stands_open(closing.name):
                b.first(closing.id, right)
            else:
                b.rather_first(closing.id, right)


def parts_on_before_their_joints(b: Building) -> None:
    """A part is put back before the joints that hold it are closed."""
    for closing in acts(b, "close"):
        if closing.id.startswith("fit/"):
            b.first(f"lift/{closing.name}", closing.id)
            for holder in b.holders(closing.name):
                b.first(closing.id, f"close/{holder}")


def blanks_out_before_closing(b: Building) -> None:
    """Blanking plugs come out before the joint they sit in is closed."""
    for blank in acts(b, "prepare"):
        if blank.id.startswith("blank/"):
            b.first(blank.id, f"close/{blank.name}")


def drain_before_opening_wet(b: Building) -> None:
    """What holds oil or water is drained before it is opened, where its drain plug is opened too."""
    for opening in on_joints(b, "open"):
        kind = b.kind(opening.name)
        if not kind.fluid or kind.closed_by == "fill":
            continue
        for drain in _of_its_assembly(b, opening.name, "drain"):
            b.first(f"open/{drain}", opening.id)


def fill_after_closing(b: Building) -> None:
    """Nothing is filled while a joint that lets it out stands open; drains are closed before fill plugs."""
    fills = [o for o in on_joints(b, "close") if b.kind(o.name).closed_by == "fill" and "drain" not in o.name]
    fills += [o for o in acts(b, "close") if o.id.startswith("fluid/fill")]
    fills += [o for o in acts(b, "put_right") if o.id.endswith(" level")]
    for fill in fills:
        for closing in on_joints(b, "close"):
            if closing.id == fill.id or not _wets(b, closing.name, fill.name, fill.sort):
                continue
            if closing.job == fill.job or b.stands_open(closing.name):
                b.first(closing.id, fill.id)
            else:
                b.rather_first(closing.id, fill.id)


def _wets(b: Building, joint: str, filled: str, sort: str) -> bool:
    """Whether an open joint would let out what is filled: of the same assembly, or what upset a level."""
    kind = b.kind(joint)
    if not kind.fluid or (kind.closed_by == "fill" and "drain" not in joint):
        return False
    if sort == "put_right":
        return any(upset.name == filled for upset in kind.upset)
    return bool(b.assembly_of(filled)) and b.assembly_of(joint) == b.assembly_of(filled)


def fill_plug_before_drain(b: Building) -> None:
    """The fill plug is proven to undo before anything is drained."""
    for opening in on_joints(b, "open"):
        if "drain" not in opening.name or b.kind(opening.name).closed_by != "fill":
            continue
        fill = next(iter(_of_its_assembly(b, opening.name, "fill")), "")
        if fill and b.state.joints[fill].position == APART:
            continue
        if f"open/{fill}" in b.operations:
            b.first(f"open/{fill}", opening.id)
            continue
        what = f"try {fill or 'the fill plug'}: it must undo before anything is drained"
        b.first(prepare(b, "try", fill or opening.name, opening.job, what, 5), opening.id)


def _of_its_assembly(b: Building, name: str, word: str) -> list[str]:
    """Plugs of the same assembly with a word in their name, but the one itself."""
    assembly = b.state.vehicle.joints[name].assembly
    members = b.state.vehicle.in_assembly(assembly) if assembly else ()
    return [m for m in members if word in m and m != name and b.kind(m).closed_by == "fill"]


def bled_before_the_pedal_is_held(b: Building) -> None:
    """A circuit is closed and filled before a check with a foot on the pedal, with the pump or in use."""
    for proof in on_joints(b, "prove"):
        kind = b.kind(proof.name)
        under_pressure = (
            proof.hands == 2 or proof.stage not in ("workbench", "stands") or _whole_circuit(proof)
        )
        if not kind.fluid or not under_pressure:
            continue
        for upset in kind.upset:
            if upset.name.startswith("bleed") or upset.name.endswith("level"):
                b.first(f"put_right/{upset.name}", proof.id)
        for closing in on_joints(b, "close"):
            if _lets_out(b, closing.name, proof.name):
                b.first(closing.id, proof.id)


def _whole_circuit(proof: Operation) -> bool:
    """Whether a check is an act shared over kinds: one pump run proves every joint of the line."""
    return proof.id.split("/")[1] in shared_checks()


def _lets_out(b: Building, name: str, proven: str) -> bool:
    """Whether a joint that stands open now lets out what is proven elsewhere: the same fluid in one system.

    Oil stays in its own case, so there it is the assembly that counts.
    """
    kind, other = b.kind(name), b.kind(proven)
    if not b.stands_open(name) or kind.fluid != other.fluid or kind.system != other.system:
        return False
    return "oil" not in kind.fluid or b.assembly_of(name) == b.assembly_of(proven)


def both_sides_of_an_axle(b: Building) -> None:
    """Brakes are done on both sides of an axle: the other side is asked about together with this one."""
    for work in on_joints(b, "work"):
        other = other_side(work.name)
        if other is None or other not in b.state.joints or b.kind(work.name).system != "brakes":
            continue
        if not any(o.name == other for o in b.operations.values()):
            b.note(work.id, f"brakes are done on both sides of an axle: {other} too")


def photograph_before_opening(b: Building) -> None:
    """Photograph, and look at the other side, before what was never apart is stripped."""
    jobs: dict[str, list[str]] = {}
    for opening in on_joints(b, "open"):
        if b.state.joints[opening.name].opened_line is None:
            jobs.setdefault(opening.job, []).append(opening.name)
    for job, names in jobs.items():
        other = next((o for n in names if (o := _whole_other_side(b, n))), "")
        look = f"; look at {other} first" if other else ""
        shot = prepare(b, "photograph", names[0], job, f"photograph {names[0]} before you strip it{look}", 5)
        for name in names:
            b.first(shot, f"open/{name}")


def _whole_other_side(b: Building, name: str) -> str:
    other = other_side(name)
    if other is None or other not in b.state.joints:
        return ""
    return other if b.state.joints[other].position != APART else ""


RULES: tuple[Callable[[Building], None], ...] = (
    put_right_after_closing,
    parts_on_before_their_joints,
    blanks_out_before_closing,
    drain_before_opening_wet,
    fill_plug_before_drain,
    fill_after_closing,
    brace_before_cutting,
    clear_before_hot_work,
    trial_fit_before_coat,
    weld_then_coat_then_soft_things,
    watch_after_hot_work,
    bled_before_the_pedal_is_held,
    both_sides_of_an_axle,
    photograph_before_opening,
)
