"""A sum in an owners' forum."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Torque wrench with a 9 in extension",
    issuer="an owners' forum",
    where="100 lbf ft, 12 in wrench",
    standing="common practice",
)

PRINTED = (Printed("bolts adapter", "100 lbf ft wanted, 12 and 9 in", "57.14", lambda: setting(100, 12, 9)),)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
