"""Slips about looking for a leak."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from witnessmark.bench import leaks
from witnessmark.bench.leaks import Suspect
from witnessmark.bench.picture.leaks import leaks_picture
from witnessmark.bench.question import Question, may, need
from witnessmark.bench.readings import looks, suspects
from witnessmark.bench.slip import Band, Row, Slip
from witnessmark.bench.slip_text import figure
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ratio


def answer_order(*, suspects: Sequence[Suspect], results: Sequence[tuple[str, bool]] = ()) -> Slip:
    """Which place to look at first, and what the looks so far have taught."""
    leaks.demand_suspects(suspects)
    known, found = _remembered(tuple(suspects), results)
    elsewhere = leaks.elsewhere_of(known)
    if found:
        return _found(found, known)
    order = leaks.best_order(known)
    minutes = leaks.expected_minutes(order, elsewhere)
    now = dict(zip([*(s.name for s in known), "elsewhere"], leaks.chances_now(known), strict=True))
    dry = leaks.all_dry(known)
    after = dict(zip([*(s.name for s in dry), "elsewhere"], leaks.chances_now(dry), strict=True))
    first = order[0]
    return Slip(
        subject="leaks",
        question="order",
        results={
            "order": tuple(_row(i, one, now, after) for i, one in enumerate(order, 1)),
            "expected_minutes": Band(minutes, "min"),
            "chances": tuple(
                {"name": name, "chance": 100 * c, "if_all_dry": 100 * after[name]} for name, c in now.items()
            ),
        },
        units={"chance": "%", "if_all_dry": "%", "minutes": "min", "finds": "%", "worth": "%/min"},
        because=f"look at {first.name} first: most chance of finding it for a minute's work"
        + (
            f"; {figure(now['elsewhere'] * 100)} % that it is a place not on the list"
            if elsewhere > 0
            else ""
        ),
        working=(
            "each place by chance × how often a look shows it ÷ minutes, greatest first: no order "
            "finds it sooner",
            *(
                f"{one.name}: {100 * now[one.name]:.3g} % × {one.finds:.3g} ÷ {one.minutes:g} min = "
                f"{100 * now[one.name] * one.finds / one.minutes:.3g} % a minute"
                for one in order
            ),
            f"on average {figure(minutes)} min until it is found or the last place is dry",
            "a dry look lowers a place, it does not clear it; a second look counts only if it is a fresh one",
            "one leak, and looks that never show what is not there; what must come off first is not "
            "in these minutes",
        ),
        sources=("search-order", "bayes"),
        picture=leaks_picture(
            [(one.name, now[one.name], one.minutes, one.finds) for one in order], now["elsewhere"]
        ),
    )


def _row(place: int, one: Suspect, now: dict[str, float], after: dict[str, float]) -> Row:
    return {
        "place": place,
        "name": one.name,
        "chance": 100 * now[one.name],
        "minutes": one.minutes,
        "finds": 100 * one.finds,
        "worth": 100 * now[one.name] * one.finds / one.minutes,
        "if_all_dry": 100 * after[one.name],
    }


def _remembered(
    suspects: tuple[Suspect, ...], results: Sequence[tuple[str, bool]]
) -> tuple[tuple[Suspect, ...], str]:
    """The suspects with the looks so far, and the name of the one that showed, if any."""
    names = {one.name.lower(): one.name for one in suspects}
    dry = dict.fromkeys(names.values(), 0)
    found = ""
    for name, shows in results:
        if name.lower() not in names:
            raise BadInput(
                given=f"results names {name!r}",
                holds=f"one of {', '.join(names.values())}",
                do="Name the place as in suspects.",
                near=tuple(names.values()),
            )
        if shows:
            found = names[name.lower()]
        else:
            dry[names[name.lower()]] += 1
    sure = [one.name for one in suspects if one.finds == 1 and dry[one.name]]
    if len(sure) == len(suspects) and leaks.elsewhere_of(suspects) <= 0:
        raise BadInput(
            given="every place dry, by looks that never miss, and no chance left for another place",
            holds="looks that may miss, or chances that add up to less than 100 %",
            do="It leaks somewhere: add places, or bring finds below 100 %.",
        )
    return tuple(replace(one, dry=dry[one.name]) for one in suspects), found


def _found(name: str, known: tuple[Suspect, ...]) -> Slip:
    rows: tuple[Row, ...] = tuple(
        {"name": one.name, "chance": 100.0 if one.name == name else 0.0} for one in known
    )
    return Slip(
        subject="leaks",
        question="order",
        results={"order": (), "expected_minutes": Band(0.0, "min"), "chances": rows},
        units={"chance": "%"},
        because=f"{name} was seen to leak: put it right, run it, and look again before closing up",
        working=("a look that shows it settles it, as long as looks never show what is not there",),
        sources=("search-order", "bayes"),
        picture=leaks_picture([(name, Ratio(1.0), 1.0, 1.0)], 0.0),
    )


QUESTIONS: tuple[Question, ...] = (
    Question(
        subject="leaks",
        question="order",
        moment="a drip, and several places it may come from",
        answer=answer_order,
        inputs=(
            need(
                "suspects",
                suspects,
                "name, chance, minutes, how often a look finds it",
                "rear seal 40 % 20 min 80 %; cover gasket 30 % 5 min 90 %; breather 20 % 2 min 95 %",
            ),
            may("results", looks, "looks already made", "breather no"),
        ),
    ),
)
