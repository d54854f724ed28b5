"""A jacket shrunk on a tube, in a textbook of machine elements."""

from __future__ import annotations

from tests.published.press_fits import interference_for
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Bhandari",
    title="Design of Machine Elements",
    where="example 22.6: tube 20 by 40, jacket to 60 mm, 100 MPa at most",
    standing="handbook",
    seen="page",
)

BETWEEN = 100 * (60**2 - 40**2) / (60**2 + 40**2)

PRINTED = (
    Printed(
        "fits press",
        "inside of the jacket, mm",
        "39.968289",
        lambda: 40 - interference_for(BETWEEN, 40, 60, 207_000, bore=20),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
