"""The pinion shim of another quad."""

from __future__ import annotations

from tests.published.gaps import pack
from tests.published.printed import Cited, Printed

SOURCE = Cited(issuer="Yamaha", title="YXR660 service manual", where="page 219", standing="maker")

PRINTED = (
    Printed("shims stack", "7.52 and 64.98 less 17 and 55, mm", "0.50", lambda: pack(7.52 + 64.98, 17 + 55)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
