"""Wire feed worked in the manual of a small machine."""

from __future__ import annotations

import pytest

from tests.published.printed import Cited, Printed, agrees, name_of
from witnessmark.bench import welds
from witnessmark.ground.units import Ampere, Mm, MmPerMinuteAmpere

SOURCE = Cited(
    title="Owner's manual of a metal-arc welder",
    issuer="a maker of welding machines",
    where="page 25: sheet of 1/16 in",
    standing="maker",
)


AMPS = welds.current_from_thickness(Mm(25.4 / 16))


def feed(burn_off: float) -> float:
    """Ours, mm/min."""
    return welds.wire_feed(Ampere(AMPS), MmPerMinuteAmpere(burn_off)) * 60


PRINTED = (
    Printed("welds settings", "current for 1/16 in, A", "62.5", lambda: AMPS),
    Printed("welds settings", "0.023 in wire, in/min", "219", lambda: feed(88.9) / 25.4),
    Printed("welds settings", "0.030 in wire, in/min", "125", lambda: feed(50.8) / 25.4),
    Printed("welds settings", "0.035 in wire, in/min", "100", lambda: feed(40.6) / 25.4),
    Printed("welds settings", "0.023 in wire, m/min", "5.56", lambda: feed(88.9) / 1000),
)

BESIDE: tuple[Printed, ...] = ()

NOT_REPRODUCED = (
    Printed("welds settings", "0.030 in wire, m/min", "3.19", lambda: feed(50.8) / 1000, "125 in is 3.175 m"),
    Printed("welds settings", "0.035 in wire, m/min", "2.56", lambda: feed(40.6) / 1000, "100 in is 2.54 m"),
)


@pytest.mark.parametrize("one", PRINTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one)


@pytest.mark.parametrize("one", NOT_REPRODUCED, ids=name_of)
def test_what_is_printed_does_not_follow_from_its_inputs(one: Printed) -> None:
    assert not agrees(one)
