"""How deep a bolt must go into aluminium: a handbook's worked example."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.engagement import engagement
from witnessmark.bench.bolts import engagement_length, shear_area_tapped
from witnessmark.ground.units import Degree, MegaPascal, Mm, Newton

SOURCE = Cited(
    issuer="CRC Press",
    title="Thread engagement, example: M10 x 1.5-6g, strength 10.9, in 310 aluminium",
    where="the publisher's abstract of the chapter",
    standing="handbook",
)

LOAD = 1200 * 58
"""N that break the bolt: the example's strength on its stress area."""
SHEARED = shear_area_tapped(Mm(1), Mm(9.968), Mm(9.206), Mm(1.5), Degree(60))

PRINTED = (
    Printed(
        "bolts engagement",
        "69 600 N on M10 into 130 MPa, least crest 9.968, greatest pitch diameter 9.206, mm",
        "21.6",
        lambda: engagement_length(Newton(LOAD), MegaPascal(130), Mm(SHEARED)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


def test_the_question_itself_says_the_same_to_a_tenth() -> None:
    """Its stress area is 57.99 mm², where the example takes 58."""
    found = engagement(
        thread="M10",
        grade="10.9",
        shear_strength=130,
        tensile_strength=1200,
        bolt_major_min=9.968,
        tapped_pitch_max=9.206,
    )
    assert found.results["weaker_side"] == "tapped part"
    assert found.band("tapped_part_needs").value == pytest.approx(21.6, abs=0.06)
