"""The history file: structure before paint, figures with their standing, parts with sources; no price."""

from __future__ import annotations

from datetime import timedelta

from tests.building import FIRST_DAY, described, entry
from witnessmark.gate.answer import GateAnswer, Hold
from witnessmark.ground.quantity import Quantity
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.journal.order import in_force, standing
from witnessmark.sheets.history import History, history_sheet
from witnessmark.sheets.plain import as_plain
from witnessmark.sheets.rows import Cells, JointRow, Pictures, Section, Sheet, Words
from witnessmark.sheets.text import as_text
from witnessmark.state.photos import album_from
from witnessmark.state.standing import state_from
from witnessmark.vehicle.things import Figure, Joint, Part

SEAM, COAT, NUT, SEAL = "sill seam, left", "sill coat, left", "hub nut, left rear", "pinion seal"
VEHICLE: tuple[f.AnyFact, ...] = (
    f.DescribedVehicle(name="the van", body="van"),
    described(
        Joint(name=SEAM, kind="mount-area-weld", holds=("sill, left",), assembly="sill, left"),
        Joint(name=COAT, kind="primed-metal", assembly="sill, left"),
        Joint(name=NUT, kind="tapered-drive-hub"),
        Joint(name=SEAL, kind="pinion-seal"),
        Part(name="sill, left"),
    ),
)
NO_HOLDS = GateAnswer(gate="road", screen_name="road", note="", asked_on=FIRST_DAY, holds=(), not_known=())
LAST = FIRST_DAY + timedelta(days=90)


def told(*facts: f.AnyFact, road: GateAnswer = NO_HOLDS) -> Sheet:
    """The history of a van after these facts, one a day."""
    entries: list[Entry] = [
        entry(fact, n, FIRST_DAY + timedelta(days=n), words=f"words {n}")
        for n, fact in enumerate((*VEHICLE, *facts), 1)
    ]
    state = state_from(entries)
    made = History(
        entries=tuple(standing(entries)),
        struck=len(in_force(entries)),
        state=state,
        photos=album_from(entries).photos,
        pairs=album_from(entries).pairs,
        road=road,
        words={name: joint.position for name, joint in state.joints.items()},
    )
    return history_sheet(made, today=LAST)


def section(sheet: Sheet, heading: str) -> Section:
    return next(s for s in sheet.sections if s.heading == heading)


def cells(sheet: Sheet, heading: str) -> list[tuple[str, ...]]:
    return [row.cells for row in section(sheet, heading).rows if isinstance(row, Cells)]


REPAIR: tuple[f.AnyFact, ...] = (
    f.Found(at=("sill, left",), condition="rotten"),  # line 3
    f.CutOut(at=(SEAM,)),
    f.Photographed(at=(SEAM,), photos=("open",), of=4),
    f.Welded(at=(SEAM,)),
    f.Photographed(at=(SEAM,), photos=("welded",), of=6),
    f.Coated(at=(COAT,), product="epoxy primer"),  # line 8
    f.Photographed(at=(SEAM, COAT), photos=("painted",), of=8),
)


def shown(sheet: Sheet, heading: str) -> dict[str, list[str]]:
    rows = section(sheet, heading).rows
    return {row.label: [p.file for p in row.pictures] for row in rows if isinstance(row, Pictures)}


def test_structure_is_shown_before_its_paint() -> None:
    sheet = told(*REPAIR)
    assert shown(sheet, "structure") == {"before paint": ["open", "welded"], "afterwards": ["painted"]}
    rows = section(sheet, "structure").rows
    assert isinstance(rows[0], JointRow)
    assert (rows[0].name, rows[0].state, rows[0].if_missed) == (SEAM, "tight", "lets go")
    said = [row.text for row in rows if isinstance(row, Words)]
    assert said[:3] == ["words 3 (line 3, you)", "words 4 (line 4, you)", "words 6 (line 6, you)"]
    assert said[-1] == f"Painted {FIRST_DAY.day + 8} Mar 2026, line 8."


def test_a_repair_without_a_photo_or_without_paint_says_so() -> None:
    said = as_text(told(*REPAIR[:2]), 200)
    assert "No photo before paint in this record." in said
    assert "No paint in this record." in said
    assert "says nothing of any structure" in as_text(told(f.TookOff(at=(NUT,))), 200)


def test_a_line_about_buying_is_not_quoted_with_a_repair() -> None:
    sheet = told(f.CutOut(at=(SEAM,)), f.Ordered(item="steel", at=(SEAM,), price=18.0))
    said = as_text(sheet, 200)
    assert "words 3" in said
    assert "words 4" not in said


def test_every_figure_carries_its_standing() -> None:
    book = Figure(
        low=149.1, high=149.1, unit="N·m", typed="110 lbf ft", standing="owner's book", where="p. 41"
    )
    sheet = told(
        f.ReadFigure(at=(NUT,), figure=book),
        f.TookOff(at=(NUT,)),
        f.Tightened(at=(NUT,), figures=(Quantity("110 lbf ft", 149.1, "N·m"),)),
        f.Measured(at=(NUT,), what="end float", figures=(Quantity("0.08 mm", 0.08, "mm"),)),
    )
    rows = cells(sheet, "figures, with their standing")
    assert [row[:4] for row in rows] == [
        (NUT, "to close at", "110 lbf ft", "owner's book, p. 41"),
        (NUT, "tightened", "110 lbf ft", "as set at the wrench"),
        (NUT, "end float", "0.08 mm", "measured"),
    ]
    assert all(row[3] for row in rows)


def test_a_part_is_told_with_where_it_came_from_and_never_with_its_price() -> None:
    sheet = told(
        f.Ordered(item="pinion seals", number=2, supplier="Ottermere Seals", price=6.4),
        f.Came(item="pinion seal"),
        f.Fitted(at=(SEAL,), new=True),
        f.Fitted(at=(NUT,), item="split pin", new=True),
        f.Paid(amount=4137.0, what="paint", to="Ottermere Seals"),
    )
    assert [row[:3] for row in cells(sheet, "parts, with their sources")] == [
        (SEAL, SEAL, "Ottermere Seals"),
        ("split pin", NUT, "not said"),
    ]
    plain = str(as_plain(sheet))
    assert "4137" not in plain
    assert "6.4" not in plain


def test_what_was_found_says_whether_it_still_is_so() -> None:
    sheet = told(
        f.Found(at=(SEAL,), condition="weeping"),
        f.Found(at=(NUT,), condition="loose"),
        f.Found(at=(SEAL,), condition="good"),
        f.Found(at=("sill, left",), condition="rotten"),
    )
    assert [(row[0], row[1], row[4]) for row in cells(sheet, "what was found")] == [
        (SEAL, "weeping", "put right"),
        (NUT, "loose", "still so"),
        ("sill, left", "rotten", ""),
    ]


def test_what_lets_go_and_what_stands_open_are_told_without_a_release() -> None:
    hold = Hold(
        if_missed="lets_go", what="close and prove", name=NUT, joint=NUT, state="apart", because="", line=3,
        days=1, pays="", code="AB2C", sort="close",
    )  # fmt: skip
    road = GateAnswer(
        gate="road", screen_name="road", note="", asked_on=FIRST_DAY, holds=(hold,), not_known=()
    )
    sheet = told(f.TookOff(at=(NUT,)), f.Left(at=(SEAL,), why="sound for now"), road=road)
    assert cells(sheet, "what lets go") == [(NUT, "apart", "", "")]
    assert section(sheet, "what stands open").note == "Road: 1 thing holds."
    said = as_text(sheet, 200)
    assert f"{NUT}: close and prove" in said
    assert f"{SEAL}: sound for now (line 4)" in said
    assert "it vouches for nothing" in said
    assert "This is not a release" in as_text(told(), 200)


def test_struck_lines_are_counted_and_left_out() -> None:
    sheet = told(*REPAIR[:2], f.Struck(line=4, why="wrong side"))
    said = as_text(sheet, 200)
    assert "1 line struck as wrong" in said
    assert "words 4" not in said


def test_many_photos_of_one_repair_are_the_first_and_the_last() -> None:
    many = tuple(f"p{n:02d}" for n in range(30))
    sheet = told(f.CutOut(at=(SEAM,)), f.Photographed(at=(SEAM,), photos=many, of=3))
    assert shown(sheet, "structure")["before paint"] == [*many[:4], *many[-2:]]


def test_before_and_after_stand_side_by_side() -> None:
    sheet = told(
        f.TookOff(at=(NUT,)),
        f.Photographed(at=(NUT,), photos=("off",), of=3),
        f.Tightened(at=(NUT,)),
        f.Photographed(at=(NUT,), photos=("on",), of=5),
    )
    assert shown(sheet, "before and after") == {NUT: ["off", "on"]}
