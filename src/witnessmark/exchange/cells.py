"""Reading single cells: each reader takes the text of one and raises BadInput for what it cannot read."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType

from witnessmark.ground.errors import BadInput
from witnessmark.ground.missed import IfMissed
from witnessmark.ground.numerals import read_number
from witnessmark.ground.pedigree import STANDINGS
from witnessmark.ground.quantities import find_quantities, read_quantity
from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.catalogue import catalogue
from witnessmark.vehicle.sides import SIDES, near_or_off, parted, whole_name
from witnessmark.vehicle.things import Figure, Routes

JOB_WORDS = ("renew", "refurbish", "make good", "refit", "coat", "prove")
_BETWEEN = re.compile(r"\s*(?:-|–|to)\s*")
_OR = re.compile(r"\s+or\s+", re.IGNORECASE)


def read_whole(text: str) -> int:
    """A whole number from 1.

    >>> read_whole("5")
    5
    """
    number = read_number(text)
    if number < 1 or number != int(number):
        raise BadInput(given=f"the number is {text}", holds="a whole number from 1", do="Count again.")
    return int(number)


def read_amount(text: str) -> float:
    """A number above nothing."""
    number = read_number(text)
    if number <= 0:
        raise BadInput(given=f"the number is {text}", holds="a number above 0", do="Count again.")
    return number


def read_side(text: str, country: str = "") -> str:
    """A side in any order of its words; near and off once the country is known.

    >>> read_side("Rear left"), read_side("nearside front", "GB")
    ('left rear', 'left front')
    """
    words = (
        text.casefold()
        .replace("-", " ")
        .replace("near side", "nearside")
        .replace("off side", "offside")
        .split()
    )
    said = {(near_or_off(w, country) or w) if w in ("nearside", "offside") else w for w in words}
    for side in SIDES:
        if said == set(side.split()):
            return side
    unsure = {"nearside", "offside"} & said
    raise BadInput(
        given=f"the side is {text!r}" + (", and the country is not known" if unsure else ""),
        holds=", ".join(SIDES),
        do="Say left or right as the driver sits, facing forward.",
        near=tuple(get_close_matches(text.casefold(), SIDES, 2)),
    )


@cache
def _kind_words() -> Mapping[str, tuple[str, ...]]:
    """Keys of kinds by every key, name and word that means them."""
    meant: dict[str, tuple[str, ...]] = {}
    for key, kind in catalogue().items():
        for word in dict.fromkeys(_plain(said) for said in (key, kind.name, *kind.words)):
            meant[word] = (*meant.get(word, ()), key)
    return MappingProxyType(meant)


def read_kind(text: str) -> str:
    """The key of a kind, from its key, its name or a word for it.

    >>> read_kind("wheel-nuts"), read_kind("Wheel Nuts")
    ('wheel-nuts', 'wheel-nuts')
    """
    plain = _plain(text)
    key = plain.replace(" ", "-")
    keys = (key,) if key in catalogue() else _kind_words().get(plain, ())
    if len(keys) == 1:
        return keys[0]
    near = keys or [key for word in get_close_matches(plain, _kind_words(), 3) for key in _kind_words()[word]]
    raise BadInput(
        given=f"{text!r} " + ("may be any of several kinds" if keys else "is not in the close-out catalogue"),
        holds="a kind of joint, as wheel-nuts or shaft-seal",
        do="Give one of the kinds, or leave the cell empty where you do not know.",
        near=tuple(dict.fromkeys(near)),
    )


def _plain(text: str) -> str:
    return " ".join(text.casefold().replace("-", " ").split())


def read_standing(text: str) -> str:
    """A rung of the ladder of standing.

    >>> read_standing("Owner’s book")
    "owner's book"
    """
    plain = " ".join(text.casefold().replace("’", "'").split())
    if plain in STANDINGS:
        return plain
    raise BadInput(
        given=f"the source is {text!r}",
        holds=", ".join(STANDINGS),
        do="Give one of these, and name the book under `where`.",
        near=tuple(get_close_matches(plain, STANDINGS, 2)),
    )


def read_if_missed(text: str) -> str:
    """What happens if it is missed, as its key.

    >>> read_if_missed("Lets go")
    'lets_go'
    """
    plain = _plain(text.replace("_", " "))
    for rung in IfMissed:
        if plain == rung.words:
            return rung.key
    raise BadInput(
        given=f"if missed is {text!r}",
        holds=", ".join(rung.words for rung in IfMissed),
        do="Give one of these, or leave the cell empty to take that of the kind.",
    )


def read_job(text: str) -> str:
    """A job's word."""
    if _plain(text) in JOB_WORDS:
        return _plain(text)
    raise BadInput(
        given=f"the job is {text!r}",
        holds=", ".join(JOB_WORDS),
        do="Give one of these.",
        near=tuple(get_close_matches(_plain(text), JOB_WORDS, 2)),
    )


def read_minutes(text: str) -> float:
    """A time in minutes; a bare number is minutes.

    >>> read_minutes("40"), read_minutes("1 h 30")
    (40.0, 90.0)
    """
    try:
        minutes = read_number(text)
    except BadInput:
        minutes = read_quantity(text, "time").value
    if minutes <= 0:
        raise BadInput(given=f"the time is {text}", holds="more than no time", do="Give a guess above 0.")
    return minutes


def read_with_unit(text: str) -> Quantity:
    """A number with its unit, of any kind."""
    quantity = read_quantity(text)
    if not quantity.unit:
        raise BadInput(
            given=f"{text!r} has no unit", holds="a number with its unit, as 1.1 L", do="Add the unit."
        )
    return quantity


def read_band(text: str) -> Figure:
    """A figure with its unit, or two of them as a band.

    >>> band = read_band("45 to 50 N·m")
    >>> band.low, band.high, band.unit, band.typed
    (45.0, 50.0, 'N·m', '45 to 50 N·m')
    """
    ends = _band_ends(text) or (read_with_unit(text),)
    low, high = ends[0], ends[-1]
    if low.value > high.value:
        raise BadInput(
            given=f"{text!r} runs from {low.value:g} down to {high.value:g} {high.unit}",
            holds="the lower figure first; a mixed number with a space, as 1 1/2 in",
            do="Write it again.",
        )
    return Figure(low=low.value, high=high.value, unit=high.unit, typed=text)


def _band_ends(text: str) -> tuple[Quantity, ...]:
    """The two quantities of a band, none where the text is no band."""
    found = find_quantities(text)
    if len(found) != 2:
        return ()
    low, high = found
    whole = (low.start, high.end) == (0, len(text)) and low.kind == high.kind
    return (low.quantity, high.quantity) if whole and _BETWEEN.fullmatch(text[low.end : high.start]) else ()


class Names:
    """The names a row may point at: those the record knows and those its own file brings."""

    def __init__(self, known: Collection[str], side: str = "") -> None:
        self.known = known
        self.side = side

    def one(self, text: str) -> str:
        """The whole name meant: as given, else on the row's own side."""
        if self._knows(text):
            return whole_name(text) if whole_name(text) in self.known else whole_name(text, self.side)
        raise BadInput(
            given=f"{text!r} is described nowhere",
            holds="a name the record knows, or one with a row of its own in this file",
            do="Mend the name, or add a row for it.",
            near=self._near(whole_name(text)),
        )

    def _near(self, name: str) -> tuple[str, ...]:
        """The same thing on a side first, then names that look alike."""
        sided = sorted(one for one in self.known if parted(one)[0] == parted(name)[0])
        return tuple(dict.fromkeys([*sided, *get_close_matches(name, sorted(self.known), 3)]))[:4]

    def several(self, text: str) -> tuple[str, ...]:
        """Names with a semicolon between them."""
        return tuple(self.one(piece) for piece in text.split(";") if piece.strip())

    def routes(self, text: str) -> Routes:
        """Ways in with the word or between them, each all of its names.

        The word may stand in a name as well: a piece that is known as a whole is not parted.
        """
        ways: list[list[str]] = [[]]
        for piece in filter(str.strip, text.split(";")):
            first, *others = self._ways_in(piece)
            ways[-1].append(first)
            ways += [[other] for other in others]
        return tuple(tuple(map(self.one, way)) for way in ways)

    def _ways_in(self, piece: str) -> list[str]:
        """The names in a piece between semicolons, parted at as few of its ors as will do."""
        if self._knows(piece):
            return [piece]
        for word in _OR.finditer(piece):
            head, rest = piece[: word.start()], piece[word.end() :]
            if self._knows(head) and all(map(self._knows, tail := self._ways_in(rest))):
                return [head, *tail]
        return _OR.split(piece)

    def _knows(self, text: str) -> bool:
        return whole_name(text) in self.known or whole_name(text, self.side) in self.known
