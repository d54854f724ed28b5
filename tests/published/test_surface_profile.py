"""Paint that fills a blasted profile."""

from __future__ import annotations

from tests.published.printed import Cited, Printed
from witnessmark.bench import paint
from witnessmark.ground.units import M2, Micrometre, Percent

SOURCE = Cited(
    title="The cost of too much surface profile",
    issuer="a blasting supplier",
    where="10 000 ft², 50 µm, 79 %, 25 % lost",
    standing="maker",
)

PRINTED: tuple[Printed, ...] = ()

BESIDE = (
    Printed(
        "paint quantity",
        "litres to fill the profile, about",
        "80",
        lambda: paint.paint_volume(
            M2(929.03), paint.spreading_rate(Micrometre(50), Percent(79)), Percent(25)
        ),
        "printed as about; ours is 78.4",
    ),
)

NOT_REPRODUCED: tuple[Printed, ...] = ()
