"""What must come off to get at something on a vehicle, and what that opens besides."""

import networkx as nx
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from tests.building import described, evening, state_of
from tests.journals import NAMES, journals
from witnessmark.journal import facts as f
from witnessmark.journal.entry import Entry
from witnessmark.owed.owed import owed_by
from witnessmark.reach.access import access_of
from witnessmark.reach.minutes import opening_minutes
from witnessmark.reach.way_in import way_in
from witnessmark.state.standing import State, state_from
from witnessmark.vehicle.things import Joint, Part

NUTS = Joint(name="wheel nuts", kind="wheel-nuts", holds=("wheel",))
SCREWS = Joint(name="drum screws", kind="plain-fixing", holds=("drum",), behind=(("wheel",),))
SHOES = Joint(name="shoe springs", kind="shoes-and-drum", holds=("shoes",), behind=(("drum",),))
UNION = Joint(name="pipe union", kind="brake-union", behind=(("wheel",),))
CORNER = described(NUTS, SCREWS, SHOES, UNION, *(Part(name=n) for n in ("wheel", "drum", "shoes")))


def test_it_comes_off_outermost_first_and_each_joint_opened_is_named() -> None:
    way = way_in(["shoe springs"], state_of(CORNER))
    assert way.remove == ("wheel nuts", "wheel", "drum screws", "drum")
    assert way.joints_opened == ("wheel nuts", "drum screws")
    assert way.proven


def test_what_is_off_already_costs_nothing() -> None:
    way = way_in(["shoe springs"], state_of(CORNER, f.TookOff(at=("wheel",))))
    assert way.remove == ("drum screws", "drum")
    assert way.minutes == opening_minutes(state_of(CORNER), "drum screws") + 2


def test_a_joint_apart_is_no_longer_in_the_way() -> None:
    sealed = described(Joint(name="drain plug", behind=(("fill plug",),)), Joint(name="fill plug"))
    assert way_in(["drain plug"], state_of(sealed)).remove == ("fill plug",)
    assert way_in(["drain plug"], state_of(sealed, f.Opened(at=("fill plug",)))).remove == ()


def test_what_is_scrapped_is_no_longer_in_the_way() -> None:
    assert way_in(["drum screws"], state_of(CORNER, f.Scrapped(at=("wheel nuts",)))).remove == ("wheel",)


def test_the_cheaper_of_two_routes_is_taken_and_the_other_is_told() -> None:
    coat = Joint(name="inside coat", kind="primed-metal", behind=(("outer skin",), ("closing plate",)))
    skin = Joint(name="skin welds", kind="plug-weld-seam", holds=("outer skin",))
    plate = Joint(name="plate screws", kind="plain-fixing", holds=("closing plate",))
    way = way_in(["inside coat"], state_of(described(coat, skin, plate)))
    assert way.remove == ("plate screws", "closing plate")
    assert [other.remove for other in way.alternatives] == [("skin welds", "outer skin")]


def test_what_was_wanted_or_is_owed_and_comes_open_is_told_with_what_it_saves() -> None:
    state = state_of(
        CORNER,
        f.Wanted(at=("pipe union",), job="renew"),
        f.Found(at=("shoe springs",), condition="worn"),
    )
    way = way_in(["drum screws"], state, debts=owed_by(state, evening()))
    assert way.open_anyway == ("pipe union",)
    assert way.worth_now[0].because == "wanted: renew"
    assert way.worth_now[0].minutes_saved == opening_minutes(state, "wheel nuts") + 2


def test_what_could_be_reached_before_is_not_called_open_anyway() -> None:
    state = state_of(CORNER, f.TookOff(at=("wheel",)), f.Wanted(at=("pipe union",), job="renew"))
    assert way_in(["shoe springs"], state).open_anyway == ()


def test_a_joint_that_fights_costs_more_to_open() -> None:
    easy, hard = state_of(CORNER), state_of(CORNER, f.Found(at=("drum screws",), condition="seized"))
    assert way_in(["shoe springs"], hard).minutes > way_in(["shoe springs"], easy).minutes


def test_the_owners_guess_stands_before_the_catalogue() -> None:
    state = state_of(CORNER, f.Guessed(at=("wheel nuts",), low=50, likely=100, high=300))
    assert opening_minutes(state, "wheel nuts") == 30


def test_things_described_as_behind_each_other_are_no_way_in_and_no_endless_run() -> None:
    wound = described(Joint(name="a", behind=(("b",),)), Joint(name="b", behind=(("a",),)))
    way = way_in(["a"], state_of(wound))
    assert way.no_way == ("a",)
    assert way.remove == ()


def test_a_thing_named_in_the_way_and_never_described_is_taken_off_too() -> None:
    state = state_of(described(Joint(name="heater union", behind=(("glove box",),))))
    assert way_in(["heater union"], state).remove == ("glove box",)


@given(journals(), st.sampled_from(NAMES), st.sampled_from(NAMES))
def test_reach_never_grows_when_something_is_off(entries: list[Entry], target: str, off: str) -> None:
    state = state_from(entries)
    after = _taken_off(state, off)
    assume(target != off)
    assert way_in([target], after, others=0).minutes <= way_in([target], state, others=0).minutes


def _taken_off(state: State, name: str) -> State:
    """The same vehicle with one thing apart, or off."""
    if name in state.joints:
        apart = replace(state.joints[name], position="apart")
        return replace(state, joints={**state.joints, name: apart})
    off = replace(state.parts[name], where="on the workbench")
    return replace(state, parts={**state.parts, name: off})


@given(st.data())
def test_with_one_route_each_it_is_the_closure_a_graph_library_finds(data: st.DataObject) -> None:
    names = [f"joint {n}" for n in range(data.draw(st.integers(2, 12)))]
    graph = nx.DiGraph()
    graph.add_nodes_from(names)
    joints = []
    for number, name in enumerate(names):
        front = (
            data.draw(st.lists(st.sampled_from(names[:number]), max_size=3, unique=True)) if number else []
        )
        graph.add_edges_from((before, name) for before in front)
        joints.append(Joint(name=name, behind=(tuple(front),) if front else ()))
    way = way_in([names[-1]], state_of(described(*joints)))
    assert set(way.remove) == nx.ancestors(graph, names[-1])
    assert all(way.remove.index(a) < way.remove.index(b) for a, b in graph.subgraph(way.remove).edges)


def test_two_corners_are_two_ways_that_share_nothing() -> None:
    left = Joint(name="union, left", behind=(("wheel, left",),))
    right = Joint(name="union, right", behind=(("wheel, right",),))
    state = state_of(described(left, right))
    both = way_in(["union, left", "union, right"], state).minutes
    assert both == sum(way_in([name], state).minutes for name in ("union, left", "union, right"))


def test_the_access_problem_may_be_handed_over_ready_made() -> None:
    state = state_of(CORNER)
    assert way_in(["shoe springs"], state, access=access_of(state)) == way_in(["shoe springs"], state)


@pytest.mark.parametrize("free", ["wheel", "wheel nuts"])
def test_what_will_be_open_by_then_is_counted_as_open(free: str) -> None:
    assert free not in way_in(["drum screws"], state_of(CORNER), free=[free]).remove


def test_several_things_together_are_told_against_one_by_one_and_against_their_own_best_ways() -> None:
    """A shared cover is dearer than either side's own way, and cheaper than both."""
    cover = Joint(name="cover screws", kind="plain-fixing", holds=("cover",))
    plates = [Joint(name=f"plate {n} screws", kind="plain-fixing", holds=(f"plate {n}",)) for n in "ab"]
    inside = [Joint(name=f"seal {n}", behind=(("cover",), (f"plate {n}",))) for n in "ab"]
    likely = {cover.name: 50, **{plate.name: 40 for plate in plates}}
    guesses = [f.Guessed(at=(name,), low=9, likely=m, high=999) for name, m in likely.items()]
    state = state_of(described(cover, *plates, *inside), *guesses)
    together = way_in(["seal a", "seal b"], state).together
    assert together is not None
    assert together.at_once == 17
    assert together.same_day == together.one_by_one == 28
    assert way_in(["seal a"], state).together is None


@given(journals())
def test_together_never_costs_more_than_the_union_nor_that_more_than_the_sum(entries: list[Entry]) -> None:
    state = state_from(entries)
    assume(len(state.joints) > 1)
    way = way_in(list(state.joints)[:3], state)
    assume(way.together is not None)
    assert way.together is not None
    assert way.together.at_once <= way.together.same_day <= way.together.one_by_one
