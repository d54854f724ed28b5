"""What to order tonight, as a sheet: parcel by parcel, other choices, what may ride along, what to mend."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from witnessmark.buy.buying import Adding, Bought, Buying, Choice, Parcel
from witnessmark.ground.money import Money
from witnessmark.owed.needs import Need
from witnessmark.sheets.phrases import counted, day_words, in_ten, sheet_code
from witnessmark.sheets.rows import Box, Row, Section, Sheet, Words


def buy_sheet(buying: Buying, *, vehicle: str, today: date, line: int) -> Sheet:
    """The chosen basket as an order with a box a line; then the other choices, and what is left over."""
    choice = buying.choice
    sections = [_parcel(parcel) for parcel in choice.parcels] if choice else []
    sections += list(_further(buying))
    empty = Section(heading="To order", empty="Nothing that is needed is offered by anybody.")
    return Sheet(
        kind="buy",
        title="Tonight's order",
        vehicle=vehicle or "the vehicle",
        date=today,
        line=line,
        code=sheet_code("buy", "", vehicle, today, line),
        headline=headline(buying),
        sections=tuple(sections) or (empty,),
        footer=(
            "Measure before you order: a size from memory is tried on first. Days are guesses: one parcel in "
            "ten is later than the latest day named. Rates and duty are the owner's own numbers.",
        ),
    )


def headline(buying: Buying) -> str:
    """The answer in two or three sentences."""
    choice = buying.choice
    if choice is None:
        return (
            "Nothing to order." if not buying.nobody else "Nothing that is needed is offered by anybody yet."
        )
    said = [f"{choice.money.said} in {counted(len(choice.parcels), 'parcel')}, post included."]
    said.append(lost_words(choice.lost))
    first = buying.sessions[0] if buying.sessions else None
    if first and _waits(choice, first):
        said.append(f"All that {weekday_words(first)} waits for is here in time: {in_ten(choice.chance)}.")
    if cut_offs := [p for p in choice.parcels if p.cut_off]:
        soonest = min(cut_offs, key=lambda p: p.cut_off)
        said.append(f"{soonest.supplier} takes orders until {soonest.cut_off} today.")
    if not choice.proven:
        said.append(f"A cheaper one may exist: none costs less than {choice.at_least.said}.")
    return " ".join(said)


def _waits(choice: Choice, first: date) -> bool:
    return any(line.by == first and line.holds for p in choice.parcels for line in p.lines)


def lost_words(lost: Sequence[date]) -> str:
    """Which sessions a basket would lose, in words.

    >>> lost_words(()), lost_words((date(2026, 11, 28),))
    ('No session is lost.', 'Lost if parcels come at their latest: Saturday 28 November.')
    """
    if not lost:
        return "No session is lost."
    return f"Lost if parcels come at their latest: {', '.join(weekday_words(day) for day in lost)}."


def weekday_words(day: date) -> str:
    """A day without its year.

    >>> weekday_words(date(2026, 11, 28))
    'Saturday 28 November'
    """
    return day_words(day).rsplit(" ", 1)[0]


# ---- a parcel


def _parcel(parcel: Parcel) -> Section:
    return Section(
        heading=f"{parcel.supplier}: {parcel.paid.said}",
        rows=tuple(
            Box(text=_bought(line), aside=_why(line), code=line.quote.number) for line in parcel.lines
        ),
        note=" ".join(_terms(parcel)),
    )


def _terms(parcel: Parcel) -> Iterator[str]:
    duty = f", duty {parcel.duty.said}" if parcel.duty.minor else ""
    post = f"post {parcel.post.said}" if parcel.post.minor else "no post"
    yield f"Goods {parcel.goods.said}, {post}{duty}."
    yield f"Here about {weekday_words(parcel.likely)}, at the latest {weekday_words(parcel.latest)}."
    if parcel.cut_off:
        yield f"Order by {parcel.cut_off} today."
    elif parcel.sent:
        yield f"Goes on {weekday_words(parcel.sent)}."
    if parcel.to_free_post is not None:
        yield f"{parcel.to_free_post.said} more and post is free."


def _bought(line: Bought) -> str:
    packs = f"{line.packs} × " if line.quote.pack == 1 else f"{line.packs} pack{'s' * (line.packs > 1)} of "
    pieces = "" if line.quote.pack == 1 else f"{line.quote.pack} "
    size = line.need.size or (f"{line.quote.size} (measure yours first)" if line.quote.size else "")
    return f"{packs}{pieces}{line.need.what}{' ' + size if size else ''}, {line.price.said}"


def _why(line: Bought) -> str:
    by = f"by {weekday_words(line.by)}" if line.by else "for later"
    dry = "" if line.holds else "; its joint can go together dry, tagged, and does not lose the session"
    told = f"; the offer is of {day_words(line.quote.day)}"
    return f"for {'; '.join(line.need.for_) or 'stock'}; {by}{dry}{told}"


# ---- the rest


def _further(buying: Buying) -> Iterator[Section]:
    if buying.choices:
        rows = tuple(_choices(buying))
        yield Section(heading="Money against lost sessions", rows=rows, note=_worth(buying))
    if buying.adding:
        rows = tuple(Words(label=a.supplier, text=_adding(a)) for a in buying.adding)
        yield Section(heading="No extra post: add these now", rows=rows)
    if buying.donor:
        rows = tuple(
            Words(label=one.part, text=f"{one.doubt or 'take it off the donor first'}")
            for one in buying.donor
        )
        yield Section(heading="On the donor", rows=rows)
    if buying.nobody:
        rows = tuple(Words(text=need_words(one.need, one.pieces)) for one in buying.nobody)
        yield Section(
            heading="Needed, and offered by nobody yet",
            rows=rows,
            note="Write an offer as: offered pinion seal by Ottermere Seals £6.40 post £3.50, 2 days.",
        )
    if buying.unsent:
        rows = tuple(Words(text=need_words(one.need, one.pieces)) for one in buying.unsent)
        note = "All that is needed from its supplier is below the minimum, or too heavy for the post."
        yield Section(heading="Offered, and not to be had by itself", rows=rows, note=note)
    if buying.unusable:
        yield Section(heading="Offers that cannot be used", rows=tuple(_unusable(buying)))


def _worth(buying: Buying) -> str:
    if buying.worth is not None:
        return f"A lost session is worth {buying.worth.said} to you. That is your number, and it decides."
    if len(buying.choices) == 1:
        return ""
    if buying.even is None:
        return "You have not said what a lost session is worth."
    return (
        "You have not said what a lost session is worth, so the one that loses fewest is taken. "
        f"It is worth it as long as a session is worth more than {buying.even.said} to you. "
        'Say so: "a lost session is worth £40".'
    )


def _choices(buying: Buying) -> Iterator[Row]:
    for number, choice in enumerate(buying.choices):
        taken = ", taken" if number == buying.chosen else ""
        proven = "" if choice.proven else f"; none costs less than {choice.at_least.said}"
        senders = ", ".join(p.supplier for p in choice.parcels)
        yield Words(label=f"{choice.money.said}{taken}", text=f"{lost_words(choice.lost)} {senders}{proven}")


def _adding(one: Adding) -> str:
    instead = f"{one.now.said} now, {one.later.said} by itself another day"
    less = f"; post falls by {Money(-one.post.minor, one.post.currency).said}" if one.post.minor < 0 else ""
    return f"{_bought(one.line)}. {instead}{less}"


def _unusable(buying: Buying) -> Iterator[Row]:
    for one in buying.unusable:
        told = f"{one.given}. What would hold: {one.holds}. {one.do}"
        yield Words(label=f"{one.what}, line {one.line}", text=told)


def need_words(need: Need, pieces: int) -> str:
    """A need in a line."""
    named = " ".join(part for part in (f"{pieces} ×", need.what, need.size) if part)
    return f"{named} (for {'; '.join(need.for_)})" if need.for_ else named
