"""A sheet as rows of named cells, and the trouble found on the way there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from difflib import get_close_matches
from typing import TypeVar

from msgspec import Struct

from witnessmark.exchange.columns import SHEETS, headings_of, plain_heading
from witnessmark.ground.errors import BadInput

T = TypeVar("T")


class Cell(Struct, frozen=True):
    """One cell as text; `odd` says why it cannot be taken as it stands, "" when it can."""

    text: str
    odd: str = ""


class RawSheet(Struct, frozen=True):
    """A sheet as it lies in the file: rows by their numbers as a spreadsheet program shows them."""

    name: str
    rows: tuple[tuple[int, tuple[Cell, ...]], ...]


class RowTrouble(Struct, frozen=True, kw_only=True):
    """One thing wrong in a spreadsheet: where it stands, what was given, what would hold, what to do."""

    sheet: str
    row: int
    column: str
    given: str
    holds: str
    do: str
    near: tuple[str, ...] = ()


class Row:
    """One row under its headings, read cell by cell; what cannot be read is noted, all of it at once."""

    def __init__(self, sheet: str, number: int, cells: Mapping[str, Cell], title: str = "") -> None:
        self.sheet = sheet
        self.title = title or sheet
        self.number = number
        self.cells = cells
        self.noted: list[tuple[int, RowTrouble]] = []
        for column in SHEETS[sheet]:
            if column.needed and not self.text(column.heading):
                self.note(column.heading, _empty(column.heading, column.example))
            elif odd := self._odd(column.heading):
                self.note(column.heading, odd)

    def text(self, heading: str) -> str:
        """The cell's text, "" where it is empty."""
        cell = self.cells.get(heading)
        return cell.text.strip() if cell else ""

    def read(self, heading: str, reader: Callable[[str], T], otherwise: T) -> T:
        """The cell through a reader; `otherwise` where it is empty or the reader refuses it."""
        text = self.text(heading)
        if not text or self._odd(heading):
            return otherwise
        try:
            return reader(text)
        except BadInput as trouble:
            self.note(heading, trouble)
            return otherwise

    def note(self, heading: str, trouble: BadInput) -> None:
        """Note trouble in a cell."""
        place = headings_of(self.sheet).index(heading)
        self.noted.append((place, trouble_at(self.title, self.number, heading, trouble)))

    @property
    def troubles(self) -> list[RowTrouble]:
        """What is wrong in the row, by column."""
        return [trouble for _, trouble in sorted(self.noted, key=lambda pair: pair[0])]

    @property
    def as_typed(self) -> str:
        """The row in one line, every filled cell of it."""
        filled = "; ".join(f"{heading} {self.text(heading)}" for heading in self.cells if self.text(heading))
        return f"spreadsheet, {self.title}, row {self.number}: {filled}"

    def _odd(self, heading: str) -> BadInput | None:
        cell = self.cells.get(heading)
        if cell is None or not cell.odd:
            return None
        return BadInput(
            given=f"{cell.text!r} is {cell.odd}", holds="plain text", do="Type it as text, then save again."
        )


def trouble_at(sheet: str, row: int, column: str, trouble: BadInput) -> RowTrouble:
    """Bad input with its place in the spreadsheet."""
    return RowTrouble(
        sheet=sheet,
        row=row,
        column=column,
        given=trouble.given,
        holds=trouble.holds,
        do=trouble.do,
        near=trouble.near,
    )


def rows_of(raw: RawSheet, sheet: str) -> tuple[list[Row], list[RowTrouble]]:
    """The filled rows of a sheet under its headings, and what is wrong with the headings."""
    if not raw.rows:
        return [], []
    (at, top), *below = raw.rows
    headings = [plain_heading(cell.text) for cell in top]
    troubles = [trouble_at(raw.name, at, heading, bad) for heading, bad in _bad_headings(headings, sheet)]
    known = {place: name for place, name in enumerate(headings) if name in headings_of(sheet)}
    rows: list[Row] = []
    for number, cells in below:
        stray = [
            place for place, cell in enumerate(cells) if cell.text.strip() and not _headed(headings, place)
        ]
        troubles += [
            trouble_at(raw.name, number, _letter(place), _no_heading(cells[place])) for place in stray
        ]
        filled = {known[p]: cell for p, cell in enumerate(cells) if p in known and cell.text.strip()}
        if filled:
            rows.append(Row(sheet, number, filled, raw.name))
    return ([] if _unusable(headings, sheet) else rows), troubles


def _headed(headings: list[str], place: int) -> bool:
    return place < len(headings) and bool(headings[place])


def _unusable(headings: list[str], sheet: str) -> bool:
    return any(column.needed and headings.count(column.heading) != 1 for column in SHEETS[sheet])


def _bad_headings(headings: list[str], sheet: str) -> Iterator[tuple[str, BadInput]]:
    known = headings_of(sheet)
    for heading, times in Counter(filter(None, headings)).items():
        if heading not in known:
            yield (
                heading,
                BadInput(
                    given=f"the column {heading!r} is not known",
                    holds=f"on {sheet}: {', '.join(known)}",
                    do="Give it a heading that is known, or take the column out; what is in it was not read.",
                    near=tuple(get_close_matches(heading, known, 2)),
                ),
            )
        elif times > 1:
            yield (
                heading,
                BadInput(
                    given=f"the column {heading!r} stands there {times} times",
                    holds="each heading once",
                    do="Leave one of them; only the last was read.",
                ),
            )
    for column in SHEETS[sheet]:
        if column.needed and column.heading not in headings:
            yield (
                column.heading,
                BadInput(
                    given=f"the column {column.heading!r} is missing",
                    holds=f"a column {column.heading!r}, as {column.example!r}",
                    do="Add it; no row of this sheet was read.",
                ),
            )


def _empty(heading: str, example: str) -> BadInput:
    return BadInput(
        given=f"{heading} is empty", holds=f"as {example!r}", do="Fill it in, or empty the whole row."
    )


def _no_heading(cell: Cell) -> BadInput:
    return BadInput(
        given=f"{cell.text!r} stands under no heading",
        holds="a heading above every filled cell",
        do="Add the heading, or empty the cell.",
    )


def _letter(place: int) -> str:
    """A column's letters as a spreadsheet program shows them.

    >>> _letter(0), _letter(25), _letter(26)
    ('A', 'Z', 'AA')
    """
    letters = ""
    place += 1
    while place:
        place, rest = divmod(place - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
