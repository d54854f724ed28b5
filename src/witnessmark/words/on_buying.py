"""Facts of buying and owning: ordered, came, offered, paid, owned."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.ground.quantity import Quantity
from witnessmark.journal.facts import Came, Offered, Ordered, Owned, Paid
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.figures import dimensioned
from witnessmark.words.newnames import phrase
from witnessmark.words.parties import take_due, take_party
from witnessmark.words.things import figures_said, item_phrase
from witnessmark.words.work import Work

_DAY_MINUTES = 1440.0


def _ordered(work: Work) -> Built:
    price = _take_price(work)
    due = take_due(work)
    figures = (*work.take_quantities(), *dimensioned(work))
    supplier = take_party(work, "from", "at", "off", "with")
    item, number, at = item_phrase(work)
    if not item:
        work.doubt("what was ordered is not told")
    fact = Ordered(
        at=at,
        item=item or "something",
        number=number,
        supplier=supplier,
        price=price[0],
        due=due,
        figures=figures,
    )
    tail = joined(
        f"{_many(number)}{item}" + (f" from {supplier}" if supplier else ""),
        price[1],
        figures_said(figures),
        f"due {due}" if due else "",
    )
    return Built((fact,), tail)


def _came(work: Work) -> Built:
    price = work.quantities("money")
    for at, _ in price:
        work.doubt("a price belongs to an order")
        work.place(at)
    figures = (*work.take_quantities(), *dimensioned(work))
    supplier = take_party(work, "from")
    item, number, at_names = item_phrase(work)
    if not item:
        work.doubt("what came is not told")
    figures = (*figures, *(q for _, q in price))
    fact = Came(at=at_names, item=item or "something", number=number, supplier=supplier, figures=figures)
    tail = joined(f"{_many(number)}{item}" + (f" from {supplier}" if supplier else ""), figures_said(figures))
    return Built((fact,), tail)


def _offered(work: Work) -> Built:
    post = _take_post(work)
    price = _take_price(work, bare=True)
    days = _take_days(work)
    item, number, at = item_phrase(work)
    supplier = take_party(work, "from", "at", "by", before_verb=True)
    figures = work.take_quantities()
    if price[0] is None and days is None:
        work.doubt("neither price nor days are told")
    if not item:
        work.doubt("what is offered is not told")
    fact = Offered(
        at=at,
        item=item or "something",
        supplier=supplier,
        price=price[0],
        post=post[0],
        days=days,
        figures=figures,
    )
    tail = joined(
        f"{_many(number)}{item}" + (f" from {supplier}" if supplier else ""),
        price[1],
        f"post {post[1]}" if post[1] else "",
        f"{days:g} days" if days is not None else "",
    )
    return Built((fact,), tail)


def _paid(work: Work) -> Built:
    price = _take_price(work, bare=True)
    to = take_party(work, "to", "at")
    what = _paid_for(work)
    if not to and not what:
        to = take_party(work, "from")
    if price[0] is None:
        work.doubt("no sum is told")
    work.name = ""
    fact = Paid(amount=price[0] or 0.0, what=what, to=to)
    return Built((fact,), joined(price[1] + (f" to {to}" if to else ""), f"for {what}" if what else ""))


def _paid_for(work: Work) -> str:
    """What was paid for: behind "for", else the words beside the bill."""
    lead = work.find("for")
    if lead is not None:
        first, last = work.after(lead + 1)
        if first < last:
            work.place(lead, last)
            return work.words(first, last)
    run = phrase(work)
    if run is None:
        start = next((i for i, a in enumerate(work.atoms) if a.sort == "word" and work.is_free(i)), None)
        if start is None:
            return ""
        run = work.tidy(*work.after(start))
        if run[0] == run[1]:
            return ""
    work.place(*run)
    return work.words(*run)


def _owned(work: Work) -> Built:
    sizes = {a.quantity.size for a in work.atoms if a.quantity and a.quantity.size}
    threads = [(i, a.thread) for i, a in enumerate(work.atoms) if a.thread and work.is_free(i)]
    for at, _ in threads:
        work.place(at)
    figures = (*work.take_quantities(), *dimensioned(work))
    item, number, _ = item_phrase(work)
    if not item:
        work.doubt("what is owned is not told")
    size = ", ".join([*sorted(sizes), *(t.thread for _, t in threads if t)]) or figures_said(figures[:1])
    fact = Owned(item=item or "something", number=number, size=size, figures=figures)
    return Built((fact,), joined(f"{_many(number)}{item}", size))


def _many(number: float) -> str:
    return f"{number:g} " if number != 1 else ""


def _take_price(work: Work, *, bare: bool = False) -> tuple[float | None, str]:
    """A sum of money and its words; where a sum is sure to be meant, a bare decimal too."""
    found = work.quantities("money")
    if found:
        work.place(found[0][0])
        return found[0][1].value, found[0][1].typed
    pounds = [(at, q) for at, q in work.quantities("mass") if q.typed.lower().endswith(("pound", "pounds"))]
    if pounds:
        at, quantity = pounds[0]
        work.place(at)
        value = quantity.value / 0.45359237
        return round(value, 4), quantity.typed
    if bare:
        for at in work.numbers():
            atom = work.atoms[at]
            if (
                atom.sort == "number"
                and atom.value is not None
                and ("." in atom.low or len(work.numbers()) == 1)
            ):
                work.place(at)
                return atom.value, atom.low
    return None, ""


def _take_post(work: Work) -> tuple[float | None, str]:
    """What posting costs: the sum behind "post", "p&p" or "carriage"."""
    lead = work.find("post", "postage", "carriage", "pp", "delivery", "posting", "p")
    if lead is None:
        return None, ""
    if work.has("free"):
        free = work.find("free")
        if free is not None and abs(free - lead) <= 2:
            work.place(min(free, lead), max(free, lead) + 1)
            return 0.0, "free"
    for at in (*range(lead + 1, min(lead + 4, len(work.atoms))), lead - 1):
        atom = work.atoms[at]
        money: Quantity | None = (
            atom.quantity.quantity if atom.quantity and atom.quantity.kind == "money" else None
        )
        if at < 0 or not work.is_free(at) or (money is None and atom.sort != "number"):
            continue
        work.place(lead)
        work.place(at)
        if money is not None:
            return money.value, money.typed
        return atom.value, atom.low
    return None, ""


def _take_days(work: Work) -> float | None:
    for at, quantity in work.quantities("time"):
        if quantity.value >= _DAY_MINUTES:
            work.place(at)
            return quantity.value / _DAY_MINUTES
    return None


ON_BUYING: Mapping[str, Builder] = {
    "ordered": _ordered,
    "came": _came,
    "offered": _offered,
    "paid": _paid,
    "owned": _owned,
}
