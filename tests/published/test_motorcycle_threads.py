"""Pairs of threads that are taken for each other, as a shop for old British motorcycles tells them."""

from __future__ import annotations

from functools import partial

from tests.published.printed import Cited, Printed
from witnessmark.bench.answers.threads import identify
from witnessmark.ground.measures import INCH

SOURCE = Cited(
    issuer="a maker of motorcycle parts",
    title="Thread pitch and screw types",
    where="two pairs, crests in inches with pitch or threads to the inch",
    standing="maker",
)


def best(inches: float, pitch: float) -> str:
    """The first candidate for crests so wide, pitch in mm."""
    return str(identify(diameter=inches * INCH, pitch=pitch).rows("candidates")[0]["thread"])


def taken(inches: float, tpi: float) -> Printed:
    """One measured thread by its count to the inch."""
    name = {0.185: "2 BA", 0.190: "No 10 UNF", 0.196: "M5 x 0.8", 0.250: "1/4 BSC"}[inches]
    what = f"crests {inches:.3f} in, {tpi:g} to the inch"
    why = "ours says that it may as well be 1/4 BSF, of 55°" if inches == 0.250 else ""
    return Printed("threads identify", what, name, partial(best, inches, INCH / tpi), why)


PRINTED = (taken(0.185, 31.4), taken(0.190, 32), taken(0.196, 31.75))

BESIDE = (
    taken(0.250, 26),
    Printed(
        "threads identify",
        "crests 0.236 in, pitch 1.0 mm",
        "M6 x 1",
        lambda: str(identify(diameter=0.236 * INCH, pitch=1.0, angle=60).rows("candidates")[0]["thread"]),
        "with the angle only, which is not printed: 0 BA has the same size and pitch",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


def test_the_pair_with_the_same_count_is_not_called_sure() -> None:
    slip = identify(diameter=0.250 * INCH, pitch=INCH / 26)
    assert slip.verdict == "marginal"
    assert [row["thread"] for row in slip.rows("candidates")[:2]] == ["1/4 BSC", "1/4 BSF"]
