"""What a caliper and a pitch gauge read, and the thread it is, by a guide for British workshops."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.threads import identify
from witnessmark.ground.measures import INCH

SOURCE = Cited(
    issuer="a British supplier of engineering parts",
    title="How to identify an unknown thread, its six thread systems",
    where="steps 1 to 4",
    edition="April 2026",
    standing="common practice",
)


def best(diameter: float, pitch: float, angle: float) -> str:
    """The first candidate."""
    return str(identify(diameter=diameter, pitch=pitch, angle=angle).rows("candidates")[0]["thread"])


PRINTED = (
    Printed("threads identify", "10 mm, pitch 1.5 mm, 60°", "M10 x 1.5", lambda: best(10, 1.5, 60)),
    Printed("threads identify", "pitch 1.25 mm on 8 mm, 60°", "M8 x 1.25", lambda: best(8, 1.25, 60)),
    Printed(
        "threads identify", "9.525 mm, 16 to the inch, 60°", "3/8 UNC", lambda: best(9.525, INCH / 16, 60)
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()


def test_without_the_angle_the_whitworth_of_that_size_stands_beside() -> None:
    rows = identify(diameter=9.525, pitch=INCH / 16).rows("candidates")
    assert {row["thread"] for row in rows} == {"3/8 UNC", "3/8 BSW"}
