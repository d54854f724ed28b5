"""Operations on parts and on what the garage owes: refits, fills, blanks, braces, bare steel, fire watch."""

from __future__ import annotations

from typing import Any

from witnessmark.jobs.acts import MAKING
from witnessmark.jobs.building import Building
from witnessmark.jobs.findings import MAKING_GOOD, finding
from witnessmark.jobs.minutes import about
from witnessmark.jobs.operation import Minutes, Operation
from witnessmark.jobs.steps import NOT_HERE
from witnessmark.owed.debt import Debt
from witnessmark.vehicle.sides import parted

# Minutes of small acts, likely. Common practice, no source.
REFIT, REFURBISH, RENEW_PART, COAT = 15, 60, 20, 45

# Shown after hot work; the least that is published is 30.
FIRE_WATCH = Minutes(60, 60, 60)

_LIKELY = {"fluid": 15, "blank": 5, "brace": 20, "turn": 5, "bag": 5, "back": 5}
_SORTS = {"turn": "garage", "bag": "garage", "back": "garage", "blank": "prepare", "brace": "prepare"}


def part_work(b: Building, part: str, job: str, word: str) -> Operation:
    """What a job does to a part that is off: pays what was found on it."""
    found = [d for d in b.at(part) if d.sort == "finding"]
    likely = RENEW_PART if word == "renew" else REFURBISH
    what = (
        "compare the new {} with the old, and fit it" if word == "renew" else MAKING.get(word, "make good {}")
    )
    new = (parted(part)[0],) if word == "renew" else ()
    return Operation(
        id=f"work/{part}/{word}", what=what.format(part), sort="work", name=part,
        job=job, minutes=about(likely), where=b.state.vehicle.place_of(part), if_missed=_heaviest(b, part),
        pays=b.pay(found), needs=new, **finding(b.state, MAKING_GOOD),
    )  # fmt: skip


def refit(b: Building, part: str, job: str) -> Operation:
    """Put back a part; one that is away or scrapped must be in hand first."""
    owed = [d for d in b.at(part) if d.sort == "refit"]
    away = part in b.state.parts and b.state.parts[part].where in NOT_HERE
    return Operation(
        id=f"fit/{part}", what=f"put back {part}", sort="close", name=part, job=job, minutes=about(REFIT),
        where=b.state.vehicle.place_of(part), if_missed=_heaviest(b, part), pays=b.pay(owed),
        needs=(parted(part)[0],) if away else (),
    )  # fmt: skip


def _heaviest(b: Building, part: str) -> str:
    found = [b.if_missed(j) for j in b.holders(part)]
    return min(found, key=("lets_go", "warns_first", "wrecks", "wets", "looks").index, default="looks")


def garage_operation(b: Building, debt: Debt, job: str) -> Operation:
    """The one operation that pays a debt which belongs to no joint's opening and closing."""
    thing = debt.joint or debt.part or debt.item or debt.where
    common: dict[str, Any] = {
        "what": f"{debt.what}: {thing}", "name": thing, "job": job, "where": debt.where,
        "if_missed": debt.if_missed, "pays": b.pay([debt]), "stage": debt.stage,
    }  # fmt: skip
    if debt.sort == "fire_watch":
        return Operation(
            **common,
            id=f"watch/{thing}",
            sort="watch",
            minutes=FIRE_WATCH,
            put_down=False,
            cautions=("fire-watch",),
        )
    if debt.sort in ("bare", "recoat"):
        when = f"{debt.due}; " if debt.due else ""
        return Operation(
            **common, id=f"coat/{debt.item}", sort="protect", minutes=about(COAT), put_down=False,
            cautions=("solvents",), note=f"{when}steel at least 3 °C warmer than the dew point",
        )  # fmt: skip
    return Operation(
        **common, id=f"{debt.sort}/{debt.item or thing}", sort=_SORTS.get(debt.sort, "close"),
        minutes=about(_LIKELY.get(debt.sort, 15)), put_down=debt.sort != "fluid",
    )  # fmt: skip
