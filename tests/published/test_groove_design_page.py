"""Two grooves on a seal dealer's page, each with the ring it takes: our search picks the same one."""

from __future__ import annotations

from tests.published.imperial import inches
from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.orings import match
from witnessmark.bench.orings import squeeze
from witnessmark.ground.units import Mm

SOURCE = Cited(
    title="O-ring groove design, example calculations",
    issuer="ponnmachine.com",
    where="rod .500, dynamic; piston bore 1.000, static; table of least squeeze",
    standing="maker",
    seen="page",
)


def best(gland: str, seat: float, depth: float, width: float) -> str:
    """The best ring for a groove given in inches."""
    slip = match(gland=gland, diameter=inches(seat), depth=inches(depth), width=inches(width), within=0.02)
    return str(slip.rows()[0]["ring"])


def least_squeeze(section: float, tolerance: float, depth: float) -> float:
    """Inches of squeeze left with the thinnest ring."""
    thin = Mm((section - tolerance) * 25.4)
    return squeeze(thin, inches(depth)) / 100 * thin / 25.4


PRINTED = (
    Printed(
        "orings match", "rod .500, .090 deep, .144 wide", "-112", lambda: best("rod", 0.500, 0.090, 0.144)
    ),
    Printed(
        "orings match",
        "bore 1.000, root .772, .114 deep, .195 wide",
        "-210",
        lambda: best("radial static", 1.000 - 2 * 0.114, 0.114, 0.195),
    ),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed(
        "orings check",
        "-003 dynamic, .060 less .003 in .051 deep, least squeeze in",
        ".009",
        lambda: least_squeeze(0.060, 0.003, 0.051),
        "its own figures give .006, which another dealer's copy of the table prints",
    ),
)
