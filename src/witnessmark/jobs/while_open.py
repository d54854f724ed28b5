"""What is worth doing while it is open: time now and later, and the parts; capped, and free to refuse."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from witnessmark.engines.ways import best_way
from witnessmark.ground.missed import IfMissed, if_missed
from witnessmark.jobs.garage import REFURBISH
from witnessmark.owed.debt import Debt, spoken
from witnessmark.owed.needs import Need, item_of, needs_from, renewal_item
from witnessmark.owed.stock import Item
from witnessmark.reach.access import Access, access_of
from witnessmark.reach.minutes import CLOSING, OPENING, PROVING, minutes_for
from witnessmark.reach.way_in import WayIn
from witnessmark.state.joint_state import APART
from witnessmark.state.standing import State
from witnessmark.state.supply import Line
from witnessmark.vehicle.catalogue import kind_of

# Of the time planned anyway, so much may go into what was not planned; what lets go is not bound by it.
# Common practice, no source.
MOST_OF_PLANNED = 0.25

# A look at a joint nobody has touched, with a photograph. Common practice, no source.
LOOK = 5

# Coming back another day: the same way open, closed and proven once more, told from opening it alone.
THERE_AND_BACK = (OPENING + CLOSING + PROVING) / OPENING

TO_HAND, IN_THE_POST, TO_ORDER, NOTHING = "to hand", "in the post", "to order", "nothing to buy"


class Worth(Struct, frozen=True, kw_only=True):
    """One thing that this opening lets a hand come to, likely minutes.

    what    look at it, or what is wanted or owed; because: what is behind that
    now     to do it while it is open; later: to come back for it, the way there and back included
    parts   to hand, in the post, to order, or nothing to buy; needs: what that is
    refuse  the line that, typed, keeps the no and its reason
    """

    name: str
    what: str
    because: str
    if_missed: str
    now: int
    later: int
    parts: str
    needs: tuple[str, ...] = ()
    refuse: str = ""


class Refused(Struct, frozen=True, kw_only=True):
    """A no that was kept: when, and why."""

    name: str
    why: str
    line: int


class WhileOpen(Struct, frozen=True, kw_only=True):
    """What is worth doing now, heaviest and cheapest first; what goes beyond the cap; what was refused.

    planned  likely minutes of the opening, of what it is for, and of closing again; cap: a share of it
    """

    worth: tuple[Worth, ...]
    beyond: tuple[Worth, ...]
    refused: tuple[Refused, ...]
    planned: int
    cap: int


def while_open(state: State, debts: Iterable[Debt], way: WayIn) -> WhileOpen:
    """What a way in opens besides.

    Wanted and owed things come with their own minutes and parts; what nobody has touched yet is worth a look.
    """
    owed = tuple(debts)
    access = access_of(state, way.targets)
    planned = _planned(state, way)
    worth, refused = [], []
    for name in _come_to(access, way):
        no = _refusal(state, name)
        if no is not None:
            refused.append(Refused(name=name, why=no.fact.why, line=no.line))
        elif (one := _worth(state, owed, access, name)) is not None:
            worth.append(one)
    worth.sort(key=lambda w: (if_missed(w.if_missed), w.what.startswith("look"), w.now - w.later, w.name))
    kept, beyond = _capped(worth, round(planned * MOST_OF_PLANNED))
    return WhileOpen(
        worth=kept,
        beyond=beyond,
        refused=tuple(refused),
        planned=planned,
        cap=round(planned * MOST_OF_PLANNED),
    )


def _capped(worth: Sequence[Worth], cap: int) -> tuple[tuple[Worth, ...], tuple[Worth, ...]]:
    """What lets go in any case; of the rest what the cap leaves room for."""
    kept, beyond, used = [], [], 0
    for one in worth:
        free = if_missed(one.if_missed) == IfMissed.LETS_GO
        if free or used + one.now <= cap:
            kept.append(one)
            used += 0 if free else one.now
        else:
            beyond.append(one)
    return tuple(kept), tuple(beyond)


def _planned(state: State, way: WayIn) -> int:
    own = sum(minutes_for(state, target).likely for target in way.targets)
    return round(way.minutes * THERE_AND_BACK + own)


def _come_to(access: Access, way: WayIn) -> Iterator[str]:
    """What a hand comes to by then, and did not before; what comes off on the way is no extra."""
    opened = access.gone | {access.numbers[name] for name in (*way.remove, *way.targets)}
    for number, name in enumerate(access.names):
        if number not in opened and not access.reached(name, access.gone) and access.reached(name, opened):
            yield name


def _refusal(state: State, name: str) -> Line | None:
    """The latest no to a thing, unless it was wanted again since."""
    said = [line for line in state.supply.left if name in line.fact.at]
    wanted = [line for line in state.supply.wanted if name in line.fact.at]
    if not said or (wanted and (wanted[-1].day, wanted[-1].line) > (said[-1].day, said[-1].line)):
        return None
    return said[-1]


def _worth(state: State, owed: Sequence[Debt], access: Access, name: str) -> Worth | None:
    asked = [debt for debt in owed if name in (debt.joint, debt.part)]
    wanted = [line for line in state.supply.wanted if name in line.fact.at]
    joint = state.joints.get(name)
    if not asked and not wanted and (joint is None or not joint.as_found or joint.scrapped):
        return None
    later = round(best_way(access.problem([name])).cost * THERE_AND_BACK)
    parts, needs = _parts(state, asked, name, renewed=bool(wanted))
    now = _minutes(state, name) if asked or wanted else LOOK
    what, because = _said(asked, wanted)
    return Worth(
        name=name,
        what=what,
        because=because,
        if_missed=_if_missed(state, asked, name),
        now=now,
        later=later + now,
        parts=parts,
        needs=needs,
        refuse=f"left {spoken(name)} as it is because REASON",
    )


def _said(asked: Sequence[Debt], wanted: Sequence[Line]) -> tuple[str, str]:
    if wanted:
        return f"wanted: {wanted[-1].fact.job or 'put right'}", f"line {wanted[-1].line}"
    if asked:
        more = f" and {len(asked) - 1} more" if len(asked) > 1 else ""
        return f"{asked[0].what}{more}", asked[0].because
    return "look at it, and photograph it", "nobody has touched it yet"


def _minutes(state: State, name: str) -> int:
    """The whole of its minutes, less the opening where it stands open; a part is made good by itself."""
    whole = minutes_for(state, name).likely
    joint = state.joints.get(name)
    if joint is None:
        return round(max(whole, REFURBISH))
    return max(1, round(whole * (1 - OPENING) if joint is not None and joint.position == APART else whole))


def _if_missed(state: State, asked: Sequence[Debt], name: str) -> str:
    joint = state.vehicle.joints.get(name)
    if joint is not None:
        return joint.if_missed or kind_of(joint.kind).if_missed
    return asked[0].if_missed if asked else IfMissed.LOOKS.key


def _parts(state: State, asked: Sequence[Debt], name: str, *, renewed: bool) -> tuple[str, tuple[str, ...]]:
    """Whether what it takes is to hand, by the worst of it; and what that is."""
    needs = needs_from(asked, state, _renewals(state, asked, name) if renewed else ())
    if not needs:
        return NOTHING, ()
    named = tuple(_named(need) for need in needs)
    if any(need.short for need in needs):
        return TO_ORDER, named
    return (IN_THE_POST if any(need.ordered for need in needs) else TO_HAND), named


def _renewals(state: State, asked: Sequence[Debt], name: str) -> Iterator[Item]:
    """What goes in new in any case, but what is owed there already."""
    joint = state.vehicle.joints.get(name)
    due = {item.what for debt in asked if (item := item_of(debt, state)) is not None}
    for row in kind_of(joint.kind).renew if joint is not None else ():
        if row.always and row.item not in due:
            yield replace(renewal_item(state, name, row.item), quantity=row.number)


def _named(need: Need) -> str:
    return " ".join(part for part in (f"{need.quantity:g} ×", need.what, need.size) if part)
