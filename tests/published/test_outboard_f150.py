"""Reverse gear shims of an outboard motor."""

from __future__ import annotations

from tests.published.gaps import pack, stack
from tests.published.printed import Cited, Printed

SOURCE = Cited(
    issuer="Yamaha",
    title="F150 service manual",
    where="pages 323 and 351, reverse gear shims; steps 0.10 to 0.50",
    standing="maker",
)

PRINTED = (
    Printed("shims stack", "0.62 less 0.20, mm", "0.42", lambda: pack(0.62, 0.20)),
    Printed("shims stack", "0.62 and 0.14 more, mm", "0.76", lambda: pack(0.62, -0.14)),
    Printed("shims stack", "0.62 less 0.21, mm", "0.41", lambda: pack(0.62, 0.21)),
    Printed(
        "shims stack",
        "0.42 from the steps it lists",
        "0.30 + 0.12",
        lambda: stack(0.42, (0.10, 0.12, 0.15, 0.18, 0.30, 0.40, 0.50)),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED: tuple[Printed, ...] = ()
