"""People, suppliers, places and days due, found by the small words that lead to them."""

from __future__ import annotations

from datetime import timedelta

from witnessmark.words.lexicon import hint, lexicon
from witnessmark.words.naming import is_head
from witnessmark.words.proper import is_unknown
from witnessmark.words.work import Work

_DAY_MINUTES = 1440.0


def take_due(work: Work) -> str:
    """The day something is due, YYYY-MM-DD: one with "due", "by" or "till", or so many days from today."""
    for at, atom in enumerate(work.atoms):
        if atom.day and work.is_free(at) and _leads(work, at, atom.low):
            work.place(at)
            _take_lead(work, at)
            return atom.day.coming.isoformat()
    for at, quantity in work.quantities("time"):
        if quantity.value >= _DAY_MINUTES:
            work.place(at)
            _take_lead(work, at)
            try:
                return (work.today + timedelta(minutes=quantity.value)).isoformat()
            except OverflowError:
                return ""
    return ""


def _leads(work: Work, at: int, low: str) -> bool:
    if low.split()[0] in hint("due"):
        return True
    day = work.atoms[at].day
    before = {a.low for a in work.atoms[max(0, at - 2) : at]}
    return (
        bool(before & hint("due"))
        or (at > 0 and work.atoms[at - 1].low == "for")
        or (day is not None and day.past is None)
    )


def _take_lead(work: Work, at: int) -> None:
    for near in (at - 1, at - 2):
        if near >= 0 and work.atoms[near].low in hint("due") | {"for"} and work.is_free(near):
            work.place(near)


def take_named_party(work: Work, *leads: str) -> str:
    """A supplier or a person by a name of their own: with a capital, or a strange word behind a lead."""
    for first, last in work.proper:
        if work.is_free(first, last):
            _place_lead(work, first, leads)
            return _taken(work, (first, last))
    for at, atom in enumerate(work.atoms):
        if atom.low in leads and (run := _name_run(work, at + 1)) and _is_strange(work, run[0]):
            work.place(at)
            return _taken(work, run)
    head = _before(work, min(work.call.atoms, default=0))
    return _taken(work, head) if head and _is_strange(work, head[0]) else ""


def take_party(work: Work, *leads: str, before_verb: bool = False) -> str:
    """A supplier or a person: by its own name, behind one of the lead words, or before the verb."""
    named = take_named_party(work, *leads)
    if named:
        return named
    for at, atom in enumerate(work.atoms):
        if atom.low in leads and (work.is_free(at) or at in work.told):
            run = _name_run(work, at + 1)
            if run:
                work.place(at)
                return _taken(work, run)
    run = _before(work, min(work.call.atoms)) if before_verb and work.call.atoms else None
    return _taken(work, run) if run and _may_sell(work, run) else ""


def _may_sell(work: Work, run: tuple[int, int]) -> bool:
    """Whether the words are those of a trade or a person, or at least of no thing."""
    people = [s for cls in ("trade", "helper") for s in work.line.spans_of(cls)]
    return any(run[0] <= s.first and s.last <= run[1] for s in people) or not any(
        is_head(work.atoms[i].low) for i in range(*run)
    )


def with_article(work: Work, whom: str) -> str:
    """A trade or a person as typed, with "the" or "my" before it."""
    at = next((i for i, a in enumerate(work.atoms) if work.line.text[a.start :].startswith(whom)), None)
    if at and work.atoms[at - 1].low in ("the", "my", "our"):
        return f"{work.atoms[at - 1].low} {whom}"
    return whom


def _taken(work: Work, run: tuple[int, int]) -> str:
    work.place(*run)
    return work.words(*run)


def _place_lead(work: Work, first: int, leads: tuple[str, ...]) -> None:
    if first and work.atoms[first - 1].low in leads:
        work.place(first - 1)


def _is_strange(work: Work, at: int) -> bool:
    return is_unknown(work.line, at, work.vocabulary) and not any(at in h.atoms for h in work.hits)


def _name_run(work: Work, first: int) -> tuple[int, int] | None:
    while first < len(work.atoms) and work.atoms[first].low in ("the", "a", "my", "me", "our", "local", "to"):
        first += 1
    if first < len(work.atoms) and work.atoms[first].low in ("be", "get", "have", "do"):
        return None
    last = first
    while (
        last < len(work.atoms)
        and last - first < 4
        and _may_be_party(work, last)
        and (last == first or work.atoms[last].low not in hint("party_ends"))
    ):
        last += 1
    return (first, last) if last > first else None


def _may_be_party(work: Work, at: int) -> bool:
    atom = work.atoms[at]
    in_name = any(at in h.atoms for h in work.hits if h.how == "full")
    return atom.sort == "word" and work.is_free(at) and not in_name


def _before(work: Work, verb: int) -> tuple[int, int] | None:
    """The words at the head of the line, up to the verb."""
    last = verb
    while last > 0 and work.atoms[last - 1].low in hint("helping"):
        last -= 1
    first = 0
    while first < last and (work.atoms[first].low in lexicon().glue or work.atoms[first].sort == "mark"):
        first += 1
    if 0 < last - first <= 3 and all(_may_be_party(work, i) for i in range(first, last)):
        return first, last
    return None


def take_place(work: Work) -> str:
    """Where something lies: the words behind "on", "in", "under", up to the place they name."""
    spans = [s for s in work.line.spans_of("place")]
    for span in spans:
        for at in range(span.first - 1, max(-1, span.first - 6), -1):
            low = work.atoms[at].low
            if low in (
                "on",
                "in",
                "under",
                "at",
                "behind",
                "onto",
                "into",
                "against",
                "from",
                "by",
                "beside",
                "below",
                "up",
            ):
                first = at if low in ("under", "behind", "against", "beside", "below", "by") else at + 1
                while first < span.first and work.atoms[first].low in ("the", "a", "my"):
                    first += 1
                work.place(at, span.last)
                return work.words(first, span.last)
    lead = next(
        (
            i
            for i, a in enumerate(work.atoms)
            if a.low in ("on", "in", "under", "at", "behind") and work.is_free(i)
        ),
        None,
    )
    if lead is None:
        return ""
    first, last = work.after(lead + 1)
    if first == last:
        return ""
    work.place(lead, last)
    first = first + 1 if work.atoms[first].low in ("the", "a", "my") and last - first > 1 else first
    return (
        work.words(first, last) if work.atoms[lead].low not in ("under", "behind") else work.words(lead, last)
    )
