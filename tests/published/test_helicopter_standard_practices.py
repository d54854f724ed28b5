"""Both examples in a helicopter's maintenance manual."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="R66 Maintenance Manual, chapter 20, standard practices",
    issuer="Robinson Helicopter Company",
    where="figures 20-1 and 20-2, page 20.4",
    edition="25 October 2010",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed("bolts adapter", "135 lbf in wanted, 10 and 1.5 in", "117.39", lambda: setting(135, 10, 1.5)),
    Printed(
        "bolts adapter",
        "135 lbf in wanted, 10 in, 1.5 in turned back",
        "158.82",
        lambda: setting(135, 10, 1.5, 180),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
