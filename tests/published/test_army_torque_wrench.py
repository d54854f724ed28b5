"""A worked setting in an army manual."""

from __future__ import annotations

from tests.published.adapters import delivered
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="US Army",
    title="TM 9-254, general maintenance procedures",
    where="figure 45, page 91",
    standing="authority",
)

PRINTED = (
    Printed(
        "bolts adapter",
        "60 lbf in set, 12 in wrench, 2 in adapter, at the nut",
        "70",
        lambda: delivered(60, 12, 2),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
