"""A bracket and a pull on it."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.bench.slip import Slip
from witnessmark.ground.errors import BadInput

LINES, LOAD, AT = "0,0 0,50; 50,0 50,50 mm", "0,-7.5,0 kN", "150,25,0 mm"


def group(**more: str) -> Slip:
    return asked("welds", "group", **{"lines": LINES, "load": LOAD, "at": AT, **more})


def test_without_a_throat_it_answers_in_force_on_each_millimetre() -> None:
    slip = group()
    assert "stress_max" not in slip.results
    assert slip.band("line_force_max").value == pytest.approx(453.889, abs=1e-3)
    assert slip.verdict is None
    assert "N/mm" in str(slip.picture)


def test_throat_or_leg_gives_stress_and_strength_gives_use() -> None:
    by_throat = group(throat="4.538894 mm", strength="100 MPa")
    assert by_throat.band("stress_max").value == pytest.approx(100, abs=1e-4)
    assert by_throat.band("throat_needed").value == pytest.approx(4.538894, abs=1e-6)
    assert by_throat.band("use").value == pytest.approx(100, abs=1e-3)
    by_leg = group(leg="6 mm")
    assert by_leg.band("stress_max").value == pytest.approx(453.889 / (6 / 2**0.5), abs=1e-3)
    assert group(strength="100 MPa").band("throat_needed").value == pytest.approx(4.5389, abs=1e-4)


@pytest.mark.parametrize(("throat", "verdict"), [("6 mm", "fits"), ("4.8 mm", "marginal"), ("4 mm", "no")])
def test_verdicts_follow_the_use(throat: str, verdict: str) -> None:
    assert group(throat=throat, strength="100 MPa").verdict == verdict


def test_every_answer_carries_the_scope_line() -> None:
    for more in ({}, {"throat": "3 mm"}, {"method": "directional", "leg": "4 mm", "strength": "230 MPa"}):
        slip = group(**more)
        assert slip.because.startswith("one for one, as built; certifier where the law asks")
        assert "strength-scope" in slip.cautions
        assert "one for one, as built" in str(slip.picture)


def test_the_directional_method_is_named_with_its_short_lines() -> None:
    slip = group(method="directional", throat="9 mm", strength="230 MPa")
    assert slip.results["method"] == "directional"
    assert "en-1993-1-8-welds" in slip.sources
    assert any("count it as nothing" in line for line in slip.working)
    assert any("0.9 fu" in line for line in slip.working)
    assert not any(
        "count it as nothing" in line for line in group(method="directional", throat="3 mm").working
    )
    assert slip.band("line_force_max").value > group().band("line_force_max").value
    assert not any("count it as nothing" in line for line in group(method="directional").working)


def test_a_line_may_go_on_round_corners() -> None:
    one = group(lines="0,0 0,50 50,50 mm")
    two = group(lines="0,0 0,50; 0,50 50,50 mm")
    assert one.rows("components") == two.rows("components")


def test_the_worst_end_is_the_greatest_of_the_rows() -> None:
    slip = group(throat="3 mm")
    assert slip.band("stress_max").value == pytest.approx(
        max(float(r["stress"] or 0) for r in slip.rows("components"))
    )


@pytest.mark.parametrize(
    "more",
    [
        {"throat": "3 mm", "leg": "4 mm"},
        {"throat": "0 mm"},
        {"load": "0,0,0 kN"},
        {"lines": "0,0 mm"},
        {"strength": "0 MPa"},
        {"at": "1e6,0,0 mm"},
        {"lines": "0,0 0,50 mm", "load": "0,0,1 kN", "at": "50,25,0 mm"},
        {"method": "guess"},
    ],
)
def test_a_group_that_cannot_be_is_refused(more: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        group(**more)
