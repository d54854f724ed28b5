"""The closing sheet: singly what lets go, one sweep for the rest, and no fail line as the aim."""

from datetime import date

from tests.sheets.made_up import LINES, TODAY, debts_of, lines, made_up_state, words_of
from witnessmark.journal.facts import AnyFact, Bared, Coated, Described, Fitted, Tightened, TookOff
from witnessmark.sheets.closing import closing_sheet
from witnessmark.sheets.rows import Box, JointRow, Number, Section, Sheet, Words
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.things import Joint


def sheet_of(state: State, assembly: str = "rear axle") -> Sheet:
    return closing_sheet(
        assembly,
        state,
        debts_of(state),
        state.vehicle,
        catalogue(),
        today=TODAY,
        words=words_of(state),
        numbers=LINES,
    )


STATE = made_up_state()
SHEET = sheet_of(STATE)
DEBTS = debts_of(STATE)


def section(heading: str, sheet: Sheet = SHEET) -> Section:
    return next(s for s in sheet.sections if s.heading == heading)


def joints_in(heading: str) -> list[str]:
    return [row.name for row in section(heading).rows if isinstance(row, JointRow)]


def rows_of(name: str) -> list[object]:
    """The rows below one joint, up to the next."""
    found: list[object] = []
    standing = ""
    for row in (row for part in SHEET.sections for row in part.rows):
        if isinstance(row, JointRow):
            standing = row.name
        elif standing == name:
            found.append(row)
    assert found, name
    return found


def boxes(name: str, label: str) -> list[Box]:
    return [row for row in rows_of(name) if isinstance(row, Box) and row.label == label]


def test_what_lets_go_stands_apart_from_what_may_be_swept() -> None:
    assert set(joints_in("each answered singly")) == {
        "propshaft bolts",
        "axle u-bolts, left",
        "hub nut, left rear",
    }
    assert set(joints_in("the rest")) == {"half-shaft o-ring, left", "axle cover gasket", "pinion seal"}


def test_the_sweep_closes_the_rest_only() -> None:
    sweep = section("the rest").rows[-1]
    assert isinstance(sweep, Box)
    assert sweep.write == ("all but",)
    assert sweep.code == SHEET.code
    assert [
        b for b in section("each answered singly").rows if isinstance(b, Box) and "all but" in b.write
    ] == []


def test_a_joint_never_touched_is_only_named() -> None:
    assert [row.text for row in section("as found, never touched").rows if isinstance(row, Words)] == [
        "axle fill plug"
    ]


def test_a_figure_carries_its_standing_and_a_guess_is_hollow() -> None:
    figures = [row for row in rows_of("half-shaft o-ring, left") if isinstance(row, Number)]
    assert [(n.value, n.standing, n.hollow) for n in figures] == [("22 lbf ft", "guess", True)]
    figures = [
        row for row in rows_of("hub nut, left rear") if isinstance(row, Number) and row.label == "figure"
    ]
    assert [(n.pedigree, n.hollow) for n in figures] == [
        ("owner's book, p. 41; plausibility: within at 5.8 to 8.8", False)
    ]


def test_a_joint_carries_three_lines_of_numbers_at_most() -> None:
    for name in STATE.vehicle.in_assembly("rear axle"):
        if name != "axle fill plug":
            assert len([row for row in rows_of(name) if isinstance(row, Number)]) <= 3


def test_what_is_closed_already_asks_for_nothing_more() -> None:
    joint = Joint(name="floor paint", kind="primed-metal", assembly="floor")
    bared = (TODAY, "09:10", "bared the floor", Bared(at=("floor paint",)))
    coated = (TODAY, "09:20", "coated the floor", Coated(at=("floor paint",), product="primer"))
    told = (TODAY, "09:00", "floor paint", Described(joints=(joint,)))

    def blanks(*facts: tuple[date, str, str, AnyFact]) -> list[str]:
        rows = [row for s in sheet_of(made_up_state(lines(*facts)), "floor").sections for row in s.rows]
        return [row.label for row in rows if isinstance(row, Number)]

    assert blanks(told, bared) == ["steel, air, humidity"]
    assert blanks(told, bared, coated) == []


def test_each_slotted_nut_has_its_own_rule() -> None:
    def rule(name: str) -> list[str]:
        return [row.text for row in rows_of(name) if isinstance(row, Words) and row.label == "nut"]

    assert rule("hub nut, left rear") == ["Slotted nut to a figure: on to the next slot, never back."]
    assert "back to the nearest slot" in rule("pinion seal")[0]
    assert rule("axle u-bolts, left") == []


def test_renewals_always_due_are_told_from_those_looked_over() -> None:
    kind = catalogue()["tapered-drive-hub"]
    due = [f"new {r.item}" for r in kind.renew if r.always]
    looked_over = [(r.item, f"renew {r.when}") for r in kind.renew if not r.always]
    assert [b.text for b in boxes("hub nut, left rear", "renew")] == due
    assert [(b.text, b.aside) for b in boxes("hub nut, left rear", "look over")] == looked_over


def test_every_debt_of_the_assemblys_joints_has_a_box_with_its_code() -> None:
    own = set(STATE.vehicle.in_assembly("rear axle"))
    owed = {
        d.id
        for d in DEBTS
        if d.joint in own and d.sort in ("renew", "close", "check", "record", "blank", "bag")
    }
    assert owed <= {row.code for s in SHEET.sections for row in s.rows if isinstance(row, Box)}


def test_checks_follow_one_another_by_stage() -> None:
    stages = ("on the workbench", "on stands", "on its wheels", "creeping on private ground", "on the road")
    for name in STATE.vehicle.in_assembly("rear axle"):
        if name != "axle fill plug":
            found = [row.label for row in rows_of(name) if isinstance(row, Box) and row.label in stages]
            assert found == sorted(found, key=stages.index)


def test_what_lets_go_ends_with_a_second_look_and_the_rest_does_not() -> None:
    for name in joints_in("each answered singly"):
        assert [b.write for b in boxes(name, "second look")] == [("who", "day")]
    for name in joints_in("the rest"):
        assert boxes(name, "second look") == []


def test_a_fail_line_is_never_the_aim() -> None:
    limits = {x.text for kind in catalogue().values() for check in kind.check for x in check.fails_at}
    aims = [row.aside for s in SHEET.sections for row in s.rows if isinstance(row, Box)]
    assert [aim for aim in aims for limit in limits if limit in aim] == []
    apart = section("where an authority refuses it: never the aim")
    assert SHEET.sections[-1] is apart
    assert all(isinstance(row, Words) and row.sort == "fail line" for row in apart.rows)


def test_what_was_counted_in_comes_first() -> None:
    first = SHEET.sections[0]
    assert first.heading == "before it closes"
    said = [row.text for row in first.rows if isinstance(row, Box)]
    assert "take out 2 blanking plugs" in said
    assert "empty the bag: propshaft bolts and nuts" in said


def test_an_answer_in_the_record_stands_in_its_box() -> None:
    joint = Joint(name="drop arm", kind="drop-arm", assembly="steering")
    state = made_up_state(
        lines(
            (TODAY, "09:00", "drop arm", Described(joints=(joint,))),
            (TODAY, "09:10", "drop arm off", TookOff(at=("drop arm",))),
            (TODAY, "09:20", "new washer", Fitted(at=("drop arm",), item="drop arm lock washer, pin or nut")),
            (TODAY, "09:30", "drop arm tight", Tightened(at=("drop arm",))),
        )
    )
    found = {
        row.label: row.answered
        for s in sheet_of(state, "steering").sections
        for row in s.rows
        if isinstance(row, Box)
    }
    assert found["renew"] == "line 3"
    assert found["close"] == "line 4"
    assert found["second look"] == ""


def test_an_assembly_nobody_opened_asks_nothing() -> None:
    joint = Joint(name="drop arm", kind="drop-arm", assembly="steering")
    state = made_up_state(lines((TODAY, "09:00", "drop arm", Described(joints=(joint,)))))
    sheet = sheet_of(state, "steering")
    assert [s.rows for s in sheet.sections[:2]] == [(), ()]
