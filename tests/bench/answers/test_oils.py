"""Oils asked as a person asks."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.ground.errors import BadInput


def test_a_viscosity_between_the_points_and_beyond() -> None:
    inside = asked("oils", "viscosity", at1="32 cSt @ 40 C", at2="5.4 cSt @ 100 C", temperature="80 C")
    beyond = asked("oils", "viscosity", at1="32 cSt @ 40 C", at2="5.4 cSt @ 100 C", temperature="0 C")
    assert inside.band("viscosity").value == pytest.approx(8.5, abs=0.05)
    assert "a guide" in beyond.because
    assert "a guide" not in inside.because


def test_an_index_of_each_procedure() -> None:
    low = asked("oils", "index", at40="73.3 cSt", at100="8.86 cSt")
    high = asked("oils", "index", at40="22.83 cSt", at100="5.05 cSt")
    assert "procedure A" in low.working[1]
    assert "procedure B" in high.working[1]
    assert "thins much" in low.because
    assert "thins little" in high.because


def test_an_index_agrees_with_a_chemistry_library() -> None:
    viscosity = pytest.importorskip("chemicals.viscosity")
    for at40, at100 in (
        (20.0, 4.0),
        (46.0, 6.8),
        (100.0, 11.2),
        (220.0, 18.7),
        (460.0, 60.3),
        (2000.0, 150.0),
    ):
        ours = asked("oils", "index", at40=f"{at40} cSt", at100=f"{at100} cSt").band("index").value
        assert ours == pytest.approx(viscosity.viscosity_index(at40 * 1e-6, at100 * 1e-6), abs=0.01)


@pytest.mark.parametrize(
    ("kind", "at", "grades"),
    [
        ("gear", {"at100": "14 cSt"}, ["SAE 90"]),
        ("gear", {"at100": "18.5 cSt"}, ["SAE 110"]),
        ("gear", {"at100": "99 cSt"}, ["SAE 250"]),
        ("gear", {"at100": "8 cSt"}, ["SAE 75"]),
        ("gear", {"at100": "8 cSt", "edition": "2005"}, ["SAE 80"]),
        ("engine", {"at100": "10.5 cSt"}, ["SAE 30"]),
        ("engine", {"at100": "5.9 cSt"}, ["SAE 8", "SAE 12"]),
        ("engine", {"at100": "5.9 cSt", "edition": "1999"}, ["SAE 20"]),
        ("industrial", {"at40": "68 cSt"}, ["ISO VG 68"]),
        ("industrial", {"at40": "41.4 cSt"}, ["ISO VG 46"]),
    ],
)
def test_grades(kind: str, at: dict[str, str], grades: list[str]) -> None:
    assert [row["grade"] for row in asked("oils", "grade", kind=kind, **at).rows("grades")] == grades


def test_an_oil_between_two_industrial_grades_has_none() -> None:
    slip = asked("oils", "grade", kind="industrial", at40="56 cSt")
    assert not slip.found
    assert "gap" in slip.because


def test_an_engine_oil_thicker_than_any_has_none() -> None:
    assert "thicker" in asked("oils", "grade", kind="engine", at100="40 cSt").because


def test_older_books_are_told_beside_the_new_grade() -> None:
    slip = asked("oils", "grade", kind="gear", at100="19.5 cSt")
    assert "books from before 2005 call it SAE 90" in slip.because
    assert "sae-j306-older" in slip.sources
    assert "older" not in " ".join(asked("oils", "grade", kind="gear", at100="14 cSt").because)


def test_both_points_bring_a_picture_with_the_grades() -> None:
    gear = asked("oils", "grade", kind="gear", at40="205 cSt", at100="19.5 cSt")
    other = asked("oils", "grade", kind="industrial", at40="68 cSt", at100="8.7 cSt")
    assert "SAE 110" in str(gear.picture)
    assert "ISO VG 68" in str(other.picture)
    assert asked("oils", "grade", kind="gear", at100="19.5 cSt").picture is None


@pytest.mark.parametrize(
    "typed", [{"kind": "gear", "at40": "200 cSt"}, {"kind": "industrial", "at100": "9 cSt"}]
)
def test_the_wrong_temperature_is_told(typed: dict[str, str]) -> None:
    with pytest.raises(BadInput, match="without its viscosity"):
        asked("oils", "grade", **typed)


def test_an_unknown_edition_is_told_with_the_known_ones() -> None:
    with pytest.raises(BadInput, match="2019, 2005, older"):
        asked("oils", "grade", kind="gear", at100="14 cSt", edition="1957")
    assert asked("oils", "grade", kind="industrial", at40="46 cSt", edition="any").found
