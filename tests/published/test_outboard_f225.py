"""The pinion shim of an outboard motor."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Yamaha",
    title="F225A service manual",
    where="page 217, pinion shim T3",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed(
        "shims stack",
        "82.00 less 0.05, 50.75 and 30.52, mm",
        "0.68",
        lambda: pack(82.00 - 0.05 - 50.75, 30.52),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
