"""The closing sheet of one assembly: what lets go is answered singly, the rest by its exceptions."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from msgspec import Struct

from witnessmark.ground.missed import Stage, if_missed, stage
from witnessmark.owed.debt import Debt
from witnessmark.owed.joints import CLOSING
from witnessmark.sheets.numbers import Lines, nut_rule
from witnessmark.sheets.phrases import missed_words, sheet_code
from witnessmark.sheets.rows import Box, JointRow, Number, Row, Section, Sheet, Words
from witnessmark.state.closing import lets_go
from witnessmark.state.joint_state import LOOSE, TIGHT, JointState
from witnessmark.state.standing import State
from witnessmark.vehicle.kind import Check, Kind, Renewal
from witnessmark.vehicle.things import Joint, Vehicle

_BEFORE = frozenset({"blank", "bag", "fluid", "brace", "refit"})
SECOND_LOOK = "the helper's, or yours on another day"
FOOTER = (
    "Figures are those of this record. Your own book comes first.",
    "A second look is given before the wheels turn; the record says whose it was.",
)


class _Open(Struct, frozen=True):
    """A joint of the assembly that owes something, with all that its rows are made of."""

    joint: Joint
    kind: Kind
    state: JointState
    word: str
    codes: Mapping[tuple[str, str], str]
    numbers: tuple[Number, ...]

    @property
    def first_stage(self) -> Stage:
        return min((stage(c.stage) for c in self.kind.check), default=Stage.WORKBENCH)


def closing_sheet(
    assembly: str,
    state: State,
    debts: Sequence[Debt],
    vehicle: Vehicle,
    catalogue: Mapping[str, Kind],
    *,
    today: date,
    words: Mapping[str, str],
    numbers: Lines,
) -> Sheet:
    """Everything one assembly asks before it is closed.

    debts      everything owed; their codes stand beside the boxes
    catalogue  every kind of joint by its key
    words      the word for each joint's state, apart, loose, tight or proven
    numbers    the lines of numbers under a joint
    """
    codes = {(d.joint, d.sort, d.item): d.id for d in debts if d.joint}
    opened, untouched = [], []
    for name in vehicle.in_assembly(assembly):
        joint, now = vehicle.joints[name], state.joints[name]
        if now.opened_line is None and not now.findings:
            untouched.append(name)
        elif not now.scrapped:
            own = {(sort, item): code for (j, sort, item), code in codes.items() if j == name}
            lines = numbers("prove" if now.position == TIGHT else "close", joint)
            opened.append(_Open(joint, catalogue[joint.kind], now, words[name], own, lines))
    opened.sort(key=lambda o: o.first_stage)
    title = vehicle.name or "the vehicle"
    code = sheet_code("closing", assembly, title, today, state.last_line)
    return Sheet(
        kind="closing",
        title=f"Closing: {assembly}",
        vehicle=title,
        date=today,
        line=state.last_line,
        code=code,
        sections=(
            *_before(assembly, debts, vehicle),
            _singly([o for o in opened if lets_go(o.joint, o.kind)]),
            _rest([o for o in opened if not lets_go(o.joint, o.kind)], assembly, code),
            *_untouched(untouched),
            *_fail_lines(opened),
        ),
        footer=FOOTER,
    )


def _before(assembly: str, debts: Sequence[Debt], vehicle: Vehicle) -> Iterator[Section]:
    """What is counted in, bagged, drained or found bad: done before anything is closed over it."""
    own = {
        *vehicle.in_assembly(assembly),
        *(p.name for p in vehicle.parts.values() if p.assembly == assembly),
    }
    rows = tuple(
        Box(label=debt.joint or debt.part, text=debt.what, aside=debt.because, code=debt.id)
        for debt in debts
        if (debt.sort in _BEFORE and own & {debt.joint, debt.part})
        or (debt.sort == "finding" and debt.part in own)
    )
    if rows:
        yield Section(heading="before it closes", rows=rows)


def _singly(opened: Sequence[_Open]) -> Section:
    rows = tuple(row for one in opened for row in _rows(one))
    return Section(
        heading="each answered singly",
        note="with a figure, or “seen”",
        rows=rows,
        if_missed="lets go",
        empty="Nothing of this assembly that lets go was opened.",
    )


def _rest(opened: Sequence[_Open], assembly: str, code: str) -> Section:
    ordered = sorted(opened, key=lambda o: (if_missed(o.joint.if_missed or o.kind.if_missed), o.first_stage))
    rows: list[Row] = [row for one in ordered for row in _rows(one)]
    if rows:
        rows.append(
            Box(label="in one go", text=f"all of these closed, {assembly}", write=("all but",), code=code)
        )
    return Section(
        heading="the rest",
        note="one by one, or in one go at the end",
        rows=tuple(rows),
        empty="Nothing else of this assembly was opened.",
    )


def _rows(one: _Open) -> Iterator[Row]:
    joint, kind = one.joint, one.kind
    missed = missed_words(joint.if_missed or kind.if_missed)
    yield JointRow(name=joint.name, state=one.word, if_missed=missed, because=kind.lets_go_because)
    yield from one.numbers
    if rule := nut_rule(kind):
        yield Words(text=rule, label="nut")
    yield from _found(one)
    for renewal in kind.renew:
        yield _renewal(one, renewal)
    yield _close(one)
    for check in sorted(kind.check, key=lambda c: stage(c.stage)):
        yield _check(one, check)
    for record in kind.record:
        yield Box(
            label="write down",
            text=record.text or record.name,
            write=(record.name,),
            code=one.codes.get(("record", record.name), ""),
            answered=_line(one.state.recorded.get(record.name)),
        )
    if lets_go(joint, kind):
        yield Box(label="second look", text=SECOND_LOOK, write=("who", "day"))


def _found(one: _Open) -> Iterator[Words]:
    for finding in one.state.findings:
        what = f"{finding.item} " if finding.item else ""
        yield Words(
            text=f"{what}found {finding.condition}, line {finding.line}: put it right first", label="finding"
        )


def _close(one: _Open) -> Box:
    from_apart, from_loose, _ = CLOSING[one.kind.closed_by]
    text = from_loose if one.state.position == LOOSE else from_apart
    return Box(
        label="close",
        text=text,
        code=one.codes.get(("close", "close"), ""),
        answered=_line(one.state.closed_line),
    )


def _renewal(one: _Open, renewal: Renewal) -> Box:
    many = f"{renewal.number} × " if renewal.number > 1 else ""
    answered = _line(one.state.renewed.get(renewal.item))
    if renewal.always:
        code = one.codes.get(("renew", renewal.item), "")
        return Box(label="renew", text=f"{many}new {renewal.item}", code=code, answered=answered)
    return Box(
        label="look over", text=f"{many}{renewal.item}", aside=f"renew {renewal.when}", answered=answered
    )


def _check(one: _Open, check: Check) -> Box:
    return Box(
        label=stage(check.stage).words,
        text=f"{check.name}: {check.text}",
        aside=f"closes at: {check.closes_at}",
        code=one.codes.get(("check", check.name), ""),
        write=("figure",) if check.figure else (),
        answered=_line(one.state.answered.get(check.name)),
    )


def _line(line: int | None) -> str:
    return f"line {line}" if line else ""


def _untouched(names: Sequence[str]) -> Iterator[Section]:
    if names:
        yield Section(
            heading="as found, never touched",
            rows=tuple(Words(text=name) for name in names),
            note="This sheet asks nothing of them; a gate may.",
        )


def _fail_lines(opened: Sequence[_Open]) -> Iterator[Section]:
    found: dict[Words, None] = {}
    for one in opened:
        for check in one.kind.check:
            for limit in check.fails_at:
                source = ", ".join(part for part in (limit.authority, limit.place, limit.edition) if part)
                found[Words(label=check.name, text=f"{limit.text}. {source}", sort="fail line")] = None
    if found:
        yield Section(
            heading="where an authority refuses it: never the aim",
            rows=tuple(found),
            note="Joints are closed at the figures above. Limits change: defer to your authority.",
        )
