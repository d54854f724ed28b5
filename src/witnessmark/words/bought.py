"""What is bought, offered or owned: the thing, how many, its price and what posting costs."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from witnessmark.ground.quantity import Quantity
from witnessmark.vehicle.sides import parted
from witnessmark.words.lexicon import hint, stem
from witnessmark.words.newnames import first_run, is_plain_thing, phrase
from witnessmark.words.subjects import known_subjects
from witnessmark.words.things import NOT_PLAIN
from witnessmark.words.work import Work

_POUND = 0.45359237
_PENCE = re.compile(r"[0-9]{1,4}[.,][0-9]{2}")
_KEPT_DOUBTS = ("two names fit", "two things are named")


class Item(Struct, frozen=True):
    """A thing by the name of one of them.

    said  its name as it was typed, for as many as there are
    at    the whole names it plainly belongs to
    """

    name: str
    said: str
    number: float = 1.0
    at: tuple[str, ...] = ()

    def counted(self) -> str:
        """How many, and the name as typed: "4 brake hoses"."""
        return f"{self.number:g} {self.said}" if self.number != 1 else self.said


def take_bought(work: Work) -> Item:
    """The thing bought or owned; a known one without its side, a count and a container ("reel of") apart."""
    _pass_containers(work)
    before = list(work.doubts)
    wholes = known_subjects(work)
    if wholes:
        return _known(work, wholes, before)
    run = phrase(work) or first_run(work)
    if run is None:
        return Item("", "", _counted(work, []))
    if run[1] < len(work.atoms) and work.atoms[run[1]].low in hint("sets") and work.is_free(run[1]):
        run = (run[0], run[1] + 1)
    if not is_plain_thing(work, run):
        work.doubt(NOT_PLAIN)
    work.place(*run)
    if any(work.atoms[i].shaky for i in range(*run)):
        work.doubt("the spelling may mean another word")
    number = _counted(work, [run[0]])
    single = _single(work.typed(*run), number, work.has("each", "apiece", "piece"))
    said = work.typed(_from_thread(work, run[0]), run[1])
    work.name, work.side = said, _side_beside(work)
    return Item(single, said, number)


def _from_thread(work: Work, first: int) -> int:
    """A thread before the name is said with it: "5/16 UNF nyloc nuts"."""
    return first - 1 if first and work.atoms[first - 1].thread else first


def _side_beside(work: Work) -> str:
    """The side of a thing not known to the record; its words stay in the remark."""
    sides = [a.side.side for i, a in enumerate(work.atoms) if a.side and work.is_free(i)]
    return sides[0] if len(sides) == 1 else ""


def _known(work: Work, wholes: Sequence[str], before: Sequence[str]) -> Item:
    """A known thing; which of several is bought need not be told, so only doubts of the name itself stay."""
    unclear = len(work.doubts) > len(before)
    work.doubts = [d for d in work.doubts if d in before or d in _KEPT_DOUBTS]
    meant = [h for h in work.hits if h.atoms <= work.placed]
    number = _counted(work, [h.first for h in meant])
    plain = parted(wholes[0])[0]
    said = next((work.typed(h.first, h.last) for h in meant if h.named.plain == plain), plain)
    said = said if stem(said) == stem(plain) else plain
    if unclear:
        work.name, work.side = said, _side_typed(work)
    return Item(_single(plain, number), said, number, () if unclear else tuple(wholes))


def _side_typed(work: Work) -> str:
    sides = {a.side.side for i, a in enumerate(work.atoms) if a.side and i in work.placed}
    return sides.pop() if len(sides) == 1 else ""


def _pass_containers(work: Work) -> None:
    """In "2 sheets of steel" the steel is meant."""
    for span in work.spans("container"):
        after = span.last
        poured = any(s.first == after for cls in ("fluid", "product") for s in work.line.spans_of(cls))
        if after < len(work.atoms) and (work.atoms[after].low == "of" or poured):
            work.passed.update(range(span.first, after))


def _counted(work: Work, starts: Sequence[int]) -> float:
    """A count before the name, past "tins of", or behind it as "x2", "2 off", "a pair" or "the two"."""
    for at in work.numbers():
        atom = work.atoms[at]
        if atom.low in ("a", "an", "single") or atom.value is None or atom.value != int(atom.value):
            continue
        if any(0 < s - at <= 4 for s in starts) or _is_behind(work, at):
            work.place(at)
            return atom.value
    return 2.0 if work.has("pair") and starts else 1.0


def _is_behind(work: Work, at: int) -> bool:
    """Whether a number behind the name counts it."""
    low = work.atoms[at].low
    after = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
    return low.startswith("x") or after in ("off", "of") or (low == "pair" and after in ("", ",", "."))


def _single(name: str, number: float, each: bool = False) -> str:
    """The name of one of them."""
    words = name.split()
    if words and (number > 1 or each):
        words[-1] = stem(words[-1])
    return " ".join(words)


# ---- money


def take_price(work: Work, *, bare: bool = False) -> tuple[float | None, str]:
    """A sum of money and its words; a bare "7.60" at the end or beside "each" too.

    bare  a sum is sure to be meant: any bare decimal, or the only number, is one
    """
    found = work.quantities("money")
    if found:
        work.place(found[0][0])
        return found[0][1].value, found[0][1].typed
    pounds = [(at, q) for at, q in work.quantities("mass") if q.typed.lower().endswith(("pound", "pounds"))]
    if pounds:
        at, quantity = pounds[0]
        work.place(at)
        return round(quantity.value / _POUND, 4), quantity.typed
    for at in work.numbers():
        atom = work.atoms[at]
        if atom.sort != "number" or atom.value is None:
            continue
        if _is_pence(work, at) or (bare and ("." in atom.low or len(work.numbers()) == 1)):
            work.place(at)
            return atom.value, atom.low
    return None, ""


def _is_pence(work: Work, at: int) -> bool:
    """Whether a bare decimal looks like a price where it stands: "7.60 each", "…, 7.60"."""
    after = work.atoms[at + 1].low if at + 1 < len(work.atoms) else ""
    ends = ("", ",", ".", ";", "each", "the", "a", "all", "plus", "inc", "posted", "delivered", "from", "and")
    return bool(_PENCE.fullmatch(work.atoms[at].low)) and after in ends


def take_post(work: Work) -> tuple[float | None, str]:
    """What posting costs: the sum behind or before "post", "p&p" or "carriage"."""
    lead = work.find("post", "postage", "carriage", "pp", "delivery", "posting", "p")
    if lead is None:
        return None, ""
    free = work.find("free")
    if free is not None and abs(free - lead) <= 2:
        work.place(min(free, lead), max(free, lead) + 1)
        return 0.0, "free"
    for at in (*range(lead + 1, min(lead + 4, len(work.atoms))), lead - 1):
        money = _money_at(work, at)
        if at < 0 or not work.is_free(at) or (money is None and work.atoms[at].sort != "number"):
            continue
        work.place(lead)
        work.place(at)
        return (money.value, money.typed) if money else (work.atoms[at].value, work.atoms[at].low)
    return None, ""


def _money_at(work: Work, at: int) -> Quantity | None:
    found = work.atoms[at].quantity
    return found.quantity if found and found.kind == "money" else None
