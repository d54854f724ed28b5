"""A crow-foot example in the manual of a working platform."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Torque setting criteria",
    issuer="a maker of working platforms",
    where="example E, page 53",
    standing="maker",
    seen="page",
)

PRINTED = (
    Printed("bolts adapter", "180 lbf ft wanted, 13.5 and 1.25 in", "165", lambda: setting(180, 13.5, 1.25)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
