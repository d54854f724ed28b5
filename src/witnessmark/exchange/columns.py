"""The sheets of a spreadsheet and their columns in plain words, as on the page docs/spreadsheet.md."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from msgspec import Struct


class Column(Struct, frozen=True):
    """One column: its heading, what belongs in it, an example, and whether a row is nothing without it."""

    heading: str
    says: str
    example: str
    needed: bool = False


_NAME = Column("name", "what it is called, without its side", "brake drum", needed=True)
_SIDE = Column(
    "side", "which one, as the driver sits facing forward; empty where there is only one", "left rear"
)
_PLACE = Column("place", "where on the vehicle", "rear axle")
_PART_OF = Column("part of", "the assembly it belongs to", "left rear brake")
_NOTE = Column("note", "anything else", "thread looks tired")

PARTS = (
    _NAME,
    _SIDE,
    _PLACE,
    _PART_OF,
    Column("number", "how many of them", "2"),
    Column("where", "where it lies now, when it is off", "shelf 3"),
    _NOTE,
)

JOINTS = (
    Column("name", "what it is called, without its side", "wheel nuts", needed=True),
    _SIDE,
    _PLACE,
    _PART_OF,
    Column("kind", "a kind of the close-out catalogue, by its key, its name or a word for it", "wheel nuts"),
    Column("holds", "the parts that come free once it is apart; a semicolon between them", "wheel; hub cap"),
    Column(
        "behind",
        "what must be off or apart before a hand gets there; a semicolon between things that must all "
        "be off, the word or between two ways in",
        "wheel; brake drum or axle cover",
    ),
    Column("number", "how many fasteners share it", "5"),
    Column("figure", "the figure it is closed at, with its unit; two figures make a band", "45 to 50 N·m"),
    Column("source", "where the figure comes from: a rung of the one ladder of standing", "owner's book"),
    Column("where", "the page or section of that source", "page 12"),
    Column("thread", "the thread", "1/2 UNF"),
    Column("grade", "the grade of the fastener", "8.8"),
    Column("fluid", "what it keeps in", "gear oil"),
    Column("quantity", "how much of it, with its unit", "1.1 L"),
    Column("size", "the size of what seals or fits it", "38 x 60 x 10"),
    Column(
        "if missed", "only where it differs from its kind: lets go, warns first, wrecks, wets, looks", "wets"
    ),
    _NOTE,
)

JOBS = (
    Column("job", "renew, refurbish, make good, refit, coat or prove", "renew", needed=True),
    Column("thing", "the part, joint or assembly, with its side", "wheel cylinder, left rear", needed=True),
    Column("well", "how long if all goes well: minutes, or a time with its unit", "40"),
    Column("likely", "how long is likely", "1 h 30"),
    Column("if it fights", "how long if it fights", "5 h"),
)

STOCK = (
    Column("item", "what it is", "split pin", needed=True),
    Column("number", "how many there are", "20"),
    Column("size", "its size", "3.2 x 50"),
)

_QUICK = Column("quick", "days on the way when it goes well: one parcel in ten is quicker", "1")
_DAYS = Column("days", "likely days on the way, Sundays not counted", "2")
_SLOW = Column("slow", "days when it goes badly: one parcel in ten is slower", "4")
_SUPPLIER = Column("supplier", "who sends it", "Ottermere Seals", needed=True)

OFFERS = (
    Column("item", "what it is", "wheel cylinder", needed=True),
    _SUPPLIER,
    Column("size", "the size it is offered in", "3/4 in bore"),
    Column("for", "the part or joint it is for; a semicolon between several", "wheel cylinder, left rear"),
    Column("their number", "the supplier's own number for it", "B-190"),
    Column(
        "price", "of one pack; with its sign where it is not the supplier's own currency", "6.40", needed=True
    ),
    Column("pack", "how many are in a pack", "1"),
    Column("weight", "of one pack; grams, or with its unit", "400"),
    _QUICK,
    _DAYS,
    _SLOW,
)

SUPPLIERS = (
    _SUPPLIER,
    Column("post", "post by weight, lightest first; a semicolon between", "3.50 to 1 kg; 4.95 to 5 kg; 9"),
    Column("free above", "goods from this sum on go without post", "60"),
    Column("minimum", "below this sum nothing is sent", "10"),
    Column("currency", "the three letters of the currency of all these sums; empty for your own", "EUR"),
    Column("rate", "how many of your own you pay for one of it", "0.86"),
    Column("duty", "what customs ask, in a hundred of the goods", "4.5"),
    _QUICK,
    _DAYS,
    _SLOW,
    Column("cut-off", "the time of day after which it goes the next day", "16:00"),
)

SHEETS: Mapping[str, tuple[Column, ...]] = MappingProxyType(
    {
        "parts": PARTS,
        "joints": JOINTS,
        "jobs": JOBS,
        "stock": STOCK,
        "offers": OFFERS,
        "suppliers": SUPPLIERS,
    }
)
COMPUTED = "owed"  # a sheet that is written out to be read, and never read back
OWED_HEADINGS = ("if missed", "what", "joint", "part", "where", "because", "line", "pays", "since", "due")


def headings_of(sheet: str) -> tuple[str, ...]:
    """The headings of a sheet, in order."""
    return tuple(column.heading for column in SHEETS[sheet])


def plain_heading(text: str) -> str:
    """A heading as it is compared: small letters, single spaces.

    >>> plain_heading("  If_Missed ")
    'if missed'
    """
    return " ".join(text.replace("_", " ").casefold().split())


def sheet_told_by(headings: frozenset[str]) -> str:
    """Which sheet a row of headings belongs to, "" where it is none.

    >>> sheet_told_by(frozenset({"name", "kind"})), sheet_told_by(frozenset({"name", "note"}))
    ('joints', 'parts')
    """
    if {"job", "thing"} <= headings:
        return "jobs"
    if "supplier" in headings:
        return "offers" if "item" in headings else "suppliers"
    if "item" in headings:
        return "stock"
    if "name" not in headings:
        return ""
    only_joints = set(headings_of("joints")) - set(headings_of("parts"))
    return "joints" if only_joints & headings else "parts"
