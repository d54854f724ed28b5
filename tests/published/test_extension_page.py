"""A caliper bolt worked on a page about extensions."""

from __future__ import annotations

from tests.published.adapters import setting
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    title="Torque wrench extensions and crow-foot adapters",
    issuer="a page of worked sums on the web",
    where="caliper bolt, 40 cm wrench, 5 cm adapter",
    standing="common practice",
)

PRINTED = (
    Printed("bolts adapter", "80 N·m wanted, 40 and 5 cm in line", "71.1", lambda: setting(80, 40, 5)),
    Printed("bolts adapter", "80 N·m wanted, 40 and 5 cm, square", "80", lambda: setting(80, 40, 5, 90)),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
