"""A valve shim of a tuning cylinder head."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Malossi", title="Fitting instructions 5919140", where="page 10", standing="maker", seen="page"
)

PRINTED = (
    Printed("shims stack", "0.30 measured, 0.22 wanted, 1.55 in, mm", "1.63", lambda: pack(0.30, 0.22, 1.55)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
