"""Looking for a leak: which look comes first, what it is worth, what a dry look teaches."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, structs

from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ratio, demand_range


class Suspect(Struct, frozen=True, kw_only=True):
    """One place that may leak.

    chance   ratio  that it is the one, before any look
    minutes  min    that a look takes
    finds    ratio  how often a look shows it, if it is the one
    dry      count  looks already made that showed nothing
    """

    name: str
    chance: float
    minutes: float
    finds: float
    dry: int = 0

    @property
    def weight(self) -> float:
        """Chance that it is the one and that every look so far missed it."""
        return self.chance * (1 - self.finds) ** self.dry

    @property
    def worth(self) -> float:
        """What a minute spent on the next look is worth."""
        return self.weight * self.finds / self.minutes


def demand_suspects(suspects: Sequence[Suspect]) -> None:
    """Refuse what cannot be searched: no suspects, one name twice, chances beyond one."""
    if not suspects:
        raise BadInput(given="no suspects", holds="at least one place that may leak", do="Name the places.")
    for one in suspects:
        demand_range(f"chance of {one.name}", one.chance, "", 0, 1, "Give it as 30 % or 0.3.")
        demand_range(f"minutes of {one.name}", one.minutes, "min", 0.1, 10_000, "How long does a look take?")
        demand_range(f"finds of {one.name}", one.finds, "", 0.01, 1, "How often does the look show it?")
    if len({one.name for one in suspects}) < len(suspects):
        raise BadInput(given="one suspect twice", holds="each name once", do="Give each its own name.")
    total = sum(one.chance for one in suspects)
    if total > 1 + 1e-9 or total <= 0:
        raise BadInput(
            given=f"chances that add up to {total * 100:.0f} %",
            holds="above 0 and at most 100 %: one leak, and what is left over is a place not on the list",
            do="Bring the chances down together.",
        )


def best_order(suspects: Sequence[Suspect]) -> tuple[Suspect, ...]:
    """The order of looks that finds one leak soonest, each place looked at once.

    Takes
        suspects  list  of `Suspect`
    Gives
        the same, by chance × finds ÷ minutes; among equals the quicker look first
    Refuses
        as `demand_suspects`
    Caution
        none
    Source
        search-order
    Example
        >>> a = Suspect(name="a", chance=0.8, minutes=3, finds=1.0)
        >>> b = Suspect(name="b", chance=0.2, minutes=2, finds=1.0)
        >>> [one.name for one in best_order([b, a])]
        ['a', 'b']
    """
    demand_suspects(suspects)
    return tuple(sorted(suspects, key=lambda one: (-one.worth, one.minutes, one.name)))


def expected_minutes(order: Sequence[Suspect], elsewhere: float) -> float:
    """Minutes spent, on average, until the leak is found or the last place has been looked at.

    Takes
        order      list   of `Suspect`, in the order they are looked at
        elsewhere  ratio  chance that it is none of them, before any look
    Gives
        min
    Refuses
        no suspects
    Caution
        none
    Source
        search-order
    Example
        >>> a = Suspect(name="a", chance=0.8, minutes=3, finds=1.0)
        >>> b = Suspect(name="b", chance=0.2, minutes=2, finds=1.0)
        >>> round(expected_minutes([a, b], 0), 9), round(expected_minutes([b, a], 0), 9)
        (3.4, 4.4)
    """
    still = sum(one.weight for one in order) + elsewhere
    total, hidden = 0.0, 1.0
    for one in order:
        total += one.minutes * hidden
        hidden -= one.weight * one.finds / still
    return total


def chances_now(suspects: Sequence[Suspect]) -> tuple[float, ...]:
    """The chance of each suspect after the dry looks so far, and last the chance of a place not listed.

    >>> a = Suspect(name="a", chance=0.5, minutes=3, finds=0.8, dry=1)
    >>> b = Suspect(name="b", chance=0.4, minutes=2, finds=1.0)
    >>> [round(c, 3) for c in chances_now([a, b])]
    [0.167, 0.667, 0.167]
    """
    elsewhere = elsewhere_of(suspects)
    whole = sum(one.weight for one in suspects) + elsewhere
    return tuple(part / whole for part in (*(one.weight for one in suspects), elsewhere))


def elsewhere_of(suspects: Sequence[Suspect]) -> float:
    """Chance, before any look, that the leak is at none of the places."""
    return max(0.0, 1 - sum(one.chance for one in suspects))


def all_dry(suspects: Sequence[Suspect]) -> tuple[Suspect, ...]:
    """The same suspects after one more dry look at each."""
    return tuple(structs.replace(one, dry=one.dry + 1) for one in suspects)


def chance_after(prior: Ratio, misses: Ratio, cries_wolf: Ratio, *, shows: bool) -> Ratio:
    """Chance that a place leaks after one test that may miss, and may show what is not there.

    Takes
        prior       ratio   before the test
        misses      ratio   how often the test shows nothing though it leaks
        cries_wolf  ratio   how often it shows something though it does not leak
        shows       yes/no  whether it showed something
    Gives
        ratio
    Refuses
        any of them outside 0 to 1, a result that cannot be
    Caution
        none
    Source
        bayes
    Example
        >>> round(chance_after(Ratio(0.7), Ratio(0.025), Ratio(0.015), shows=False), 5)
        0.05591
    """
    for name, value in (("prior", prior), ("misses", misses), ("cries_wolf", cries_wolf)):
        demand_range(name, value, "", 0, 1, "Give it as 0.3 or 30 %.")
    leaking = (1 - misses) if shows else misses
    dry = cries_wolf if shows else 1 - cries_wolf
    whole = prior * leaking + (1 - prior) * dry
    if float(whole) == 0:
        raise BadInput(
            given="a result that this test can never give", holds="one it can give", do="Look again."
        )
    return Ratio(prior * leaking / whole)
