"""The vehicle drawn: sound pictures for every shape, every place once, words for every hatch."""

from __future__ import annotations

import re
import xml.etree.ElementTree as tree

import pytest

from tests.building import described, state_of
from witnessmark.journal import facts as f
from witnessmark.owed.owed import word_for
from witnessmark.sheets.drawn.boxes import BROAD, plan_boxes
from witnessmark.sheets.drawn.picture import PlaceNow, plan_svg, side_svg, swatch_svg
from witnessmark.sheets.drawn.placing import drawn_place
from witnessmark.sheets.drawn.plan import plan_high
from witnessmark.sheets.drawn.shapes import Shape, shape_of, shapes
from witnessmark.sheets.drawn.vehicle import STATES, DrawnVehicle, draw_vehicle
from witnessmark.state.description import known_bodies
from witnessmark.tables.read import read_table
from witnessmark.vehicle.starting_lists import starting_lists
from witnessmark.vehicle.things import Joint, Part, Vehicle

EVERY = list(shapes().values())
SVG = "{http://www.w3.org/2000/svg}"


def address(name: str) -> str:
    return f"/at?{name}&x"


def parsed(svg: str) -> tree.Element:
    return tree.fromstring(svg.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1))


def drawn(*facts: f.Doing) -> DrawnVehicle:
    state = state_of(*facts)
    return draw_vehicle(state, {name: word_for(state, name) for name in state.joints}, address)


@pytest.mark.parametrize("shape", EVERY, ids=lambda shape: shape.key)
def test_every_shape_draws_every_place_once_with_its_word_and_its_link(shape: Shape) -> None:
    known = list(plan_boxes(shape))
    places = {
        name: PlaceNow(state=STATES[n % len(STATES)], lets_go=n % 2 == 0) for n, name in enumerate(known)
    }
    root = parsed(plan_svg(shape, places, address))
    links = {link.get("href"): "".join(link.itertext()) for link in root.iter(f"{SVG}a")}
    assert set(links) == {address(name) for name in known}
    assert len(root.findall(f".//{SVG}a")) == len(known)
    for name, place in places.items():
        written = links[address(name)].replace(":", "").replace(" ", "")
        assert written == f"{name}{place.state.upper()}".replace(" ", "")
    for side in ("left", "right"):
        assert parsed(side_svg(shape, side, places, address)).find(f"{SVG}path") is not None


@pytest.mark.parametrize("shape", EVERY, ids=lambda shape: shape.key)
def test_places_lie_on_the_paper_and_none_lies_on_another(shape: Shape) -> None:
    boxes = list(plan_boxes(shape).values())
    high = plan_high(shape)
    for n, box in enumerate(boxes):
        assert box.wide > 40, shape.key
        assert box.high > 15, shape.key
        assert box.x >= 0
        assert box.x + box.wide <= BROAD
        assert 0 <= box.y < box.y + box.high <= high
        for other in boxes[n + 1 :]:
            across = min(box.x + box.wide, other.x + other.wide) - max(box.x, other.x)
            down = min(box.y + box.high, other.y + other.high) - max(box.y, other.y)
            assert across < 1e-6 or down < 1e-6


def test_no_colour_no_numbers_and_a_hatch_of_its_own_for_each_state() -> None:
    svg = plan_svg(shapes()["van"], {"rear": PlaceNow(state="apart")}, address)
    colours = set(re.findall(r"#[0-9a-f]{6}", svg))
    assert colours <= {"#101010", "#ffffff"}
    assert not re.search(r">\s*\d+\s*<", svg)
    fills = [re.sub(r"key-[a-z-]+", "", swatch_svg(state)) for state in STATES]
    assert len(set(fills)) == 2  # clear, or hatched; the hatches themselves differ in their definition
    patterns = re.findall(r'<pattern id="plan-([a-z-]+)"(.*?)</pattern>', svg)
    assert len({body for _, body in patterns}) == len(patterns) == len(STATES) - 1


def test_a_body_kind_is_drawn_by_its_name_its_kind_or_as_a_saloon() -> None:
    assert shape_of(Vehicle(name="the old van", body="car")).key == "van"
    assert shape_of(Vehicle(name="the old one", body="")).key == "saloon"
    assert shape_of(Vehicle(name="van-coloured trailer", body="trailer")).key == "trailer"
    told = {body for shape in EVERY for body in shape.bodies}
    assert told == set(known_bodies())


def test_every_place_a_starting_list_brings_lies_on_some_drawing() -> None:
    everywhere = {name for shape in EVERY for name in plan_boxes(shape)}
    for chosen in starting_lists().values():
        told = chosen.place.format(corner="left rear", side="left").strip()
        assert told in ("whole vehicle", "") or drawn_place(told, everywhere), told
    for row in read_table("bodies/places")["row"]:
        assert row["place"] in everywhere, row


def test_a_place_shows_its_worst_joint_and_a_heavy_frame_where_that_lets_go() -> None:
    wheel = Joint(name="wheel nuts, left rear", kind="wheel-nuts", side="left rear")
    trim = Joint(name="trim clips", kind="plain-fixing", place="left rear corner")
    roof = Joint(name="roof bolts", kind="plain-fixing", place="roof")
    shelf = Part(name="tow rope")
    facts = (f.DescribedVehicle(name="x", body="car"), described(wheel, trim, roof, shelf))
    calm = drawn(*facts)
    assert "heavy" not in calm.plan
    assert {p.name: (p.now.state, p.drawn) for p in calm.places} == {
        "left rear": ("as found", True),
        "roof": ("as found", False),
        "place not told": ("", False),
    }
    open_now = drawn(*facts, f.Opened(at=(wheel.name,)))
    assert open_now.places[0].joints == (wheel.name, trim.name)
    assert open_now.places[0].now == PlaceNow(state="apart", lets_go=True)
    assert 'class="heavy"' in open_now.plan
    assert "lets go if missed" in open_now.plan
    only_trim = drawn(*facts, f.Opened(at=(trim.name,)))
    assert only_trim.places[0].now == PlaceNow(state="apart", lets_go=False)


def test_names_from_a_record_are_escaped() -> None:
    shape = shapes()["saloon"]
    svg = plan_svg(shape, {"rear": PlaceNow(state="tight")}, lambda name: f'/x?"<{name}>&')
    assert parsed(svg).find(f"{SVG}a") is not None
