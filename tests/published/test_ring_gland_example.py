"""The default of a ring gland calculator page: 2 mm ring, groove 1.6 by 3.2."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench.orings import fill, squeeze
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="O-ring gland calculator, default", issuer="machinecalcs.com", where="2 mm, 1.6 deep, 3.2 wide",
    standing="common practice",
)  # fmt: skip

PRINTED = (
    Printed("orings check", "2 mm in 1.6 deep, squeeze %", "20", lambda: squeeze(Mm(2), Mm(1.6))),
    Printed("orings check", "2 mm in 1.6 by 3.2, fill %", "61.36", lambda: fill(Mm(2), Mm(1.6), Mm(3.2))),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
