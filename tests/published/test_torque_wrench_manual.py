"""The example in the manual of a torque wrench."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Torque wrench M199, manual",
    issuer="Performance Tool",
    where="page 7, extensions",
    standing="maker",
    seen="page",
)

PRINTED = (Printed("bolts adapter", "50 lbf ft wanted, 16 and 2 in", "44.44", lambda: setting(50, 16, 2)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
