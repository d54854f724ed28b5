"""Labels for bags and for parts on the shelf or away: what, where from, which way up, keep or renew."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set
from datetime import date

from witnessmark.owed.debt import Debt
from witnessmark.sheets.phrases import counted, free_code, sheet_code
from witnessmark.sheets.rows import Label, Section, Sheet
from witnessmark.state.counts import Bag
from witnessmark.state.parts import AWAY, BENCH, SHELF, PartState
from witnessmark.state.standing import State
from witnessmark.vehicle.kind import Kind
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Vehicle

_LABELLED = frozenset({SHELF, AWAY, BENCH})


def labels(state: State, debts: Sequence[Debt], catalogue: Mapping[str, Kind]) -> tuple[Label, ...]:
    """One label for each bag, then one for each part on the workbench, on the shelf or away.

    A label's code is that of the debt it stands for, so that typing it finds the debt.
    """
    bags = {d.line: d.id for d in debts if d.sort == "bag"}
    refits = {d.part: d.id for d in debts if d.sort == "refit"}
    taken = {d.id for d in debts}
    found = [_bag(bag, state.vehicle, bags, taken, catalogue) for bag in state.counts.bags]
    found += [
        _part(part, state.vehicle, refits, taken) for part in state.parts.values() if part.where in _LABELLED
    ]
    return tuple(found)


def label_sheet(these: Sequence[Label], *, vehicle: str, today: date, line: int) -> Sheet:
    """Labels as a sheet, to be read in the terminal or printed."""
    subject = ",".join(label.code for label in these)
    return Sheet(
        kind="labels",
        title="Labels",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("labels", subject, vehicle, today, line),
        sections=(
            Section(
                heading="labels", rows=tuple(these), empty="Nothing to label: no bag, nothing on the shelf."
            ),
        ),
    )


def _bag(
    bag: Bag,
    vehicle: Vehicle,
    codes: Mapping[int, str],
    taken: Set[str],
    kinds: Mapping[str, Kind],
) -> Label:
    return Label(
        what=bag.what,
        code=codes.get(bag.line) or free_code(f"bag/{bag.what}/{bag.line}", taken),
        came_from=", ".join(dict.fromkeys(_from(name, vehicle) for name in bag.at)),
        side=", ".join(dict.fromkeys(side for name in bag.at if (side := parted(name)[1]))),
        number=counted(bag.number, "piece") if bag.number else "",
        day=bag.day,
        keep=_renewed(bag.at, vehicle, kinds),
        where=f"on {bag.where}" if bag.where else "",
    )


def _from(name: str, vehicle: Vehicle) -> str:
    place = vehicle.place_of(name)
    plain, side = parted(name)
    return f"{plain}, {place}" if place and place not in (plain, side) else plain


def _renewed(names: Iterable[str], vehicle: Vehicle, kinds: Mapping[str, Kind]) -> str:
    """Renew what is never used twice; the rest of the bag is kept."""
    joints = [vehicle.joints[name] for name in names if name in vehicle.joints]
    items = [renewal.item for joint in joints for renewal in kinds[joint.kind].renew if renewal.always]
    return f"renew {', '.join(dict.fromkeys(items))}; keep the rest" if items else "keep"


def _part(part: PartState, vehicle: Vehicle, codes: Mapping[str, str], taken: Set[str]) -> Label:
    told = vehicle.parts[part.name]
    plain, side = parted(part.name)
    return Label(
        what=plain,
        code=codes.get(part.name) or free_code(f"part/{part.name}", taken),
        came_from=", ".join(dict.fromkeys(p for p in (told.assembly, told.place) if p and p != plain)),
        side=side or told.side,
        number=counted(told.number, "piece"),
        day=part.off_day or part.since,
        keep=f"renew: found {part.bad}" if part.bad else "keep",
        where=_stands(part),
        note=told.note,
    )


def _stands(part: PartState) -> str:
    if part.where == AWAY:
        due = f", due back {part.due_back}" if part.due_back else ""
        return f"away with {part.with_whom or 'somebody'}{due}"
    return f"on {part.place}" if part.place else part.where
