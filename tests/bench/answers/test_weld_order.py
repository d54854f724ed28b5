"""A patch tacked in: which short run next."""

import pytest

from tests.bench.answers.asking import asked
from witnessmark.bench.slip import Slip
from witnessmark.ground.errors import BadInput


def order(**more: str) -> Slip:
    return asked("welds", "order", **{"panel": "120x80 mm", "thickness": "1.0 mm", "run": "20 mm", **more})


@pytest.fixture(scope="module")
def patch() -> Slip:
    return order()


def test_the_found_order_is_the_coolest_and_names_each_run_once(patch: Slip) -> None:
    runs = [int(n) for n in str(patch.results["order"]).split(", ")]
    assert sorted(runs) == list(range(1, 21))
    ours = patch.band("rise_max").value + patch.band("rise_mean").value
    assert all(
        ours <= float(row["rise_max"] or 0) + float(row["rise_mean"] or 0) + 1e-9
        for row in patch.rows("others")
    )
    assert [row["order"] for row in patch.rows("others")] == [
        "one after another", "skip", "every second, then fill", "bisecting", "opposite sides",
    ]  # fmt: skip


def test_it_says_cooler_and_more_even_and_never_how_far_it_will_move(patch: Slip) -> None:
    assert patch.because.startswith("cooler and more even")
    assert "until they join into one continuous seam" in patch.because
    assert not any("distort" in line for line in (patch.because, *patch.working))
    assert "mm" not in patch.because
    assert any("not how far the panel will move" in line for line in patch.working)


def test_a_longer_pause_meets_cooler_metal_and_takes_longer(patch: Slip) -> None:
    slow = order(pause="60 sec")
    assert slow.band("rise_max").value < patch.band("rise_max").value
    assert slow.band("minutes").value > patch.band("minutes").value
    assert "taken as nothing was said" not in slow.working[0]


def test_more_loss_cools(patch: Slip) -> None:
    assert order(loss="40 W/m2K").band("rise_max").value < patch.band("rise_max").value


def test_heat_as_given_replaces_the_settings(patch: Slip) -> None:
    slip = order(heat="0.02 kJ/mm", thickness="5 mm")
    assert "as given" in slip.working[0]
    assert "maker-settings-a" not in slip.sources
    assert "maker-settings-a" in patch.sources


def test_seams_of_other_shapes() -> None:
    side = order(seam="one side")
    line = order(seam="0,0 120,0 mm")
    assert side.results["order"] == line.results["order"]
    assert len(side.rows("runs")) == 6


@pytest.mark.parametrize(
    "more",
    [
        {"panel": "120 mm"},
        {"panel": "120x80 200x90 mm"},
        {"panel": "5x80 mm"},
        {"run": "2 mm"},
        {"thickness": "5 mm"},
        {"pause": "10"},
        {"seam": "round and round"},
        {"seam": "0,0 10,0; 20,0 30,0 mm"},
        {"seam": "0,0 mm"},
        {"run": "150 mm", "seam": "one side"},
    ],
)
def test_a_patch_that_cannot_be_is_refused(more: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        order(**more)
