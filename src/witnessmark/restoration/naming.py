"""Names typed at a command, found among what the record knows."""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz import fuzz, process

from witnessmark.ground.errors import BadInput
from witnessmark.jobs.wishes import APART_FOR, wishes_of
from witnessmark.owed.debt import spoken
from witnessmark.restoration.flow import Flow
from witnessmark.vehicle.things import Vehicle

SURE = 88
NEAR = 55


def targets_named(typed: Sequence[str], vehicle: Vehicle) -> tuple[str, ...]:
    """The whole names of the parts and joints typed; a name that could be several is refused."""
    return tuple(thing_named(words, vehicle) for words in typed)


def thing_named(words: str, vehicle: Vehicle) -> str:
    """The part or joint a person means."""
    names = [*vehicle.joints, *vehicle.parts]
    plain = " ".join(words.lower().replace(",", " ").split())
    by_words = {spoken(name): name for name in names}
    if plain in by_words:
        return by_words[plain]
    ranked = process.extract(plain, list(by_words), scorer=fuzz.WRatio, limit=4)
    close = [by_words[text] for text, likeness, _ in ranked if likeness >= SURE]
    sorted_alike = process.extract(plain, list(by_words), scorer=fuzz.token_sort_ratio, limit=2)
    if (
        sorted_alike
        and sorted_alike[0][1] >= SURE
        and (len(sorted_alike) < 2 or sorted_alike[1][1] < sorted_alike[0][1])
    ):
        return by_words[sorted_alike[0][0]]
    if len(close) == 1:
        return close[0]
    near = tuple(by_words[text] for text, likeness, _ in ranked if likeness >= NEAR)[:3]
    raise BadInput(
        given=f"{words!r} is "
        + ("not clear: several things are called so" if close else "not known to this record"),
        holds="a part or joint the record knows, with its side where there are several",
        do="Say it with its side or corner; `witnessmark state` lists them.",
        near=near,
    )


def wanted_targets(flow: Flow) -> tuple[str, ...]:
    """The joints and parts that the jobs wanted must get at."""
    wanted = [t for wish in wishes_of(flow.state) if wish.job in APART_FOR for t in wish.targets]
    return tuple(t for t in dict.fromkeys(wanted) if t in flow.vehicle.joints or t in flow.vehicle.parts)


def some_target(targets: tuple[str, ...]) -> tuple[str, ...]:
    """The same targets, one at least."""
    if not targets:
        raise BadInput(
            given="nothing to get at is named, and no job wanted is left to do",
            holds="a part or joint by its name, or a job wanted",
            do='Name it, as: reach "pinion seal"; or write a line: wanted: pinion seal renewed.',
        )
    return targets
