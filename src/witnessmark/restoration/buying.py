"""Tonight's order for the shell: the sheet, the picture, and plain values in fixed names."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import to_builtins

from witnessmark.buy.buying import Adding, Bought, Buying, Choice, Parcel
from witnessmark.buy.needed import Required
from witnessmark.ground.errors import BadInput
from witnessmark.ground.money import Money, money, read_money
from witnessmark.restoration.flow import Flow
from witnessmark.sheets.buy import buy_sheet, headline
from witnessmark.sheets.parcels import BROAD, NARROW, parcels_svg
from witnessmark.sheets.phrases import short_day
from witnessmark.sheets.rows import Sheet

Plain = dict[str, Any]


def buy_screen(flow: Flow, buying: Buying) -> Sheet:
    """What to order tonight."""
    return buy_sheet(buying, vehicle=flow.vehicle.name, today=flow.today, line=flow.line)


def buy_picture(buying: Buying, *, narrow: bool = False) -> str:
    """The basket as parcels, SVG, for a desk or for a phone; "" where nothing is ordered."""
    return parcels_svg(buying, NARROW if narrow else BROAD)


def worth_typed(typed: str, currency: str) -> Money | None:
    """What a lost session is worth, as typed at a command; None where nothing is."""
    if not typed.strip():
        return None
    amount, told = read_money(typed, currency)
    if amount < 0 or (told and told != currency):
        raise BadInput(
            given=f"a lost session is worth {typed}",
            holds=f"a sum of nothing or more, in {currency}",
            do="Give what a lost session is worth to you, as --worth 40.",
        )
    return money(amount, currency)


def buy_plain(buying: Buying) -> Plain:
    """The answer as plain values; money in the smallest coin beside its currency."""
    choice = buying.choice
    return {
        "headline": headline(buying),
        "currency": buying.currency,
        "sessions": [day.isoformat() for day in buying.sessions],
        "worth": buying.worth.minor if buying.worth else None,
        "even": buying.even.minor if buying.even else None,
        "chosen": _choice(choice) if choice else None,
        "choices": [_choice(one) for one in buying.choices],
        "adding": [_adding(one) for one in buying.adding],
        "nobody": [_required(one) for one in buying.nobody],
        "unsent": [_required(one) for one in buying.unsent],
        "donor": [{"what": one.need.what, "part": one.part, "doubt": one.doubt} for one in buying.donor],
        "unusable": [to_builtins(one) for one in buying.unusable],
    }


def _required(one: Required) -> Plain:
    return {
        "what": one.need.what,
        "size": one.need.size,
        "quantity": one.pieces,
        "for": list(one.need.for_),
    }


def _choice(choice: Choice) -> Plain:
    return {
        "money": choice.money.minor,
        "at_least": choice.at_least.minor,
        "proven": choice.proven,
        "lost": [day.isoformat() for day in choice.lost],
        "chance": choice.chance,
        "parcels": [_parcel(one) for one in choice.parcels],
    }


def _parcel(parcel: Parcel) -> Plain:
    return {
        "supplier": parcel.supplier,
        "lines": [_bought(one) for one in parcel.lines],
        "goods": parcel.goods.minor,
        "post": parcel.post.minor,
        "duty": parcel.duty.minor,
        "grams": parcel.grams,
        "sent": parcel.sent.isoformat(),
        "likely": parcel.likely.isoformat(),
        "latest": parcel.latest.isoformat(),
        "cut_off": parcel.cut_off,
        "to_free_post": parcel.to_free_post.minor if parcel.to_free_post else None,
    }


def _bought(line: Bought) -> Plain:
    return {
        "what": line.need.what,
        "size": line.need.size or line.quote.size,
        "for": list(line.need.for_),
        "packs": line.packs,
        "pack": line.quote.pack,
        "price": line.price.minor,
        "number": line.quote.number,
        "by": line.by.isoformat() if line.by else "",
        "holds": line.holds,
        "line": line.quote.line,
    }


def _adding(one: Adding) -> Plain:
    return {"supplier": one.supplier, **_bought(one.line), "now": one.now.minor, "later": one.later.minor}


def order_lines(buying: Buying) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """For each parcel its supplier, and of each thing in it its name and the line that, typed, orders it."""
    parcels = buying.choice.parcels if buying.choice else ()
    return tuple((parcel.supplier, tuple(_ordering(parcel))) for parcel in parcels)


def _ordering(parcel: Parcel) -> Iterator[tuple[str, str]]:
    for one in parcel.lines:
        number = one.packs * one.quote.pack
        size = f" {one.quote.size}" if one.quote.size else ""
        thing = f"{number} {one.quote.item}{size}"
        yield thing, f"ordered {thing} from {parcel.supplier} {one.price.said} due {_due(parcel)}"


def _due(parcel: Parcel) -> str:
    return short_day(parcel.likely)[:-5]
