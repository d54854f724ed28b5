"""The example in a motorcycle service manual."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Service manual, 1100 cc cruiser: torque adapters",
    issuer="a publisher of motorcycle manuals",
    where="page 11, figure 21",
    standing="handbook",
    seen="page",
)

PRINTED = (Printed("bolts adapter", "20 lbf ft wanted, 14 and 3 in", "16.5", lambda: setting(20, 14, 3)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
