"""Lists of one's own kit, typed or from a file, with units said once or in each cell."""

import pytest

from witnessmark.bench.own_lists import drivers, rings
from witnessmark.bench.slip import Asked
from witnessmark.ground.errors import BadInput


def sized(asked: Asked) -> list[tuple[float, ...]]:
    """Inside and outside of each driver."""
    return [(round(d.inside, 3), round(d.outside, 3)) for d in asked.value]


def test_a_typed_list_of_drivers() -> None:
    assert sized(drivers("have", "32x36 29 x 41 mm")) == [(32, 36), (29, 41)]
    assert sized(drivers("have", "1.25x1.5 in")) == [(31.75, 38.1)]


def test_a_length_may_follow() -> None:
    first, second = drivers("have", "32x36x80 29x41 mm").value
    assert (first.length, second.length) == (80, None)


def test_a_file_with_units_in_its_heading() -> None:
    text = "name,inside mm,outside (mm),length_mm\n# the drawer\npipe,32,36,80\n,29,41,\n"
    first, second = drivers("have", text).value
    assert (first.name, first.length) == ("pipe", 80)
    assert (second.name, second.length) == ("29x41", None)


def test_a_file_with_units_in_its_cells() -> None:
    text = "name,inside,outside,hollow\nsocket,1 in,1 1/2 in,30 mm\n"
    assert sized(drivers("have", text)) == [(25.4, 38.1)]
    assert drivers("have", text).value[0].hollow == 30


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("32x36", "without a unit"),
        ("36x32 mm", "inside smaller"),
        ("32 mm", "Part the sizes"),
        ("32xa5 mm", "not a number"),
        ("name,inside,outside\npipe,32,36\n", "length with its unit"),
        ("name,inside mm\npipe,32\n", "no column outside"),
        ("name,inside mm,outside mm\npipe,,36\n", "inside None"),
        ("name,inside mm,outside mm\npipe,wide,36\n", "'wide'"),
        ("\n\n", "no column"),
        ("32x36 kg", "mass"),
    ],
)
def test_a_list_that_cannot_be_read_is_refused(text: str, word: str) -> None:
    with pytest.raises(BadInput, match=word):
        drivers("have", text)


def test_rings_of_ones_own() -> None:
    typed = rings("sizes", "50.4x3.5 44x3 mm").value
    assert [(r.inside, r.section) for r in typed] == [(50.4, 3.5), (44, 3)]
    text = "name,inside mm,section mm,inside_tolerance mm\nold stock,50.4,3.5,0.4\n"
    ring = rings("sizes", text).value[0]
    assert (ring.name, ring.inside_tolerance, ring.own) == ("old stock", 0.4, True)
    assert ring.section_tolerance < 0


@pytest.mark.parametrize("text", ["0.1x3.5 mm", "50x40 mm", "inside mm,section mm\n,3\n"])
def test_rings_beyond_sense_are_refused(text: str) -> None:
    with pytest.raises(BadInput, match="has a ring"):
        rings("sizes", text)
