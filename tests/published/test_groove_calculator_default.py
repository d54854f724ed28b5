"""The default of a groove calculator page: squeeze agrees, the fill does not follow from its sizes."""

from __future__ import annotations

from tests.published.imperial import inches
from tests.published.printed import Cited, Printed
from witnessmark.bench.orings import fill, squeeze

SOURCE = Cited(
    title="O-ring groove calculator, default", issuer="toolcroze.com",
    where=".139 ring, .112 deep, .185 wide", standing="common practice", seen="page",
)  # fmt: skip

PRINTED = (
    Printed(
        "orings check", ".139 in .112 deep, squeeze %", "19.4", lambda: squeeze(inches(0.139), inches(0.112))
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "orings check",
        ".139 in .112 by .185, fill %",
        "62.8",
        lambda: fill(inches(0.139), inches(0.112), inches(0.185)),
        "the rectangle gives 73.2; the page does something it does not say",
    ),
)
