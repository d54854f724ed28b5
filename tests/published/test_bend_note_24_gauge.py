"""A bend of 24 gauge, a note."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench import sheet
from witnessmark.ground.units import Degree, Mm, Ratio

SOURCE = Cited(
    title="Bend allowance of 24 gauge",
    where="radius 0.020 in, K 0.33",
    standing="common practice",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "sheet bend",
        "allowance, in",
        "0.0438558984",
        lambda: sheet.bend_allowance(Mm(0.024 * 25.4), Mm(0.020 * 25.4), Degree(90), Ratio(0.33)) / 25.4,
        "it takes 0.017453 for the degree; ours agrees to six digits",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()
