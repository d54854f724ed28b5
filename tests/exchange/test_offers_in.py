"""Offers and suppliers from a spreadsheet: taken whole, or refused cell by cell in three parts."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.exchange.sheets import EMPTY
from witnessmark.exchange.spreadsheet import Proposal, read_spreadsheet
from witnessmark.journal.facts import Offered, PostStep, Quoted


def read(tmp_path: Path, *rows: str) -> Proposal:
    file = tmp_path / "prices.csv"
    file.write_text("\n".join(rows), encoding="utf-8")
    return read_spreadsheet(file, EMPTY)


def test_an_offer_is_taken_with_all_it_says(tmp_path: Path) -> None:
    found = read(
        tmp_path,
        "item;supplier;size;their number;price;pack;weight;quick;days;slow",
        "O-ring;Packning Norrvik;47 x 2.62;R-4726;€6,40;10;0.2 kg;1;2;4",
    )
    assert found.troubles == ()
    assert found.facts == (
        Offered(
            item="O-ring", supplier="Packning Norrvik", size="47 x 2.62", number="R-4726", price=6.4,
            currency="EUR", pack=10, grams=200, quick_days=1, days=2, slow_days=4,
        ),
    )  # fmt: skip


def test_terms_are_taken_with_all_they_say(tmp_path: Path) -> None:
    found = read(
        tmp_path,
        "supplier;post;free above;minimum;currency;rate;duty;quick;days;slow;cut-off",
        "Packning Norrvik;3.50 to 1 kg; 4.95;60;10;EUR;0.86;4.5;1;2;4;16:00".replace("kg; 4", "kg, 4"),
    )
    assert [t.column for t in found.troubles] == ["post"]
    found = read(
        tmp_path,
        "supplier,post,free above,minimum,currency,rate,duty,quick,days,slow,cut-off",
        "Packning Norrvik,3.50 to 1 kg; 4.95,60,10,EUR,0.86,4.5 %,1,2,4,9.30",
    )
    assert found.troubles == ()
    assert found.facts == (
        Quoted(
            supplier="Packning Norrvik", post=(PostStep(price=3.5, most_grams=1000), PostStep(price=4.95)),
            free_above=60, minimum=10, currency="EUR", rate="0.86", duty=4.5, quick_days=1, days=2,
            slow_days=4, cut_off="09:30",
        ),
    )  # fmt: skip


BAD_OFFERS = {
    "price": ("-6.40", "six quid", "6.40 doubloons", ""),
    "pack": ("0", "-1", "1.5", "some"),
    "weight": ("-20", "heavy"),
    "days": ("-1", "400", "soon"),
    "for": ("moonbeam",),
    "supplier": ("",),
}


@pytest.mark.parametrize(("column", "cell"), [(c, cell) for c, cells in BAD_OFFERS.items() for cell in cells])
def test_a_bad_cell_of_an_offer_is_named(tmp_path: Path, column: str, cell: str) -> None:
    row = {
        "item": "seal",
        "supplier": "A",
        "price": "6.40",
        "pack": "1",
        "weight": "1",
        "days": "2",
        "for": "",
    }
    row[column] = cell
    found = read(tmp_path, ";".join(row), ";".join(row.values()))
    assert found.good == ()
    assert {(t.row, t.column) for t in found.troubles} == {(2, column)}
    assert all(t.given and t.holds and t.do for t in found.troubles)


BAD_TERMS = {
    "post": ("-3", "4.95 to 5 kg, 3.50 to 1 kg", "free"),
    "free above": ("-60",),
    "minimum": ("lots",),
    "currency": ("XYZ", "pounds of flesh"),
    "rate": ("0", "-0.86", "good"),
    "duty": ("-1", "300"),
    "cut-off": ("25:00", "teatime"),
}


@pytest.mark.parametrize(("column", "cell"), [(c, cell) for c, cells in BAD_TERMS.items() for cell in cells])
def test_a_bad_cell_of_terms_is_named(tmp_path: Path, column: str, cell: str) -> None:
    row = {"supplier": "A", "post": "3.50", column: cell}
    found = read(tmp_path, ";".join(row), ";".join(row.values()))
    assert found.good == ()
    assert {(t.row, t.column) for t in found.troubles} == {(2, column)}
    assert all(t.given and t.holds and t.do for t in found.troubles)


def test_days_out_of_order_or_without_the_likely_ones_are_refused(tmp_path: Path) -> None:
    head = "item;supplier;price;quick;days;slow"
    assert [t.column for t in read(tmp_path, head, "seal;A;1;4;2;8").troubles] == ["days"]
    assert [t.column for t in read(tmp_path, head, "seal;A;1;1;;8").troubles] == ["days"]
