"""Pinion and ring gear shims of a quad."""

from __future__ import annotations

from tests.published.gaps import pack, stack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Yamaha",
    title="YFM400FAR service manual",
    where="pages 450 and 7-22",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed(
        "shims stack",
        "middle drive pinion, 75.01 less 4.48, 15.0 and 55, mm",
        "0.53",
        lambda: pack(75.01 - 4.48, 15.0 + 55),
    ),
    Printed(
        "shims stack",
        "its pack of 0.55 from 0.10 to 0.50",
        "0.40 + 0.15",
        lambda: stack(0.55, (0.10, 0.15, 0.20, 0.30, 0.40)),
    ),
    Printed(
        "shims stack",
        "ring gear, 45.53 and 1.05 less 34.95 and 11.00, mm",
        "0.63",
        lambda: pack(45.53 + 1.05, 34.95 + 11.00),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
