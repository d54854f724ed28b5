"""A sheet as a plain value: a few kinds of row under a few headings, made to be shown three ways."""

from __future__ import annotations

from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.ground.pedigree import HOLLOW


class Words(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="words"):
    """A line of plain text. `sort` says how loud it is: plain, aside, caution, stop, fail line or loud."""

    text: str
    label: str = ""
    sort: str = "plain"


class Number(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="number"):
    """A labelled number with its standing; `value` is as typed, with its unit, or "" for a blank to fill in.

    hollow        printed as an outline: from memory or a guess, to be measured first
    plausibility  of a torque: how it stands beside what the fastener bears, in a few words
    """

    label: str
    value: str
    standing: str = ""
    where: str = ""
    hollow: bool = False
    plausibility: str = ""

    @property
    def pedigree(self) -> str:
        """The standing as it is printed beside the number.

        >>> number("figure", "47 N·m", "owner's book", "p. 41").pedigree
        "owner's book, p. 41"
        >>> number("size", "M8", "from memory").pedigree
        'from memory, measure first'
        """
        first = "measure first" if self.hollow else ""
        told = ", ".join(part for part in (self.standing, self.where, first) if part)
        judged = f"plausibility: {self.plausibility}" if self.plausibility else ""
        return "; ".join(part for part in (told, judged) if part)

    def judged(self, plausibility: str) -> Number:
        """The same with its plausibility, in a few words."""
        return replace(self, plausibility=plausibility)


def number(label: str, value: str, standing: str = "", where: str = "") -> Number:
    """A number, hollow where its standing is only memory or a guess."""
    return Number(label=label, value=value, standing=standing, where=where, hollow=standing in HOLLOW)


class Due(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One thing owed on a joint, with the journal line behind it and its code for paper.

    how     the way to do it; when: its time in words, "after 50 km"
    limits  where an authority refuses it, with the authority and the place; never the aim
    """

    what: str
    because: str = ""
    how: str = ""
    line: int | None = None
    days: int | None = None
    when: str = ""
    code: str = ""
    limits: tuple[str, ...] = ()


class JointRow(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="joint"):
    """A joint (or a part, or a place) with its state and what happens if it is missed, and what it owes.

    state      apart, loose, tight, proven, as found, or "" where no joint is meant
    if_missed  the words shown, "lets go"
    because    where everything under it shares it; line, days: of all under it that have none of their own
    """

    name: str
    state: str = ""
    if_missed: str = ""
    because: str = ""
    line: int | None = None
    days: int | None = None
    dues: tuple[Due, ...] = ()


class Box(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="box"):
    """A box to tick on paper, with the code that enters it afterwards.

    write     captions of blanks to write in; without any there is a box to tick
    answered  what the record already says, "line 41"; then the box stands filled in
    """

    text: str
    label: str = ""
    aside: str = ""
    code: str = ""
    write: tuple[str, ...] = ()
    answered: str = ""


class Step(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="step"):
    """One numbered thing to do, with its minutes, its numbers and its notes."""

    number: int
    text: str
    minutes: str = ""
    place: str = ""
    numbers: tuple[Number, ...] = ()
    notes: tuple[str, ...] = ()
    left: str = ""


class Cells(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="cells"):
    """One row of a table; its section names the columns."""

    cells: tuple[str, ...]
    struck: bool = False


class Label(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="label"):
    """A label for a bag or a part.

    keep             what becomes of it: "keep", or "renew" with what is renewed
    number, way_up   "" leaves a blank to write in
    """

    what: str
    code: str
    came_from: str = ""
    side: str = ""
    number: str = ""
    way_up: str = ""
    day: date | None = None
    keep: str = "keep"
    where: str = ""
    note: str = ""


class Picture(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One photo with its caption; `file` is its name in the record's folder of photos."""

    file: str
    caption: str


class Pictures(Struct, frozen=True, kw_only=True, omit_defaults=True, tag_field="row", tag="pictures"):
    """Photos beside one another, under a few words."""

    label: str
    pictures: tuple[Picture, ...]


Row = Words | Number | JointRow | Box | Step | Cells | Label | Pictures


class Section(Struct, frozen=True, kw_only=True, omit_defaults=True):
    """Rows under a heading.

    if_missed  where every row shares it, shown once at the heading
    columns    headings of its `Cells`
    empty      what is said when there is no row
    """

    heading: str
    rows: tuple[Row, ...] = ()
    if_missed: str = ""
    note: str = ""
    columns: tuple[str, ...] = ()
    empty: str = "Nothing."


class Sheet(Struct, frozen=True, kw_only=True):
    """One sheet.

    kind      wall, session, gate, closing, labels, order, helper, owed, needs, journal, state, history
    date      the day it is for; line: the last journal line it knew; code: four characters to type
    headline  the one answer on top, "" where the sections are the answer
    notes     cautions, each a sentence or a few; footer: the last words, where to defer to
    """

    kind: str
    title: str
    vehicle: str
    date: date
    line: int
    code: str
    sections: tuple[Section, ...]
    headline: str = ""
    notes: tuple[str, ...] = ()
    footer: tuple[str, ...] = ()
