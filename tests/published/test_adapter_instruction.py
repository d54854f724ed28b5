"""The instruction that comes with a torque adapter."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Torque adapter instruction 08-0134",
    issuer="Motion Pro",
    where="page 2, cylinder base nuts",
    standing="maker",
)

PRINTED = (Printed("bolts adapter", "20 lbf ft wanted, 12 and 3 in", "16", lambda: setting(20, 12, 3)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
