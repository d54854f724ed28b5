"""A gland design paper: one squeeze and two stretches. Its dash numbers are wrong; only its sums count."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.orings import squeeze, stretch
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="O-ring gland design document", issuer="an open repository", where="pages 1 and 3",
    standing="common practice",
)  # fmt: skip

PRINTED = (
    Printed("orings check", "3.53 in 2.90 deep, squeeze %", "17.8", lambda: squeeze(Mm(3.53), Mm(2.90))),
    Printed("orings check", "47.22 on 50 mm, stretch %", "5.9", lambda: stretch(Mm(50), Mm(47.22))),
    Printed("orings check", "50.17 on 50 mm, stretch %", "-0.34", lambda: stretch(Mm(50), Mm(50.17))),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
