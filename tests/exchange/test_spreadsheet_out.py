"""What is written out is looked at three ways: by our reader, by the library, and in its bare XML."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.exchange.raw_xlsx import has_formula, raw_rows
from tests.exchange.sheets import EMPTY, vehicle_of
from witnessmark.exchange.columns import SHEETS, headings_of
from witnessmark.exchange.rows_out import joint_rows, part_rows
from witnessmark.exchange.spreadsheet import read_spreadsheet
from witnessmark.exchange.spreadsheet_out import write_blank, write_csv, write_spreadsheet
from witnessmark.ground.errors import BadInput
from witnessmark.ground.missed import IfMissed
from witnessmark.ground.pedigree import STANDINGS
from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import Described
from witnessmark.vehicle.sides import SIDES, whole_name
from witnessmark.vehicle.things import Figure, Joint, Part, Vehicle

WHEEL = Part(
    name="wheel, left rear", side="left rear", place="rear axle", assembly="left rear brake", where="shelf 3"
)
NUTS = Joint(
    name="wheel nuts, left rear",
    side="left rear",
    kind="wheel-nuts",
    holds=("wheel, left rear",),
    number=5,
    figure=Figure(
        low=61.0118,
        high=67.7909,
        unit="N·m",
        typed="45 to 50 lbf ft",
        standing="owner's book",
        where="page 12",
    ),
    thread="1/2 UNF",
    note="=HYPERLINK(1)",
)
FILLER = Joint(
    name="axle filler",
    kind="fill-and-drain-plug",
    behind=(("wheel, left rear", "wheel nuts, left rear"), ("wheel nuts, left rear",)),
    fluid="gear oil",
    quantity=Quantity("2 pints", 1.1365, "L"),
    size="22 mm",
    if_missed="wrecks",
)
TEN = vehicle_of(WHEEL, NUTS, FILLER)


def described_by(path: Path, known: Vehicle = EMPTY) -> Vehicle:
    """The vehicle a spreadsheet describes."""
    proposal = read_spreadsheet(path, known)
    assert proposal.troubles == ()
    things: list[Part | Joint] = []
    for fact in proposal.facts:
        assert isinstance(fact, Described)
        things += [*fact.parts, *fact.joints]
    return vehicle_of(*things)


def test_written_and_read_again_it_describes_the_same_vehicle(tmp_path: Path) -> None:
    write_spreadsheet(tmp_path / "ten.xlsx", TEN)
    back = described_by(tmp_path / "ten.xlsx")
    assert back.parts == TEN.parts
    assert list(back.joints) == list(TEN.joints)
    nuts, filler = back.joints["wheel nuts, left rear"], back.joints["axle filler"]
    assert (nuts.note, nuts.number, nuts.holds) == ("=HYPERLINK(1)", 5, ("wheel, left rear",))
    assert nuts.figure is not None
    assert nuts.figure.low == pytest.approx(61.0118)
    assert nuts.figure.where == "page 12"
    assert (filler.behind, filler.size, filler.if_missed) == (FILLER.behind, "22 mm", "wrecks")


def test_the_library_sees_the_same_cells(tmp_path: Path) -> None:
    write_spreadsheet(tmp_path / "ten.xlsx", TEN)
    book = openpyxl.load_workbook(tmp_path / "ten.xlsx")
    assert book.sheetnames == ["parts", "joints"]
    headings, wheel = book["parts"].iter_rows(values_only=True)
    assert headings == ("name", "side", "place", "part of", "number", "where", "note")
    assert wheel == ("wheel", "left rear", "rear axle", "left rear brake", 1, "shelf 3", None)
    thread = book["joints"]["L2"]
    assert (thread.value, thread.number_format) == ("1/2 UNF", "@")
    book.close()


def test_the_bare_xml_holds_the_same_cells_and_no_formula(tmp_path: Path) -> None:
    write_spreadsheet(tmp_path / "ten.xlsx", TEN)
    headings, nuts, filler = raw_rows(tmp_path / "ten.xlsx", "joints")
    letter = {heading: column for column, heading in headings.items()}
    assert tuple(headings.values()) == headings_of("joints")
    assert nuts[letter["kind"]] == "wheel-nuts"
    assert nuts[letter["number"]] == "5"
    assert nuts[letter["note"]] == "'=HYPERLINK(1)"
    assert filler[letter["behind"]] == "wheel, left rear; wheel nuts, left rear or wheel nuts, left rear"
    assert letter["side"] not in filler
    assert not has_formula(tmp_path / "ten.xlsx")


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\t=", "'="])
def test_nothing_written_counts_as_a_formula_in_xlsx_or_csv(tmp_path: Path, sign: str) -> None:
    text = f"{sign}cmd|' /C calc'!A0"
    part = Part(name="wheel", note=text, place=text)
    write_spreadsheet(tmp_path / "a.xlsx", vehicle_of(part))
    write_csv(tmp_path / "a.csv", "parts", part_rows(vehicle_of(part)))
    assert not has_formula(tmp_path / "a.xlsx")
    for row in raw_rows(tmp_path / "a.xlsx", "parts"):
        assert not any(cell.startswith(("=", "+", "-", "@", "\t")) for cell in row.values())
    assert f",'{sign}cmd" in (tmp_path / "a.csv").read_text("utf-8-sig").replace('"', "")
    for name in ("a.xlsx", "a.csv"):
        assert described_by(tmp_path / name).parts["wheel"].note == text.strip()


def test_what_is_owed_is_written_to_be_read_and_never_read_back(tmp_path: Path) -> None:
    owed: list[dict[str, object]] = [
        {"id": "K7PM", "what": "split pin new", "if_missed": "lets_go", "joint": "hub nut", "line": 12},
        {"id": "Q2XD", "what": "level", "if_missed": "wets", "joint": None, "part": "-", "due": "2026-03-14"},
    ]  # fmt: skip
    write_spreadsheet(tmp_path / "ten.xlsx", TEN, owed)
    headings, first, second = raw_rows(tmp_path / "ten.xlsx", "owed")
    letter = {heading: column for column, heading in headings.items()}
    assert (first[letter["if missed"]], first[letter["line"]], first[letter["what"]]) == (
        "lets go",
        "12",
        "split pin new",
    )
    assert (second[letter["part"]], second[letter["due"]]) == ("'-", "2026-03-14")
    assert described_by(tmp_path / "ten.xlsx").parts == TEN.parts


def test_a_blank_one_offers_the_words_and_proposes_nothing(tmp_path: Path) -> None:
    write_blank(tmp_path / "blank.xlsx")
    proposal = read_spreadsheet(tmp_path / "blank.xlsx", EMPTY)
    assert (proposal.facts, proposal.troubles) == ((), ())
    book = openpyxl.load_workbook(tmp_path / "blank.xlsx")
    assert book.sheetnames == list(SHEETS)
    offered = [rule.formula1 for rule in book["joints"].data_validations.dataValidation]
    assert f'"{",".join(SIDES)}"' in offered
    assert len(offered) == 3
    book.close()


def test_a_vehicle_nobody_has_described_makes_empty_sheets(tmp_path: Path) -> None:
    write_spreadsheet(tmp_path / "a.xlsx", EMPTY)
    assert described_by(tmp_path / "a.xlsx") == EMPTY


def test_a_place_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be written"):
        write_spreadsheet(tmp_path / "gone" / "a.xlsx", TEN)
    with pytest.raises(BadInput, match="cannot be written"):
        write_blank(tmp_path / "gone" / "a.xlsx")
    with pytest.raises(BadInput, match="cannot be written"):
        write_csv(tmp_path / "gone" / "a.csv", "parts", [])


def test_a_control_character_does_not_stop_the_export(tmp_path: Path) -> None:
    write_spreadsheet(tmp_path / "a.xlsx", vehicle_of(Part(name="wheel", note="bell \x07 rang")))
    assert described_by(tmp_path / "a.xlsx").parts["wheel"].note == "bell \N{REPLACEMENT CHARACTER} rang"


# ---- any vehicle -------------------------------------------------------------------------------

TEXT = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn"]), max_size=12).map(
    str.strip
)
PLAIN = st.sampled_from(["wheel", "hub nut", "brake drum", "king pin", "slave or cable", "steering box"])
NAMES = st.builds(whole_name, PLAIN, st.sampled_from(["", *SIDES]))
NUMBERS = st.integers(1, 99)
TYPED = st.sampled_from(["47 N·m", "45 to 50 lbf ft", "0.05-0.1 mm", "18 psi", "1 1/2 in", "10 thou"])


def figures() -> st.SearchStrategy[Figure]:
    """Figures as typed, and figures whose words say nothing."""
    made = st.builds(
        Figure,
        low=st.floats(0.001, 900),
        high=st.floats(900, 9000),
        unit=st.sampled_from(["N·m", "mm", "bar"]),
        typed=st.sampled_from(["", "about that", "12"]),
        standing=st.sampled_from(STANDINGS),
        where=TEXT,
    )
    return made | made.map(lambda figure: Figure(low=figure.low, high=figure.low, unit="N·m", typed="so"))


@st.composite
def vehicles(draw: st.DrawFn) -> Vehicle:
    names = draw(st.lists(NAMES, unique=True, min_size=1, max_size=6))
    cut = draw(st.integers(0, len(names)))
    heading = {"place": TEXT, "note": TEXT, "number": NUMBERS, "assembly": st.sampled_from(["", "rear axle"])}
    parts = [draw(st.builds(Part, name=st.just(name), where=TEXT, **heading)) for name in names[:cut]]
    joint = st.builds(
        Joint,
        name=st.just("later"),
        kind=st.sampled_from(["unsaid", "wheel-nuts", "shaft-seal"]),
        holds=st.lists(st.sampled_from(names[:cut]), unique=True, max_size=2).map(tuple)
        if cut
        else st.just(()),
        behind=st.lists(st.lists(st.sampled_from(names), min_size=1, max_size=2).map(tuple), max_size=2).map(
            tuple
        ),
        figure=st.none() | figures(),
        thread=TEXT,
        grade=TEXT,
        fluid=TEXT,
        quantity=st.none() | st.builds(Quantity, st.just("enough"), st.floats(0.01, 99), st.just("L")),
        size=TEXT,
        if_missed=st.sampled_from(["", *(rung.key for rung in IfMissed)]),
        **heading,
    )
    joints = [renamed(draw(joint), name) for name in names[cut:]]
    return vehicle_of(*parts, *joints)


def renamed(joint: Joint, name: str) -> Joint:
    """The joint under another name, not behind itself."""
    behind = tuple(way for way in joint.behind if name not in way)
    return Joint(**{f: getattr(joint, f) for f in joint.__struct_fields__} | {"name": name, "behind": behind})


def untyped(thing: Part | Joint) -> tuple[object, ...]:
    """A thing without its words for figures and its side, which its name carries."""
    skip = {"side", "figure", "quantity"}
    plain = [getattr(thing, f) for f in thing.__struct_fields__ if f not in skip]
    if isinstance(thing, Joint) and thing.figure:
        plain += [
            thing.figure.low,
            thing.figure.high,
            thing.figure.unit,
            thing.figure.standing,
            thing.figure.where,
        ]
    if isinstance(thing, Joint) and thing.quantity:
        plain += [thing.quantity.value, thing.quantity.unit]
    return tuple(plain)


@settings(max_examples=60)
@given(vehicles())
def test_every_vehicle_comes_back(tmp_path_factory: pytest.TempPathFactory, vehicle: Vehicle) -> None:
    folder = tmp_path_factory.getbasetemp()
    write_spreadsheet(folder / "any.xlsx", vehicle)
    back = described_by(folder / "any.xlsx")
    for before, after in ((vehicle.parts, back.parts), (vehicle.joints, back.joints)):
        assert [untyped(thing) for thing in after.values()] == [untyped(thing) for thing in before.values()]


@settings(max_examples=60)
@given(vehicles())
def test_every_vehicle_comes_back_from_two_csv_files(
    tmp_path_factory: pytest.TempPathFactory, vehicle: Vehicle
) -> None:
    folder = tmp_path_factory.getbasetemp()
    write_csv(folder / "parts.csv", "parts", part_rows(vehicle))
    write_csv(folder / "joints.csv", "joints", joint_rows(vehicle))
    parts = described_by(folder / "parts.csv").parts
    joints = described_by(folder / "joints.csv", vehicle_of(*vehicle.parts.values())).joints
    assert [untyped(part) for part in parts.values()] == [untyped(part) for part in vehicle.parts.values()]
    assert [untyped(joint) for joint in joints.values()] == [
        untyped(joint) for joint in vehicle.joints.values()
    ]
