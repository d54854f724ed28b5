"""What must be in hand for what is owed, with what is to hand and in the post set against it."""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.owed.by_size import size_of
from witnessmark.owed.debt import Debt
from witnessmark.owed.stock import Item, Stock, bare, sized
from witnessmark.state.closing import own_items
from witnessmark.state.standing import State
from witnessmark.vehicle.catalogue import kind_of
from witnessmark.vehicle.sides import parted


class Need(Struct, frozen=True, kw_only=True):
    """So many of one thing, of one size.

    for_           the joints and parts it is for
    by             the day it is needed, year-month-day; "" where no session of those to come needs it
    have, ordered  how many of these are to hand, and how many are in the post
    """

    what: str
    size: str = ""
    quantity: float = 1
    for_: tuple[str, ...] = ()
    by: str = ""
    have: float = 0
    ordered: float = 0

    @property
    def short(self) -> float:
        """How many are neither to hand nor in the post."""
        return max(0, self.quantity - self.have - self.ordered)


def needs_from(debts: Iterable[Debt], state: State, extra_items: Iterable[Item] = ()) -> tuple[Need, ...]:
    """Needs of what is owed, heaviest debt first, and of further items; merged by thing and size.

    Seals and the like of unknown size are not merged: nobody knows that they are alike.
    """
    stock = Stock(state)
    needs: dict[tuple[frozenset[str], str, str], Need] = {}
    for item in [*(i for debt in debts if (i := item_of(debt, state)) is not None), *extra_items]:
        have, ordered = stock.take(item)
        key = (bare(item.what), item.size, item.for_ if sized(item) else "")
        before = needs.get(key) or Need(what=item.what, size=item.size, quantity=0)
        needs[key] = replace(
            before,
            quantity=before.quantity + item.quantity,
            for_=tuple(dict.fromkeys([*before.for_, *([item.for_] if item.for_ else [])])),
            have=before.have + have,
            ordered=before.ordered + ordered,
        )
    return tuple(needs.values())


def item_of(debt: Debt, state: State) -> Item | None:
    """What a debt asks to have in hand: a renewal its item, a finding the new one; most ask nothing."""
    if debt.sort not in ("renew", "finding"):
        return None
    if debt.part:
        return part_item(state, debt.part) if debt.sort == "finding" else None
    if debt.sort == "renew":
        return renewal_item(state, debt.joint, debt.item)
    found = next((f.item for f in state.joints[debt.joint].findings if f.line == debt.line and f.item), "")
    if found:
        return renewal_item(state, debt.joint, found)
    joint = state.vehicle.joints[debt.joint]
    own = own_items(joint, kind_of(joint.kind))
    still_owed = [item for item in own if state.joints[debt.joint].opened_line is None]
    return renewal_item(state, debt.joint, still_owed[0]) if still_owed else None


def part_item(state: State, name: str) -> Item:
    """A new one of a part, by the size that was found or measured on the old."""
    found = state.sizes.of.get((name, ""))
    return Item(what=parted(name)[0], for_=name, size=found.text if found else "")


def renewal_item(state: State, name: str, what: str) -> Item:
    """A renewable of a joint, with its number, its other words, and the size it can be ordered by."""
    joint = state.vehicle.joints[name]
    kind = kind_of(joint.kind)
    row = next((r for r in kind.renew if r.item == what), None)
    return Item(
        what=what,
        for_=name,
        size=size_of(state, joint, what),
        quantity=row.number if row else 1,
        words=row.words if row else (),
    )
