"""Facts of buying and owning: ordered, came, offered, paid, owned."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.ground.money import known_currency
from witnessmark.journal.facts import WHOLE_PARCEL, Came, Offered, Ordered, Owned, Paid, Valued
from witnessmark.words.bought import take_bought, take_post, take_price
from witnessmark.words.built import Builder, Built, joined
from witnessmark.words.figures import dimensioned
from witnessmark.words.newnames import phrase
from witnessmark.words.parties import take_due, take_named_party, take_party, with_article
from witnessmark.words.things import figures_said
from witnessmark.words.work import Work

_DAY_MINUTES = 1440.0
_WHOLE = frozenset({"parcel", "everything", "order", "lot", "all"})


def _ordered(work: Work) -> Built:
    price = take_price(work)
    due = take_due(work)
    figures = (*work.take_quantities(), *dimensioned(work))
    supplier = take_party(work, "from", "at", "off", "with")
    item = take_bought(work)
    if not item.name:
        work.doubt("what was ordered is not told")
    fact = Ordered(
        at=item.at,
        item=item.name or "something",
        number=item.number,
        supplier=supplier,
        price=price[0],
        due=due,
        figures=figures,
    )
    tail = joined(
        item.counted() + (f" from {supplier}" if supplier else ""),
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
    item = take_bought(work)
    whole = _take_whole(work) if supplier and not item.name else ""
    if not item.name and not whole:
        work.doubt("what came is not told")
    figures = (*figures, *(q for _, q in price))
    fact = Came(
        at=item.at,
        item=item.name or whole or "something",
        number=item.number,
        supplier=supplier,
        figures=figures,
    )
    sender = f" from {supplier}" if supplier else ""
    return Built((fact,), joined((whole or item.counted()) + sender, figures_said(figures)))


def _take_whole(work: Work) -> str:
    """ "The parcel", "everything": whatever that supplier still had in the post."""
    at = next((i for i, atom in enumerate(work.atoms) if atom.low in _WHOLE), None)
    if at is None:
        return ""
    work.place(at)
    work.name = WHOLE_PARCEL
    return WHOLE_PARCEL


def _offered(work: Work) -> Built:
    post = take_post(work)
    price = take_price(work, bare=True)
    days = _take_days(work)
    supplier = take_named_party(work, "from", "at", "by")
    item = take_bought(work)
    supplier = supplier or take_party(work, "from", "at", "by", before_verb=True)
    sizes = {a.quantity.size for a in work.atoms if a.quantity and a.quantity.size}
    threads = {a.thread.thread for a in work.atoms if a.thread}
    figures = work.take_quantities()
    if price[0] is None and days is None:
        work.doubt("neither price nor days are told")
    if not item.name:
        work.doubt("what is offered is not told")
    fact = Offered(
        at=item.at,
        item=item.name or "something",
        supplier=supplier,
        price=price[0],
        post=post[0],
        days=days,
        size=", ".join(sorted(sizes or threads)),
        figures=figures,
    )
    tail = joined(
        item.counted() + (f" from {supplier}" if supplier else ""),
        price[1],
        f"post {post[1]}" if post[1] else "",
        f"{days:g} days" if days is not None else "",
    )
    return Built((fact,), tail)


def _paid(work: Work) -> Built:
    price = take_price(work, bare=True)
    to = take_party(work, "to", "at", before_verb=True) or _take_payee(work)
    run = _paid_for(work)
    what = work.words(*run) if run else ""
    if not to and not run:
        to = take_party(work, "from")
    if price[0] is None:
        work.doubt("no sum is told")
    work.name = ""
    fact = Paid(amount=price[0] or 0.0, what=what, to=to)
    return Built(
        (fact,),
        joined(price[1] + (f" to {with_article(work, to)}" if to else ""), f"for {what}" if what else ""),
    )


def _take_payee(work: Work) -> str:
    """ "Paid the sprayer": a trade or a person right behind the verb."""
    for span in work.spans("trade", "helper"):
        before = [i for i in range(span.first) if work.atoms[i].low not in ("the", "my", "our", "a")]
        if before and before[-1] in work.told:
            return work.take(span)
    return ""


def _paid_for(work: Work) -> tuple[int, int] | None:
    """What was paid for: behind "for", else the words beside the bill."""
    lead = work.find_told("for")
    run = work.after(lead + 1) if lead is not None else (0, 0)
    if lead is None or run[0] == run[1]:
        lead = None
        start = next((i for i, a in enumerate(work.atoms) if a.sort == "word" and work.is_free(i)), None)
        run = phrase(work) or (work.tidy(*work.after(start)) if start is not None else (0, 0))
    if run[0] == run[1]:
        return None
    work.place(run[0] if lead is None else lead, run[1])
    return run


def _owned(work: Work) -> Built:
    sizes = {a.quantity.size for a in work.atoms if a.quantity and a.quantity.size}
    threads = [(i, a.thread) for i, a in enumerate(work.atoms) if a.thread and work.is_free(i)]
    for at, _ in threads:
        work.place(at)
    figures = (*work.take_quantities(), *dimensioned(work))
    item = take_bought(work)
    if not item.name:
        work.doubt("what is owned is not told")
    size = ", ".join([*sorted(sizes), *(t.thread for _, t in threads if t)]) or figures_said(figures[:1])
    fact = Owned(item=item.name or "something", number=item.number, size=size, figures=figures)
    return Built((fact,), joined(item.counted(), size))


def _valued(work: Work) -> Built:
    signs = [quantity.unit for _, quantity in work.quantities("money")]
    price = take_price(work, bare=True)
    if price[0] is None:
        work.doubt("no sum is told")
    currency = known_currency(signs[0]) if signs and signs[0] else ""
    work.name = ""
    return Built((Valued(amount=price[0] or 0.0, currency=currency),), price[1])


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
    "valued": _valued,
}
