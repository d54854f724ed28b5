"""A thrust shim of a gearbox shaft."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Honda",
    title="Shop manual: thrust clearance",
    where="example, standard 0.11 to 0.17 mm",
    standing="maker",
    seen="page",
)

PRINTED = (Printed("shims stack", "1.93 measured, 0.14 wanted, mm", "1.79", lambda: pack(1.93, 0.14)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
