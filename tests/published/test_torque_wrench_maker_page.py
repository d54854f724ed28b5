"""A typical problem on a torque wrench seller's page."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="How to compute torque when using adaptors",
    issuer="a torque wrench seller",
    where="typical problem",
    standing="maker",
)

PRINTED = (Printed("bolts adapter", "30 lbf ft wanted, 12 and 6 in", "20", lambda: setting(30, 12, 6)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
