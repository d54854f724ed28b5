"""The pinion shim of a small outboard motor, for two stamped deviations."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Yamaha",
    title="F40 service manual",
    where="page 330, pinion shim T3",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed("shims stack", "11.70 less 11.30, deviation +5, mm", "0.35", lambda: pack(11.70, 11.30 + 0.05)),
    Printed("shims stack", "11.70 less 11.30, deviation -3, mm", "0.43", lambda: pack(11.70, 11.30 - 0.03)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
