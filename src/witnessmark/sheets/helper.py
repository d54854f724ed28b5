"""The helper's sheet: what takes two pairs of hands, by where the helper stands, to be read aloud."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date

from witnessmark.gate.answer import Unknown
from witnessmark.ground.missed import if_missed
from witnessmark.jobs.operation import Operation
from witnessmark.owed.debt import Debt
from witnessmark.sheets.grouping import joint_row
from witnessmark.sheets.phrases import band_words, missed_words, sheet_code, where_words
from witnessmark.sheets.rows import Box, Due, JointRow, Section, Sheet, Words

# Words that put the helper in the driver's seat. Common practice, no source.
_IN_THE_SEAT = (
    "pedal",
    "handbrake",
    "rocks the steering",
    "rocks the wheel",
    "lock to lock",
    "lamps",
    "horn",
    "starter",
)
SEAT = "in the seat"


def helper_sheet(
    debts: Iterable[Debt],
    operations: Iterable[Operation] = (),
    asks: Iterable[Unknown] = (),
    *,
    vehicle: str,
    today: date,
    line: int,
) -> Sheet:
    """What to do while the helper is here.

    debts       everything owed; those that need a helper are taken, those that go better are named
    operations  of the next session; those for two pairs of hands are taken
    asks        what a gate asks and the record does not know; those that need a helper are taken
    """
    every = list(debts)
    needed = [d for d in every if d.helper == "needed"]
    by_place: dict[str, list[JointRow | Box]] = {}
    for ask in asks:
        if ask.helper == "needed":
            by_place.setdefault(_stands(f"{ask.text} {ask.how}", ""), []).append(_ask(ask))
    for (place, missed, name), owed in _gathered(needed).items():
        by_place.setdefault(place, []).append(joint_row(name, "", missed, map(_due, owed)))
    for operation in operations:
        if operation.hands > 1:
            place = _stands(operation.what, operation.where or operation.name)
            by_place.setdefault(place, []).append(_operation(operation))
    return Sheet(
        kind="helper",
        title="With the helper",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("helper", "", vehicle, today, line),
        sections=(*_sections(by_place), *_helped(every)),
        footer=(
            "Read each line aloud before it is done.",
            "Nobody is under it while it moves or is lifted.",
        ),
    )


def _sections(by_place: Mapping[str, Sequence[JointRow | Box]]) -> tuple[Section, ...]:
    places = sorted(by_place, key=lambda place: (place != SEAT, place))
    sections = tuple(Section(heading=p, rows=tuple(by_place[p])) for p in places if by_place[p])
    return sections or (
        Section(heading="two pairs of hands", empty="Nothing owed takes two pairs of hands."),
    )


def _helped(debts: Sequence[Debt]) -> Iterator[Section]:
    """Joints that a second pair of hands makes easier, once each."""
    names = dict.fromkeys(d.joint for d in debts if d.helper not in ("no", "needed") and d.joint)
    if names:
        rows = tuple(Words(text=name) for name in names)
        yield Section(heading="goes better with two", rows=rows, note="can be done alone, if it must")


def _stands(what: str, where: str) -> str:
    """Where the helper stands for it: in the seat for what is pressed, turned or switched there."""
    if any(word in what for word in _IN_THE_SEAT):
        return SEAT
    return f"at the {where.removeprefix('the ')}" if where else "at the vehicle"


def _gathered(debts: Iterable[Debt]) -> Mapping[tuple[str, str, str], list[Debt]]:
    """Debts under the place where the helper stands for them, and then under their joint, heaviest first."""
    found: dict[tuple[str, str, str], list[Debt]] = {}
    for debt in sorted(debts, key=lambda d: if_missed(d.if_missed)):
        name = debt.joint or debt.part or debt.where
        found.setdefault((_stands(debt.what, debt.where), debt.if_missed, name), []).append(debt)
    return found


def _due(debt: Debt) -> Due:
    return Due(what=debt.what, code=debt.id)


def _ask(ask: Unknown) -> JointRow:
    due = Due(what=ask.text, how=ask.how, code=ask.code)
    return JointRow(name=ask.name, if_missed=missed_words(ask.if_missed), dues=(due,))


def _operation(operation: Operation) -> Box:
    side = where_words(operation.name, "")
    text = f"{operation.what}, {side}" if side else operation.what
    return Box(label="this session", text=text, aside=band_words(operation.minutes))
