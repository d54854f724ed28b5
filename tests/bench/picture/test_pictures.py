"""Every picture of these subjects: XML, black on white, inside its paper, and to the scale it tells."""

import math
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.bench.test_questions import DRAWN, example
from witnessmark.bench.own_lists import Driver, Ring
from witnessmark.bench.picture.orings import ring_picture, squeezed_outline
from witnessmark.bench.picture.seals import driver_picture
from witnessmark.bench.picture.shims import stack_picture
from witnessmark.bench.picture.threads import flank, forms_overlaid, profile
from witnessmark.bench.plausible import figure_plausible
from witnessmark.bench.questions import ask, find_question
from witnessmark.bench.ring_search import Gland, fit_of, limits, standard_rings
from witnessmark.bench.seal_driver import seat_of
from witnessmark.bench.shim_search import Stack
from witnessmark.bench.thread_list import Thread, all_threads, find_thread
from witnessmark.ground.quantities import read_quantity
from witnessmark.ground.units import Mm

SVG = "{http://www.w3.org/2000/svg}"


def checked(picture: str | None) -> ElementTree.Element:
    """The picture read as XML, after looking at ink and edges."""
    assert picture is not None
    root = ElementTree.fromstring(picture)
    wide, high = (float(n) for n in root.attrib["viewBox"].split()[2:])
    inks = {e.attrib.get(k) for e in root.iter() for k in ("fill", "stroke")} - {None}
    assert inks <= {"black", "white", "none"}
    for element in root.iter(f"{SVG}path"):
        numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", element.attrib["d"])]
        assert all(-0.5 <= x <= wide + 0.5 for x in numbers[::2]), element.attrib["d"][:80]
        assert all(-0.5 <= y <= high + 0.5 for y in numbers[1::2]), element.attrib["d"][:80]
    for element in root.iter(f"{SVG}text"):
        x, y = float(element.attrib["x"]), float(element.attrib["y"])
        assert 0 <= x <= wide
        assert 0 <= y <= high
        long = len(element.text or "") * float(element.attrib["font-size"]) * 0.5
        turned = "transform" in element.attrib
        if element.attrib["text-anchor"] == "start" and not turned:
            assert x + long <= wide + 2, element.text
    assert root.find(f"{SVG}title") is not None
    return root


@pytest.mark.parametrize("name", sorted(DRAWN))
def test_the_picture_of_a_question_is_sound(name: str) -> None:
    question = find_question(*name.split(" "))
    checked(ask(question.subject, question.question, example(question)).picture)


@given(st.sampled_from(all_threads()))
def test_every_thread_can_be_drawn(thread: Thread) -> None:
    checked(forms_overlaid(thread))


@given(st.sampled_from(all_threads()), st.floats(-3, 3))
def test_a_profile_is_as_deep_as_its_form_and_repeats(thread: Thread, at: float) -> None:
    deep = thread.form.to_root * thread.pitch / 2
    assert -1e-9 <= flank(thread.form, thread.pitch, at) <= deep + 1e-9
    assert flank(thread.form, thread.pitch, 0) == pytest.approx(0, abs=1e-9)
    assert flank(thread.form, thread.pitch, thread.pitch / 2) == pytest.approx(deep, rel=1e-6)
    again = flank(thread.form, thread.pitch, at + thread.pitch)
    assert again == pytest.approx(flank(thread.form, thread.pitch, at), abs=1e-9)


@given(st.sampled_from(all_threads()))
def test_the_pitch_line_cuts_thread_and_gap_alike(thread: Thread) -> None:
    quarter = flank(thread.form, thread.pitch, thread.pitch / 4)
    assert quarter == pytest.approx(thread.form.to_pitch * thread.pitch / 2, rel=1e-3)
    assert len(profile(thread, 2)) > 80


def test_ten_pitches_are_drawn_to_the_scale_told() -> None:
    picture = forms_overlaid(find_thread("M8"))
    scale = float(re.findall(r"scale ([\d.]+) : 1", picture)[0])
    arrows = [float(x) for x in re.findall(r'd="M([\d.]+) 17(?:\.\d+)?L', picture)]
    assert max(arrows) - min(arrows) == pytest.approx(12.5 * scale, abs=0.01)


@given(st.floats(1.5, 7), st.floats(0.6, 0.99), st.floats(1.2, 3))
def test_a_squeezed_ring_keeps_its_area(section: float, part: float, wide: float) -> None:
    depth = section * part
    outline = squeezed_outline(section, depth, section * wide * 3)
    area = abs(
        sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(outline, outline[1:] + outline[:1], strict=True))
        / 2
    )
    assert area == pytest.approx(math.pi / 4 * section**2, rel=0.01)
    assert max(y for _, y in outline) - min(y for _, y in outline) == pytest.approx(depth, rel=1e-6)


def test_a_ring_that_does_not_touch_stays_round_and_one_too_fat_stays_in_its_groove() -> None:
    assert len(squeezed_outline(2.0, 2.5, 4.0)) == 49
    fat = squeezed_outline(5.33, 2.9, 4.0)
    assert max(x for x, _ in fat) <= 2.0 + 1e-9


@given(st.sampled_from(standard_rings()[::9]), st.floats(0.7, 1.1), st.floats(0.9, 2.0))
def test_every_ring_can_be_drawn(ring: Ring, part: float, wide: float) -> None:
    depth = ring.section * part
    place = Gland(
        kind="rod", seat=Mm(ring.inside), depth=Mm(depth), width=Mm(ring.section * wide), within=Mm(0.03)
    )
    checked(ring_picture(place, fit_of(place, limits("rod"), ring)))


@given(st.floats(8, 120), st.floats(5, 40), st.floats(0, 30), st.floats(0, 150), st.integers(1, 2))
def test_every_seat_can_be_drawn(shaft: float, space: float, depth: float, reach: float, pieces: int) -> None:
    seat = seat_of(Mm(shaft), Mm(shaft + space), Mm(depth), Mm(reach))
    driver = Driver(name="x", inside=Mm(shaft + 0.3), outside=Mm(shaft + space - 0.25), length=Mm(40))
    checked(driver_picture(seat, [driver] * pieces, words="x"))
    checked(driver_picture(seat_of(Mm(shaft), Mm(shaft + space)), [driver], words="x"))


@given(
    st.lists(st.sampled_from((50, 100, 150, 300, 1000)), max_size=9), st.floats(-0.3, 1.0), st.floats(0, 0.3)
)
def test_every_stack_can_be_drawn(pieces: list[int], left: float, wide: float) -> None:
    stack = Stack(pieces=tuple(sorted(pieces, reverse=True)))
    wanted = (left - wide / 2, left + wide / 2)
    checked(stack_picture(stack, measured=0.6, fitted=0.1, left=left, wanted=wanted))


@pytest.mark.parametrize("figure", ["3 Nm", "18 Nm", "300 Nm"])
def test_every_figure_can_be_drawn(figure: str) -> None:
    root = checked(figure_plausible("M8", None, read_quantity(figure, "torque")).picture)
    assert "preload in kN" in "".join(root.itertext())
