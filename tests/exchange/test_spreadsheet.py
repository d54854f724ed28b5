from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from tests.exchange.sheets import EMPTY, book, places, table, vehicle_of
from witnessmark.exchange.spreadsheet import read_spreadsheet
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import Described, Guessed, Owned, Wanted
from witnessmark.vehicle.things import Figure, Joint, Part, Vehicle

Rows = list[list[Any]]

PARTS: Rows = [
    ["name", "side", "place", "part of", "number", "where", "note"],
    ["Wheel", "left rear", "rear axle", "left rear brake", 1, "shelf 3", "rim dented"],
    ["brake drum", "rear left", "rear axle", "left rear brake", None, None, None],
]
WAYS = "wheel, left rear; brake drum, left rear or wheel, left rear"
JOINTS: Rows = [
    [
        "name", "side", "place", "part of", "kind", "holds", "behind", "number", "figure", "source", "where",
        "thread", "grade", "fluid", "quantity", "size", "if missed", "note",
    ],
    [
        "wheel nuts", "left rear", "rear axle", "left rear brake", "wheel nuts", "wheel", None, 5,
        "45 to 50 lbf ft", "owner's book", "page 12", "1/2 UNF", "R", None, None, None, None, "one stud new",
    ],
    [
        "axle filler", None, "rear axle", None, "fill-and-drain-plug", None, WAYS,
        None, None, None, None, None, None, "gear oil", "1.1 L", "22 mm", "wets", None,
    ],
]  # fmt: skip
JOBS: Rows = [
    ["job", "thing", "well", "likely", "if it fights"],
    ["renew", "brake drum, left rear", 40, "1 h 30", "5 h"],
    ["Make good", "left rear brake", None, None, None],
]
STOCK: Rows = [["item", "number", "size"], ["split pin", 20, "3.2 x 50"], ["grease", None, None]]


@pytest.fixture
def full(tmp_path: Path) -> Path:
    return book(tmp_path / "ten.xlsx", stock=STOCK, jobs=JOBS, joints=JOINTS, parts=PARTS)


def test_every_column_arrives_where_it_belongs(full: Path) -> None:
    proposal = read_spreadsheet(full, EMPTY)
    assert proposal.troubles == ()
    assert proposal.rows_good == 8
    assert proposal.facts == (
        Described(
            parts=(
                Part(
                    name="wheel, left rear",
                    side="left rear",
                    place="rear axle",
                    assembly="left rear brake",
                    where="shelf 3",
                    note="rim dented",
                ),
            )
        ),
        Described(
            parts=(
                Part(
                    name="brake drum, left rear",
                    side="left rear",
                    place="rear axle",
                    assembly="left rear brake",
                ),
            )
        ),
        Described(
            joints=(
                Joint(
                    name="wheel nuts, left rear",
                    side="left rear",
                    place="rear axle",
                    assembly="left rear brake",
                    kind="wheel-nuts",
                    holds=("wheel, left rear",),
                    number=5,
                    figure=Figure(
                        low=pytest.approx(61.01, abs=0.01),  # type: ignore[arg-type]
                        high=pytest.approx(67.79, abs=0.01),  # type: ignore[arg-type]
                        unit="N·m",
                        typed="45 to 50 lbf ft",
                        standing="owner's book",
                        where="page 12",
                    ),
                    thread="1/2 UNF",
                    grade="R",
                    note="one stud new",
                ),
            )
        ),
        Described(
            joints=(
                Joint(
                    name="axle filler",
                    place="rear axle",
                    kind="fill-and-drain-plug",
                    behind=(("wheel, left rear", "brake drum, left rear"), ("wheel, left rear",)),
                    fluid="gear oil",
                    quantity=Quantity("1.1 L", 1.1, "L"),
                    size="22 mm",
                    if_missed="wets",
                ),
            )
        ),
        Wanted(at=("brake drum, left rear",), job="renew"),
        Guessed(at=("brake drum, left rear",), job="renew", low=40.0, likely=90.0, high=300.0),
        Wanted(at=("left rear brake",), job="make good"),
        Owned(item="split pin", number=20.0, size="3.2 x 50"),
        Owned(item="grease"),
    )


def test_a_side_is_not_needed_in_a_name_when_one_thing_alone_is_called_so(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx", parts=[["name"], ["wheel"]], joints=[["name", "holds"], ["nuts", "wheel"]]
    )
    (_, joint) = read_spreadsheet(path, EMPTY).facts
    assert joint == Described(joints=(Joint(name="nuts", holds=("wheel",)),))


def test_each_row_keeps_its_words_and_its_place(full: Path) -> None:
    (row,) = [row for row in read_spreadsheet(full, EMPTY).good if (row.sheet, row.row) == ("jobs", 2)]
    typed = "job renew; thing brake drum, left rear; well 40; likely 1 h 30; if it fights 5 h"
    assert row.words == f"spreadsheet, jobs, row 2: {typed}"


GUESSED = ["job", "thing", "well", "likely", "if it fights"]
BAD: list[tuple[str, list[str], list[Any], str, str]] = [
    ("parts", ["name", "side"], ["wheel", "top left"], "side", "left front"),
    ("parts", ["name", "side"], ["wheel", "nearside rear"], "side", "country"),
    ("parts", ["name", "number"], ["wheel", "2.5"], "number", "whole number"),
    ("parts", ["name", "number"], ["wheel", "0"], "number", "whole number"),
    ("parts", ["name", "number"], ["wheel", "some"], "number", ""),
    ("parts", ["name", "note"], [None, "no name at all"], "name", "brake drum"),
    ("joints", ["name", "kind"], ["nuts", "weel nuts"], "kind", "kind of joint"),
    ("joints", ["name", "holds"], ["nuts", "wheal"], "holds", "a name the record knows"),
    ("joints", ["name", "behind"], ["nuts", "wheal or drum"], "behind", "a name the record knows"),
    ("joints", ["name", "holds"], ["nuts", "nuts"], "holds", "a name the record knows"),
    ("joints", ["name", "figure"], ["nuts", "47"], "figure", "with its unit"),
    ("joints", ["name", "figure"], ["nuts", "tight"], "figure", "with its unit"),
    ("joints", ["name", "figure"], ["nuts", "50 to 45 N·m"], "figure", "lower figure first"),
    ("joints", ["name", "figure"], ["nuts", "45 mm to 50 N·m"], "figure", "with its unit"),
    ("joints", ["name", "figure", "source"], ["nuts", "47 N·m", "the net"], "source", "owner's book"),
    ("joints", ["name", "source"], ["nuts", "owner's book"], "source", "a figure beside it"),
    ("joints", ["name", "where"], ["nuts", "page 12"], "where", "a figure beside it"),
    ("joints", ["name", "quantity"], ["nuts", "two"], "quantity", "unit"),
    ("joints", ["name", "if missed"], ["nuts", "A1"], "if missed", "lets go"),
    ("jobs", ["job", "thing"], ["repair", "gearbox"], "job", "make good"),
    ("jobs", ["job", "thing"], ["renew", "gearboks"], "thing", "a name the record knows"),
    ("jobs", ["job", "thing"], ["renew", None], "thing", "wheel cylinder"),
    ("jobs", ["job", "thing", "well"], ["renew", "gearbox", "40"], "likely", "well, likely"),
    ("jobs", GUESSED, ["renew", "gearbox", 9, 8, 7], "likely", "well, likely"),
    ("jobs", GUESSED, ["renew", "gearbox", 9, "8 mm", 7], "likely", "min"),
    ("jobs", ["job", "thing", "well"], ["renew", "gearbox", "0"], "well", "more than no time"),
    ("stock", ["item", "number"], ["pin", "-3"], "number", "above 0"),
    ("stock", ["item", "number"], [None, "3"], "item", "split pin"),
]  # fmt: skip


@pytest.mark.parametrize(("sheet", "headings", "cells", "column", "holds"), BAD)
def test_a_bad_row_is_named_with_what_would_hold_and_the_good_one_waits(
    tmp_path: Path, sheet: str, headings: list[str], cells: list[object], column: str, holds: str
) -> None:
    good: dict[str, list[Any]] = {
        "parts": ["gearbox"],
        "joints": ["gearbox bolts"],
        "jobs": ["renew", "gearbox"],
        "stock": ["pin"],
    }
    rows: Rows = [headings, cells, good[sheet]]
    path = book(tmp_path / "a.xlsx", **{sheet: rows})
    proposal = read_spreadsheet(path, vehicle_of(Part(name="gearbox")))
    assert places(proposal.troubles) == [(sheet, 2, column)]
    assert holds in proposal.troubles[0].holds + proposal.troubles[0].given
    assert [row.row for row in proposal.good] == [3]


SLAVE = ("wheel", "drum", "clutch slave or cable", "cable")


@pytest.mark.parametrize(
    ("typed", "ways"),
    [
        ("wheel", (("wheel",),)),
        ("wheel; drum", (("wheel", "drum"),)),
        ("wheel or drum", (("wheel",), ("drum",))),
        ("wheel;drum OR drum ; cable", (("wheel", "drum"), ("drum", "cable"))),
        ("wheel or drum or cable", (("wheel",), ("drum",), ("cable",))),
        ("clutch slave or cable", (("clutch slave or cable",),)),
        ("wheel; clutch slave or cable; drum", (("wheel", "clutch slave or cable", "drum"),)),
        ("wheel or clutch slave or cable or drum", (("wheel",), ("clutch slave or cable",), ("drum",))),
        ("wheel; clutch slave or cable or cable", (("wheel", "clutch slave or cable"), ("cable",))),
        ("wheel;", (("wheel",),)),
    ],
)
def test_ways_in_are_parted_at_or_unless_it_stands_in_a_name(
    tmp_path: Path, typed: str, ways: tuple[tuple[str, ...], ...]
) -> None:
    path = book(tmp_path / "a.xlsx", joints=[["name", "behind"], ["nuts", typed]])
    proposal = read_spreadsheet(path, vehicle_of(*(Part(name=name) for name in SLAVE)))
    assert proposal.troubles == ()
    assert proposal.facts == (Described(joints=(Joint(name="nuts", behind=ways),)),)


def test_everything_wrong_in_a_row_is_told_at_once(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx",
        joints=[["name", "side", "kind", "number", "figure"], ["nuts", "up", "weel", "x", "47"]],
    )
    assert places(read_spreadsheet(path, EMPTY).troubles) == [
        ("joints", 2, "side"),
        ("joints", 2, "kind"),
        ("joints", 2, "number"),
        ("joints", 2, "figure"),
    ]


def test_near_names_are_offered(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", joints=[["name", "kind", "holds"], ["nuts", "weel nuts", "gear box"]])
    kind, holds = read_spreadsheet(path, vehicle_of(Part(name="gearbox"))).troubles
    assert "wheel-nuts" in kind.near
    assert holds.near == ("gearbox",)


def test_a_row_that_leans_on_a_bad_row_waits_as_well_however_long_the_chain(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx",
        parts=[["name", "number"], ["wheel", "none"], ["hub", 1]],
        joints=[
            ["name", "holds", "behind"],
            ["nuts", "wheel", None],
            ["drum", "hub", "nuts"],
            ["cap", "hub", None],
        ],
        jobs=[["job", "thing"], ["renew", "drum"], ["renew", "cap"]],
    )
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [
        ("parts", 2, "number"),
        ("joints", 2, "holds"),
        ("joints", 3, "behind"),
        ("jobs", 2, "thing"),
    ]
    assert [(row.sheet, row.row) for row in proposal.good] == [("parts", 3), ("joints", 4), ("jobs", 3)]


def test_a_bad_row_for_a_thing_the_record_knows_holds_nobody_up(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx",
        parts=[["name", "number"], ["wheel", "none"]],
        joints=[["name", "holds"], ["nuts", "wheel"]],
    )
    proposal = read_spreadsheet(path, vehicle_of(Part(name="wheel")))
    assert places(proposal.troubles) == [("parts", 2, "number")]
    assert proposal.rows_good == 1


def test_the_same_thing_twice_is_told(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx", parts=[["name", "side"], ["wheel", "left rear"], ["Wheel, left rear", None]]
    )
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [("parts", 3, "name")]
    assert "row 2" in proposal.troubles[0].given


# ---- what the record knows already -------------------------------------------------------------

BOOK = Figure(low=47, high=47, unit="N·m", typed="47 N·m", standing="owner's book", where="page 3")


def test_an_empty_cell_leaves_what_the_record_knew(tmp_path: Path) -> None:
    known = Joint(name="nuts", kind="wheel-nuts", figure=BOOK, holds=("wheel",), note="old", number=4)
    path = book(tmp_path / "a.xlsx", joints=[["name", "note", "kind", "figure"], ["nuts", "new", None, None]])
    (fact,) = read_spreadsheet(path, vehicle_of(known)).facts
    assert fact == Described(
        joints=(Joint(name="nuts", kind="wheel-nuts", figure=BOOK, holds=("wheel",), note="new", number=4),)
    )


def test_a_figure_of_lower_standing_does_not_take_the_books_place(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", joints=[["name", "figure", "source"], ["nuts", "50 N·m", "measured"]])
    proposal = read_spreadsheet(path, vehicle_of(Joint(name="nuts", figure=BOOK)))
    assert places(proposal.troubles) == [("joints", 2, "figure")]
    assert "47 N·m, owner's book" in proposal.troubles[0].given


def test_a_figure_of_the_same_or_higher_standing_does(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx", joints=[["name", "figure", "source"], ["nuts", "50 N·m", "owner's book"]]
    )
    guess = Figure(low=1, high=1, unit="N·m", typed="1 N·m")
    for before in (BOOK, guess, None):
        (fact,) = read_spreadsheet(path, vehicle_of(Joint(name="nuts", figure=before))).facts
        assert isinstance(fact, Described)
        assert fact.joints[0].figure == Figure(
            low=50, high=50, unit="N·m", typed="50 N·m", standing="owner's book"
        )


def test_a_figure_without_a_source_is_a_guess(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", joints=[["name", "figure"], ["nuts", "50 N·m"]])
    (fact,) = read_spreadsheet(path, EMPTY).facts
    assert isinstance(fact, Described)
    assert fact.joints[0].figure == Figure(low=50, high=50, unit="N·m", typed="50 N·m", standing="guess")


def test_near_and_off_are_understood_once_the_country_is_known(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", parts=[["name", "side"], ["wheel", "nearside rear"]])
    for country, side in (("GB", "left rear"), ("DE", "right rear")):
        (fact,) = read_spreadsheet(path, Vehicle(country=country)).facts
        assert isinstance(fact, Described)
        assert fact.parts[0].name == f"wheel, {side}"


# ---- headings and sheets -----------------------------------------------------------------------


def test_an_unknown_column_is_named_never_dropped_in_silence(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", parts=[["name", "colour", "plaice"], ["wheel", "red", "rear axle"]])
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [("parts", 1, "colour"), ("parts", 1, "plaice")]
    assert proposal.troubles[1].near == ("place",)
    assert proposal.rows_good == 1


def test_a_value_under_no_heading_is_named(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", parts=[["name", None], ["wheel", "red"], ["hub", None, "blue"]])
    assert places(read_spreadsheet(path, EMPTY).troubles) == [("parts", 2, "B"), ("parts", 3, "C")]


@pytest.mark.parametrize("headings", [["side", "note"], ["name", "name"]])
def test_without_one_column_of_names_no_row_is_read(tmp_path: Path, headings: list[str]) -> None:
    path = book(tmp_path / "a.xlsx", parts=[headings, ["left", "x"]])
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [("parts", 1, "name")]
    assert proposal.rows_good == 0


def test_headings_may_be_written_large_and_stand_in_any_order_and_below_empty_rows(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx",
        Joints=[[], [], ["If_Missed", " PART OF ", "Name"], [], ["wets", "Axle", "cover"]],
    )
    (row,) = read_spreadsheet(path, EMPTY).good
    assert row.row == 5
    assert row.facts == (Described(joints=(Joint(name="cover", assembly="axle", if_missed="wets"),)),)


def test_a_sheet_with_another_name_is_told_by_its_headings(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx", Tabelle1=[["item"], ["pin"]], Notes=[["call the plater"]], owed=[["what"], ["x"]]
    )
    proposal = read_spreadsheet(path, EMPTY)
    assert proposal.facts == (Owned(item="pin"),)
    assert places(proposal.troubles) == [("Notes", 1, "")]


def test_trouble_on_a_sheet_with_another_name_is_told_under_that_name(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", Tabelle1=[["item", "number"], ["pin", "few"]])
    assert places(read_spreadsheet(path, EMPTY).troubles) == [("Tabelle1", 2, "number")]


# ---- what spreadsheet programs make of cells -----------------------------------------------------


def test_a_size_that_became_a_date_is_named(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", joints=[["name", "thread"], ["nuts", date(2026, 2, 1)], ["hub", "1/2"]])
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [("joints", 2, "thread")]
    assert "date" in proposal.troubles[0].given


def test_a_formula_nobody_worked_out_is_named_not_taken_for_an_empty_cell(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", parts=[["name", "number"], ["wheel", "=2+2"]])
    proposal = read_spreadsheet(path, EMPTY)
    assert places(proposal.troubles) == [("parts", 2, "number")]
    assert "=2+2" in proposal.troubles[0].given


def test_the_answer_of_a_formula_that_went_wrong_is_named(tmp_path: Path) -> None:
    path = book(tmp_path / "a.xlsx", parts=[["name", "note"], ["wheel", "#REF!"]])
    assert places(read_spreadsheet(path, EMPTY).troubles) == [("parts", 2, "note")]


def test_a_guarded_cell_is_itself_again(tmp_path: Path) -> None:
    path = book(
        tmp_path / "a.xlsx", parts=[["name", "note"], ["wheel", "'-5 mm short"], ["hub", "'tis fine"]]
    )
    notes = [part.note for fact in read_spreadsheet(path, EMPTY).facts for part in fact.parts]  # type: ignore[union-attr]
    assert notes == ["-5 mm short", "'tis fine"]


# ---- CSV ---------------------------------------------------------------------------------------


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_a_csv_tells_its_separator_its_encoding_and_its_subject(
    tmp_path: Path, delimiter: str, encoding: str
) -> None:
    path = table(
        tmp_path / "a.csv",
        ["name", "kind", "note"],
        ["nuts", "wheel nuts", "größer, dicker; \t so"],
        delimiter=delimiter,
        encoding=encoding,
    )
    proposal = read_spreadsheet(path, EMPTY)
    assert proposal.troubles == ()
    assert proposal.facts == (
        Described(joints=(Joint(name="nuts", kind="wheel-nuts", note="größer, dicker; \t so"),)),
    )


def test_rows_of_a_csv_are_counted_as_a_spreadsheet_program_shows_them(tmp_path: Path) -> None:
    path = table(tmp_path / "a.csv", ["item", "size"], [], ["pin", "two\nlines"], ["tin", ""], ["", "3 mm"])
    proposal = read_spreadsheet(path, EMPTY)
    assert [row.row for row in proposal.good] == [3, 4]
    assert places(proposal.troubles) == [("stock", 5, "item")]
