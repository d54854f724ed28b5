"""Judge a reading by what a line should mean: kind of fact, name, side, figures and what else is wanted."""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path
from typing import Any

from msgspec import json as wire

from witnessmark.ground.spoken import COUNT, read_said
from witnessmark.vehicle.conditions import condition
from witnessmark.vehicle.sides import parted
from witnessmark.vehicle.things import Joint, Part, Vehicle
from witnessmark.words.lexicon import stems
from witnessmark.words.newnames import tell_kind
from witnessmark.words.read import read_line
from witnessmark.words.understood import Reading, Understood

TODAY = date(2026, 3, 18)
_TAGS = {"away": "sent_away"}
# Kinds of fact that the lists knew only under a wider word.
_FINER = {
    "read_figure": "described",
    "opened_tin": "opened",
    "watched_fire": "looked_at",
    "came_back": "came",
    "put_right": "proved",
    "closed": "proved",
}
# Facts that are said of no one thing.
_NAMELESS = {"remarked", "held", "ran", "described_vehicle"}
# A count that a fact has no place for stays in its remark, as it was said.
_SAID = {
    1: {"one", "a"},
    2: {"two", "twice", "both", "pair"},
    3: {"three"},
    4: {"four"},
    5: {"five"},
    6: {"six"},
    8: {"eight"},
    10: {"ten"},
    12: {"twelve", "dozen"},
}


def rows(name: str) -> list[dict[str, Any]]:
    """Lines with their wanted readings."""
    found: list[dict[str, Any]] = json.loads((Path(__file__).parent / name).read_text("utf-8"))
    return found


def vehicle_knowing(names: list[str]) -> Vehicle:
    """A vehicle that knows these names: what is called like a part as a part, the rest as joints."""
    parts: dict[str, Part] = {}
    joints: dict[str, Joint] = {}
    for name in (n.lower() for n in names):
        plain, side = parted(name)
        kind = tell_kind(plain)
        if kind == "part":
            parts[name] = Part(name=name, side=side)
        else:
            joints[name] = Joint(name=name, side=side, kind=kind or "unsaid")
    return Vehicle(country="GB", parts=parts, joints=joints)


def read(row: dict[str, Any]) -> Understood:
    return read_line(row["line"], vehicle_knowing(row["known"]), today=TODAY)


def faults(row: dict[str, Any], best: Reading) -> list[str]:
    """What a reading has wrong; nothing where it is right."""
    found = []
    wanted = row["verb"] if isinstance(row["verb"], list) else [row["verb"]]
    if not {best.verb, _FINER.get(best.verb, best.verb)} & {_TAGS.get(tag, tag) for tag in wanted}:
        found.append(f"kind of fact {best.verb}")
    names = {n.lower() for n in (best.part, best.joint, getattr(best.fact, "item", "")) if n}
    if not _is_named_rightly(row, wanted, names, best):
        found.append(f"name {sorted(names)}")
    if (best.side or None) not in {row["side"], row["side"] or _only_side(row)}:
        found.append(f"side {best.side}")
    if not _same_figures(row, best):
        found.append(f"figures {best.figures}")
    return found + [
        f"{key} is not {value}" for key, value in row["also"].items() if not _holds(key, value, best)
    ]


def _is_named_rightly(row: dict[str, Any], wanted: list[str], names: set[str], best: Reading) -> bool:
    """The thing wanted is named; where a list names none, what is read must at least have been typed."""
    thing = (row["name"] or row["also"].get("item") or "").lower()
    if thing and (_is_named(thing, names, best) or _is_new_and_fuller(thing, row, names)):
        return True
    if row["name"]:
        return False
    return not (best.part or best.joint) or (
        not _NAMELESS.intersection(wanted) and all(set(stems(n)) <= set(stems(row["line"])) for n in names)
    )


def _is_new_and_fuller(wanted: str, row: dict[str, Any], names: set[str]) -> bool:
    """A thing that the record does not know may be called by more of the words that were typed."""
    known = {parted(name.lower())[0] for name in row["known"]}
    return wanted not in known and any(
        n.endswith(f" {wanted}") and n not in known and set(stems(n)) <= set(stems(row["line"]))
        for n in names
    )


def _is_named(wanted: str, names: set[str], best: Reading) -> bool:
    """Whether the name is told; one or more of a thing bought are the same; a bill says what for."""
    fact: Any = best.fact
    one = bool(getattr(fact, "item", "")) and any(_is_one_of(wanted, n) for n in names)
    return wanted in names or one or wanted in getattr(fact, "what", "").lower().split(" for ")[-1]


def _is_one_of(wanted: str, name: str) -> bool:
    """The same thing bought, by all the words of its name or by fewer: "fork seals" are fork oil seals."""
    return set(stems(wanted)) <= set(stems(name)) and stems(wanted)[-1:] == stems(name)[-1:]


def _only_side(row: dict[str, Any]) -> str | None:
    """The side of a thing that the record knows once only: it need not be typed."""
    known = [parted(name.lower()) for name in row["known"]]
    sides = {side for plain, side in known if plain == (row["name"] or "").lower()}
    return next(iter(sides)) if len(sides) == 1 else None


def _same_figures(row: dict[str, Any], best: Reading) -> bool:
    """The same figures; a distance wanted as `km` is judged there, whether it is told as a figure or not.

    A description has no place for figures: they stay in its remark.
    """
    if best.verb == "described" and best.remark:
        return True
    passed = "km" if "km" in row["also"] else "-"
    have = sorted((q.unit, q.value) for q in best.figures if q.unit != passed)
    want = sorted((f["unit"], f["value"]) for f in row["figures"] if f["unit"] != passed)
    return len(have) == len(want) and all(
        a[0] == b[0] and abs(a[1] - b[1]) <= max(0.01, 0.002 * abs(b[1]))
        for a, b in zip(have, want, strict=True)
    )


def _holds(key: str, value: Any, best: Reading) -> bool:
    fact: Any = best.fact
    match key:
        case "from":
            return bool(getattr(fact, "start", "") == value)
        case "to":
            return bool(getattr(fact, "end", "") == value)
        case "price":
            price = getattr(fact, "price", None) or getattr(fact, "amount", 0.0)
            return bool(abs(price - value) < 1e-6)
        case "km":
            return bool(abs(getattr(fact, "km", 0.0) - value) <= 0.005)
        case "time":
            return bool(best.time == value)
        case "due_back":
            return bool(getattr(fact, "due_back", ""))
        case "finding":
            return condition(value).word == getattr(fact, "condition", None) or _is_told(value, best)
        case "count":
            return _is_counted(value, best)
        case _:
            return _is_told(value, best)


def _is_told(value: str, best: Reading) -> bool:
    """Whether every word of it is kept somewhere: in the fact, its remark, or what is read back."""
    written = " ".join(wire.encode(fact).decode() for fact in best.facts)
    kept = f"{written} {best.remark} {best.sentence}".lower()
    words = [word for word in value.lower().split() if word not in ("a", "the", "my")]
    return all(word[: max(3, len(word) - 2)] in kept for word in words)


def _is_counted(value: int, best: Reading) -> bool:
    """In the fact, or kept in the remark in figures or words."""
    fact: Any = best.fact
    counted = {getattr(fact, "number", 0), getattr(fact, "plugs", 0), len(getattr(fact, "at", ()))}
    counted |= {thing.number for thing in (*getattr(fact, "joints", ()), *getattr(fact, "parts", ()))}
    kept = re.findall(rf"{COUNT}|(?<=x)[0-9]+|\w+", best.remark.lower())
    counted |= {read_said(word) for word in kept}
    ordinals = {f"{value}{ending}" for ending in ("st", "nd", "rd", "th")}
    return (
        value in counted
        or str(value) in kept
        or bool(ordinals & set(kept))
        or (value == 2 and bool({"twice", "both"} & set(kept)))
    )
