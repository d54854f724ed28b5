"""Looking for a leak: the order cannot be beaten, and a dry look teaches what Bayes says."""

import itertools
from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench import leaks
from witnessmark.bench.leaks import Suspect
from witnessmark.ground.errors import BadInput
from witnessmark.ground.units import Ratio


@st.composite
def searches(draw: st.DrawFn) -> list[Suspect]:
    """Two to six places whose chances leave something over."""
    count = draw(st.integers(2, 6))
    raw = [draw(st.floats(0.05, 1)) for _ in range(count)]
    share = draw(st.floats(0.5, 1.0)) / sum(raw)
    return [
        Suspect(
            name=f"place {i}",
            chance=raw[i] * share,
            minutes=draw(st.floats(1, 60)),
            finds=draw(st.floats(0.2, 1)),
            dry=draw(st.integers(0, 2)),
        )
        for i in range(count)
    ]


@given(searches())
def test_no_other_order_finds_it_sooner(places: list[Suspect]) -> None:
    elsewhere = leaks.elsewhere_of(places)
    if sum(one.weight for one in places) + elsewhere <= 1e-12:
        return
    ours = leaks.expected_minutes(leaks.best_order(places), elsewhere)
    every = min(leaks.expected_minutes(order, elsewhere) for order in itertools.permutations(places))
    assert ours == pytest.approx(every, rel=1e-9)


@given(searches())
def test_chances_add_up_to_one_before_and_after(places: list[Suspect]) -> None:
    if leaks.elsewhere_of(places) + sum(one.weight for one in places) <= 1e-12:
        return
    assert sum(leaks.chances_now(places)) == pytest.approx(1)


@given(st.floats(0.05, 0.6), st.floats(0.05, 0.35), st.floats(0.1, 0.99))
def test_a_dry_look_teaches_what_bayes_says(chance: float, other: float, finds: float) -> None:
    """The same by the rule for one test that may miss and never cries wolf."""
    a = Suspect(name="a", chance=chance, minutes=1, finds=finds, dry=1)
    b = Suspect(name="b", chance=other, minutes=1, finds=0.5)
    ours = leaks.chances_now([a, b])
    assert ours[0] == pytest.approx(
        leaks.chance_after(Ratio(chance), Ratio(1 - finds), Ratio(0), shows=False), rel=1e-9
    )
    assert ours[1] == pytest.approx(other / (1 - chance * finds))


@dataclass(frozen=True)
class Place:
    chance: float
    finds: float
    minutes: float


REPEATED = (Place(0.45, 0.7, 20), Place(0.30, 0.9, 10), Place(0.15, 0.95, 5), Place(0.10, 0.6, 2))
TAIL = 40


def spent(sequence: tuple[int, ...]) -> float:
    """Expected minutes of a sequence of independent looks, counted by hand: no use of our functions."""
    hidden = [p.chance for p in REPEATED]
    total = 0.0
    for i in sequence:
        total += REPEATED[i].minutes * sum(hidden)
        hidden[i] *= 1 - REPEATED[i].finds
    return total


def greedy(first: tuple[int, ...], looks: int) -> tuple[int, ...]:
    """Go on from some looks by our rule, with its memory of dry ones."""
    done = list(first)
    while len(done) < looks:
        now = [
            Suspect(name=str(i), chance=p.chance, minutes=p.minutes, finds=p.finds, dry=done.count(i))
            for i, p in enumerate(REPEATED)
        ]
        done.append(int(leaks.best_order(now)[0].name))
    return tuple(done)


def test_with_looks_repeated_the_memory_still_gives_the_best_beginning() -> None:
    """Every beginning of five looks, each gone on with by the rule: none is cheaper than the rule itself."""
    ours = greedy((), TAIL)
    assert ours[:6] == (3, 2, 1, 0, 3, 3)
    cheapest = min(spent(greedy(begin, TAIL)) for begin in itertools.product(range(4), repeat=3))
    assert spent(ours) == pytest.approx(cheapest, rel=1e-9)


def test_equal_worth_takes_the_quicker_look_first() -> None:
    slow = Suspect(name="slow", chance=0.4, minutes=8, finds=0.5)
    quick = Suspect(name="quick", chance=0.1, minutes=2, finds=0.5)
    assert [one.name for one in leaks.best_order([slow, quick])] == ["quick", "slow"]


def test_one_more_dry_look_at_each() -> None:
    a = Suspect(name="a", chance=0.5, minutes=1, finds=0.5)
    assert leaks.all_dry([a])[0].weight == pytest.approx(0.25)


@pytest.mark.parametrize(
    ("places", "said"),
    [
        ([], "no suspects"),
        ([("a", 0.6, 1, 0.5), ("b", 0.6, 1, 0.5)], "120 %"),
        ([("a", 0.0, 1, 0.5)], "0 %"),
        ([("a", 0.5, 0, 0.5)], "minutes of a"),
        ([("a", 0.5, 1, 0)], "finds of a"),
        ([("a", float("nan"), 1, 0.5)], "chance of a"),
        ([("a", 0.2, 1, 0.5), ("a", 0.2, 1, 0.5)], "twice"),
    ],
)
def test_what_cannot_be_searched_is_refused(places: list[tuple[str, float, float, float]], said: str) -> None:
    with pytest.raises(BadInput, match=said):
        leaks.best_order([Suspect(name=n, chance=c, minutes=m, finds=f) for n, c, m, f in places])


@pytest.mark.parametrize(("shows", "prior"), [(True, 0.0), (False, 1.0)])
def test_a_result_that_cannot_be_is_refused(shows: bool, prior: float) -> None:
    with pytest.raises(BadInput, match="never give"):
        leaks.chance_after(Ratio(prior), Ratio(0), Ratio(0), shows=shows)
