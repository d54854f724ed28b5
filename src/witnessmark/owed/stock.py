"""What is to hand and in the post, and whether it answers a need: compared by words, with care."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.journal.facts import WHOLE_PARCEL
from witnessmark.state.closing import own_items
from witnessmark.state.standing import State
from witnessmark.state.supply import same_supplier
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import HALVES, parted, whole_name

_EMPTY = frozenset(
    {"a", "all", "and", "for", "in", "new", "of", "old", "one", "out", "pair", "set", "the", "to"}
)
# Of these there are many sizes: the bare word alone does not say that the right one is to hand.
BY_SIZE = frozenset({"o", "ring", "o-ring", "seal", "gasket", "bearing", "hose", "bush", "olive", "circlip"})


class Item(Struct, frozen=True, kw_only=True):
    """Something that must be in hand: what it is and the joint or part it is for."""

    what: str
    for_: str = ""
    size: str = ""
    quantity: float = 1
    words: tuple[str, ...] = ()


class Held(Struct, frozen=True, kw_only=True):
    """So many of one thing, as the record words it, since a line; `at` what it was got for."""

    what: str
    size: str
    at: tuple[str, ...]
    line: int
    number: float


@cache
def bare(text: str) -> frozenset[str]:
    """The telling words of a name, each without its plural.

    >>> sorted(bare("2 new split pins for the hub"))
    ['2', 'hub', 'pin', 'split']
    """
    words = re.findall(r"[a-z0-9.]+(?:-[a-z]+)?", text.lower())
    return frozenset(_singular(w) for w in words) - _EMPTY


def _singular(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def sized(item: Item) -> bool:
    """Whether there are many sizes of a thing, and this one's is not known.

    >>> [sized(Item(what=what)) for what in ("shaft seal", "split pin")]
    [True, False]
    """
    return not item.size and bool(bare(item.what) & BY_SIZE)


def answers(held: Held, item: Item, own: bool) -> bool:
    """Whether a thing to hand answers a need; `own`: the item is what its joint is named after.

    >>> pin = Held(what="split pins", size="", at=(), line=1, number=10)
    >>> answers(pin, Item(what="split pin", for_="hub nut, left rear"), own=False)
    True
    """
    namesake = whole_name(item.what, parted(item.for_)[1])
    if held.at and item.for_ and item.for_ not in held.at and namesake not in held.at:
        return False
    if held.size and item.size and dimensions(held.size) != dimensions(item.size):
        return False
    have = bare(held.what)
    name, side = parted(item.for_)
    told = have & set(HALVES)
    if told and item.for_ and not told <= set(side.split()):
        return False
    have -= told
    if own and have == bare(name) - set(HALVES):
        return True
    sure = bool(held.at) or bool(held.size and item.size) or bool(bare(name) and bare(name) <= have)
    return any(_means(have, bare(word), sure) for word in item.what.split(" or ")) or any(
        have == bare(word) and (sure or not have <= BY_SIZE) for word in item.words
    )


def dimensions(size: str) -> frozenset[str]:
    """A size however it was typed: "38 x 60 x 10" and "38×60×10 mm" are one."""
    return bare(size.lower().replace("×", " ").replace("x", " ")) - {"mm"}


def _means(have: frozenset[str], wanted: frozenset[str], sure: bool) -> bool:
    return bool(wanted) and wanted <= have and (sure or not wanted <= BY_SIZE)


class Stock:
    """What is left of everything that was owned or came, and of everything ordered that has not come."""

    def __init__(self, state: State) -> None:
        self.state = state
        supply = state.supply
        self.posted = [_held(line.fact, line.line) for line in supply.ordered]
        self.posted_left = [held.number for held in self.posted]
        self._senders = [line.fact.supplier for line in supply.ordered]
        got = [_held(line.fact, line.line) for line in supply.owned]
        for line in supply.came:
            if line.fact.item == WHOLE_PARCEL:
                got += self._unpacked(line.fact.supplier, line.line)
            else:
                got.append(_held(line.fact, line.line))
                self._arrived(got[-1])
        self.held = sorted(got, key=lambda held: held.line)
        self.left = [held.number for held in self.held]
        for item, number in _used(state):
            self._take(item, number)

    def matching(self, item: Item) -> Iterator[int]:
        """Numbers of the held things that answer a need and are not used up."""
        own = self.is_own(item)
        return (n for n, held in enumerate(self.held) if self.left[n] > 0 and answers(held, item, own))

    def take(self, item: Item) -> tuple[float, float]:
        """Set aside for a need what is to hand and what is in the post; how many of each."""
        own = self.is_own(item)
        have = _drawn(self.held, self.left, item, own, item.quantity)
        return have, _drawn(self.posted, self.posted_left, item, own, item.quantity - have)

    def sources(self, item: Item) -> tuple[tuple[int, ...], float]:
        """Set aside what is here for a need, then what is in the post: order lines, what is short."""
        short = item.quantity - _drawn(self.held, self.left, item, self.is_own(item), item.quantity)
        lines: list[int] = []
        for n, posted in enumerate(self.posted):
            if short > 0 and self.posted_left[n] > 0 and answers(posted, item, self.is_own(item)):
                some = min(short, self.posted_left[n])
                self.posted_left[n] -= some
                short -= some
                lines.append(posted.line)
        return tuple(lines), short

    def is_own(self, item: Item) -> bool:
        """Whether the item is what its joint is named after, or a part itself."""
        joint = self.state.vehicle.joints.get(item.for_)
        if joint is None:
            return item.for_ in self.state.vehicle.parts
        return item.what in own_items(joint, kind_of(joint.kind))

    def _take(self, item: Item, line: int) -> None:
        own, wanted = self.is_own(item), item.quantity
        for n, held in enumerate(self.held):
            if wanted > 0 and held.line < line and answers(held, item, own):
                taken = min(wanted, self.left[n])
                self.left[n] -= taken
                wanted -= taken

    def _unpacked(self, supplier: str, line: int) -> list[Held]:
        """All that a supplier had in the post by a line, now to hand."""
        found = []
        for n, posted in enumerate(self.posted):
            if posted.line < line and self.posted_left[n] > 0 and same_supplier(self._senders[n], supplier):
                found.append(replace(posted, line=line, number=self.posted_left[n]))
                self.posted_left[n] = 0
        return found

    def _arrived(self, arrived: Held) -> None:
        number = arrived.number
        for n, posted in enumerate(self.posted):
            same = bare(posted.what) == bare(arrived.what) or bool(set(posted.at) & set(arrived.at))
            if number > 0 and posted.line < arrived.line and same:
                taken = min(number, self.posted_left[n])
                self.posted_left[n] -= taken
                number -= taken


def _drawn(held: list[Held], left: list[float], item: Item, own: bool, wanted: float) -> float:
    """Take up to so many of what answers a need; how many were taken."""
    taken = 0.0
    for n, one in enumerate(held):
        if taken < wanted and left[n] > 0 and answers(one, item, own):
            some = min(wanted - taken, left[n])
            left[n] -= some
            taken += some
    return taken


def _held(fact: object, line: int) -> Held:
    return Held(
        what=getattr(fact, "item", ""),
        size=getattr(fact, "size", ""),
        at=getattr(fact, "at", ()),
        line=line,
        number=getattr(fact, "number", 1),
    )


def _used(state: State) -> Iterable[tuple[Item, int]]:
    """What went into joints since each was last opened, with the line it went in by."""
    for name, joint in state.joints.items():
        kind = kind_of(state.vehicle.joints[name].kind)
        numbers = {renewal.item: renewal.number for renewal in kind.renew}
        for item, line in joint.renewed.items():
            yield Item(what=item, for_=name, quantity=numbers.get(item, 1)), line
