"""What two workshop manuals of 1995 to 1997 say of a drift for an oil seal."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench.answers.seals import driver
from witnessmark.bench.own_lists import Driver
from witnessmark.ground.measures import INCH
from witnessmark.ground.units import Mm

SOURCE = Cited(
    issuer="two makers of cars",
    title="Workshop manuals: oil seals, where the service tool is not to be had",
    where="step 7",
    edition="1995 and 1997",
    standing="maker",
)


def verdict(under: float) -> str:
    """Of a drift so many mm under the outside of a seal for a bore of 62 mm, clear of the lip."""
    tube = Driver(name="drift", inside=Mm(50), outside=Mm(62 - under))
    return str(driver(bore=62, shaft=40, have=(tube,)).rows("rows")[0]["verdict"])


PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed("seals driver", "0.4 mm under", "fits", lambda: verdict(0.4), "a rule, not a worked result"),
    Printed("seals driver", "0.015 in under", "fits", lambda: verdict(0.015 * INCH), "the same in inches"),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()


@pytest.mark.parametrize("one", BESIDE, ids=name_of)
def test_the_manuals_drift_fits(one: Printed) -> None:
    assert agrees(one), one.ours()
