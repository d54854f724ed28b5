"""A valve shim of a diesel engine."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Toyota",
    title="1CD-FTV engine repair manual RM1046E",
    where="page 14-19, intake",
    edition="from September 2003",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed("shims stack", "0.45 measured, 0.25 wanted, 2.80 in, mm", "3.00", lambda: pack(0.45, 0.25, 2.80)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
