"""The small drawing kit: hatching stays inside, dimensions read right, scales are customary."""

import math
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.bench.picture import svg


@given(st.floats(1, 40), st.floats(1, 40), st.floats(0.3, 5), st.floats(-80, 80))
def test_hatching_stays_inside_its_outline(wide: float, high: float, spacing: float, angle: float) -> None:
    outline = [(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)]
    for a, b in svg.hatching([outline], spacing, angle):
        for x, y in (a, b):
            assert -1e-6 <= x <= wide + 1e-6
            assert -1e-6 <= y <= high + 1e-6


def test_hatching_leaves_a_hole_white() -> None:
    square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
    hole = [(4.0, 4.0), (6.0, 4.0), (6.0, 6.0), (4.0, 6.0)]
    strokes = svg.hatching([square, hole], 1.0, 0.0)
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in strokes]
    assert not [m for m in middles if 4 < m[0] < 6 and 4 < m[1] < 6]
    assert "L" in svg.section(square, holes=[hole])


def test_a_frame_puts_the_real_world_on_paper() -> None:
    frame = svg.Frame(10, 50, 2)
    assert frame.at((3, 4)) == (16, 42)
    assert frame.all([(0, 0), (1, 1)]) == [(10, 50), (12, 48)]


@pytest.mark.parametrize(
    ("a", "b", "turn"),
    [((0, 0), (30, 0), ""), ((30, 0), (0, 0), ""), ((0, 30), (0, 0), "-90"), ((0, 0), (0, 30), "-90")],
)
def test_dimensions_are_read_from_below_or_from_the_right(a: svg.Point, b: svg.Point, turn: str) -> None:
    drawn = svg.dimension(a, b, "30")
    assert (f"rotate({turn} " in drawn) if turn else ("rotate" not in drawn)


def test_arrows_of_a_short_dimension_stand_outside() -> None:
    long, short = svg.dimension((0, 0), (30, 0), "30"), svg.dimension((0, 0), (3, 0), "3.00 mm")
    assert long.count('text-anchor="middle"') == 1
    assert 'text-anchor="start"' in short
    assert "<text" not in svg.dimension((0, 0), (30, 0), "")
    assert svg.dimension((3, 0), (0, 0), "a long word", off=-6).count("<path") >= 5


def test_words_are_escaped_and_the_page_is_xml() -> None:
    page = svg.drawing(100, 50, [svg.text((1, 1), "a < b & c", turn=30, bold=True)], title="<t>")
    root = ElementTree.fromstring(page)
    assert root.attrib["viewBox"] == "0 0 100 50"
    assert root.attrib["width"] == "100mm"
    assert "a < b & c" in "".join(root.itertext())


@given(st.floats(0.001, 5000))
def test_scales_are_customary_and_never_too_large(most: float) -> None:
    scale = svg.round_scale(most)
    assert scale <= most * (1 + 1e-6)
    assert scale > most / 2.6
    shown = scale if scale >= 1 else 1 / scale
    lead = shown / 10 ** math.floor(math.log10(shown) + 1e-9)
    assert min(abs(lead - step) for step in (1, 2, 2.5, 4, 5, 8, 10)) < 1e-6


def test_lines_and_shapes() -> None:
    assert 'stroke-dasharray="2 1"' in svg.line((0, 0), (1, 1), dash="2 1")
    assert 'r="2"' in svg.circle((1, 1), 2)
    assert 'width="3" height="2"' in svg.rect((4, 4), (1, 2))
    assert svg.polyline([(0, 0), (1, 0)], close=True).count("Z") == 1
    assert 'text-anchor="end"' in svg.leader((0, 0), (5, 5), "here", anchor="end")
    assert len(svg.arc((0, 0), 1, 0, 90, 4)) == 5
