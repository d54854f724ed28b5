"""The pieces a line is read by: atoms, spans of a class, and canonical stems."""

from __future__ import annotations

from msgspec import Struct

from witnessmark.ground.quantity import FoundQuantity
from witnessmark.ground.threads_typed import FoundThread
from witnessmark.words.corners import FoundSide
from witnessmark.words.days import FoundDay
from witnessmark.words.times import FoundTime


class Atom(Struct, frozen=True):
    """The smallest thing a line is read by.

    sort   word, number, mark, quantity, thread, time, day or side
    low    as compared, spelling mended
    value  of a number or a number word
    """

    start: int
    end: int
    low: str
    sort: str
    value: float | None = None
    quantity: FoundQuantity | None = None
    thread: FoundThread | None = None
    time: FoundTime | None = None
    day: FoundDay | None = None
    side: FoundSide | None = None
    mended: bool = False
    shaky: bool = False


class Span(Struct, frozen=True):
    """Atoms first to last (last excluded) that are of a class; `means` is the data's word for them."""

    cls: str
    first: int
    last: int
    means: str


class Canon(Struct, frozen=True):
    """One canonical stem and the atoms it came from."""

    stem: str
    first: int
    last: int
