"""Every published value, whichever file it stands in: those that count agree, the others do not."""

from __future__ import annotations

import pytest

from tests.published.listing import modules
from tests.published.printed import Printed, agrees, name_of

COUNTED = [one for module in modules() for one in module.PRINTED]
WRONG = [one for module in modules() for one in module.NOT_REPRODUCED]


@pytest.mark.parametrize("one", COUNTED, ids=name_of)
def test_ours_rounds_to_what_is_printed(one: Printed) -> None:
    assert agrees(one), f"printed {one.printed}, ours {one.ours()}"


@pytest.mark.parametrize("one", WRONG, ids=name_of)
def test_what_does_not_reproduce_still_does_not(one: Printed) -> None:
    assert not agrees(one), f"printed {one.printed}, ours {one.ours()}: it reproduces after all"
